package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;

class LocalLabelTest {
  private static Protocol local(String text) {
    return ProtocolDraft.copyOf(
            TestPlans.edition("aha-2025"),
            GuidelineLibrary.baseOf(TestPlans.edition("aha-2025")),
            Set.of(),
            2026)
        .with(ProtocolDetail.ORGANISATION, "An ambulance service")
        .with(ProtocolDetail.APPROVED_BY, "the medical director")
        .with(ProtocolDetail.APPROVED_ON, "2026-01-31")
        .with(0, ProtocolValue.BREATH_INTERVAL, text)
        .protocol();
  }

  @Test
  void aGuidelineHasNoLabel() {
    assertThat(
            LocalLabel.of(
                TestPlans.edition("aha-2025"),
                GuidelineLibrary.baseOf(TestPlans.edition("aha-2025"))))
        .isEmpty();
  }

  @Test
  void aLocalProtocolSaysWhoseItIsWhoApprovedItAndWhereItDiffers() {
    Protocol local = local("5");
    LocalLabel label =
        LocalLabel.of(local, List.of(local.guidance().get(0)), GuidelineLibrary.baseOf(local))
            .get();
    assertThat(label.title()).isEqualTo("Local protocol: Service protocol");
    assertThat(label.origin())
        .isEqualTo(
            "Local protocol: Service protocol, of An ambulance service, 2026; approved by the"
                + " medical director on 2026-01-31. Based on AHA 2025, and differs from it.");
    // AHA 2025, adult basic life support: one breath every 6 s.
    assertThat(label.differences()).containsExactly("breath every 5 s here, 6 s in AHA 2025");
  }

  @Test
  void withSeveralSituationsEachDifferenceNamesItsOwn() {
    assertThat(
            LocalLabel.of(local("5.5"), GuidelineLibrary.baseOf(local("5.5"))).get().differences())
        .containsExactly("Adult, pulse, not breathing: breath every 5.5 s here, 6 s in AHA 2025");
  }

  @Test
  void theSameValuesAreSaidToBeTheSame() {
    LocalLabel label = LocalLabel.of(local("6.000"), GuidelineLibrary.baseOf(local("6.000"))).get();
    assertThat(label.differences()).isEmpty();
    assertThat(label.origin()).endsWith("Based on AHA 2025, with the same values.");
  }

  @Test
  void aProtocolWithoutABaseOrApprovalSaysSo() {
    Protocol bare = TestPlans.protocol(TestPlans.adult(Situation.PULSE_NO_BREATHING));
    assertThat(LocalLabel.of(bare, GuidelineLibrary.baseOf(bare)).get().origin())
        .isEqualTo(
            "Local protocol: A protocol, of A body, 2026; no approval noted. It does not say which"
                + " guideline it is based on.");
    Protocol strange =
        new Protocol(
            "x", "X", "O", 2026, true, bare.guidance(), List.of(), "xyz-1", Optional.empty());
    assertThat(LocalLabel.of(strange, GuidelineLibrary.baseOf(strange)).get().origin())
        .endsWith("Based on xyz-1, which is no edition of this program.");
    assertThat(LocalLabel.of(strange, GuidelineLibrary.baseOf(strange)).get().differences())
        .isEmpty();
  }

  @Test
  void anotherPatternAndAMissingSituationAreNamed() {
    Guidance cycle =
        TestPlans.guidance(TestPlans.cycle("110", 30, 2, "4", "1"), TestPlans.usualLimits());
    Guidance newborn =
        new Guidance(
            PatientGroup.NEWBORN,
            Situation.ARREST_ADVANCED_AIRWAY,
            0,
            TestPlans.steady("1.2", "0.4"),
            TestPlans.limits("30", "5"));
    Protocol local =
        new Protocol(
            "x",
            "X",
            "O",
            2026,
            true,
            List.of(cycle, newborn),
            List.of(),
            "aha-2025",
            Optional.empty());
    assertThat(LocalLabel.of(local, GuidelineLibrary.baseOf(local)).get().differences())
        .contains(
            "Adult, pulse, not breathing: another pattern of breaths and compressions than in AHA"
                + " 2025",
            "Adult, pulse, not breathing: breath every not set here, 6 s in AHA 2025",
            "Adult, pulse, not breathing: compressions in a cycle 30 here, not set in AHA 2025",
            "Newborn, no pulse, advanced airway in place: AHA 2025 has no values for this situation");
  }

  @Test
  void theHeaderOfASessionKeepsWhatTheLabelNeeds() {
    Protocol local = local("5");
    squeezewell.cue.PracticePlan plan =
        new squeezewell.cue.PracticePlan(local.guidance().get(0), 0, TestPlans.MINUTE, 0);
    Protocol kept =
        new squeezewell.session.SessionHeader(
                java.time.Instant.EPOCH,
                squeezewell.session.SessionHeader.Origin.LIVE,
                "",
                local,
                plan)
            .protocol();
    assertThat(LocalLabel.of(kept, GuidelineLibrary.baseOf(kept)))
        .isEqualTo(
            LocalLabel.of(local, List.of(local.guidance().get(0)), GuidelineLibrary.baseOf(local)));
  }
}
