package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.TestPlans;

class ProtocolDraftTest {
  private static final Set<String> TAKEN = Set.of("aha-2020", "aha-2025", "service-1");

  /** The adult with a pulse is the first entry of AHA 2025, the cycle of the adult the third. */
  private static final int PULSE = 0;

  private static final int CYCLE = 2;

  private static ProtocolDraft copy() {
    return ProtocolDraft.copyOf(
        TestPlans.edition("aha-2025"),
        GuidelineLibrary.baseOf(TestPlans.edition("aha-2025")),
        TAKEN,
        2026);
  }

  private static ProtocolDraft ready() {
    return copy().with(ProtocolDetail.ORGANISATION, "An ambulance service");
  }

  @Test
  void aCopyIsTheServicesOwnAndKeepsTheEditionAsTheSource() {
    assertThat(copy().text(ProtocolDetail.ORGANISATION)).isEmpty();
    assertThat(copy().faults()).hasSize(1).first().asString().startsWith("Your organisation. ");
    Protocol made = ready().protocol();
    Protocol edition = TestPlans.edition("aha-2025");
    assertThat(made.local()).isTrue();
    assertThat(made.id()).isEqualTo("local-aha-2025");
    assertThat(made.basedOn()).isEqualTo("aha-2025");
    assertThat(made.organisation()).isEqualTo("An ambulance service");
    assertThat(made.year()).isEqualTo(2026);
    assertThat(made.approval()).isEmpty();
    assertThat(made.guidance()).isEqualTo(edition.guidance());
    assertThat(made.ages()).isEqualTo(edition.ages());
  }

  @Test
  void theShortNameOfACopyIsOneThatNobodyHas() {
    Set<String> taken = Set.of("aha-2025", "local-aha-2025", "local-aha-2025-2");
    ProtocolDraft draft =
        ProtocolDraft.copyOf(
            TestPlans.edition("aha-2025"),
            GuidelineLibrary.baseOf(TestPlans.edition("aha-2025")),
            taken,
            2026);
    assertThat(draft.text(ProtocolDetail.ID)).isEqualTo("local-aha-2025-3");
    assertThat(draft.fault(ProtocolDetail.ID)).isEmpty();
    assertThat(draft.with(ProtocolDetail.ID, "aha-2025").fault(ProtocolDetail.ID)).isPresent();
  }

  @Test
  void aLongShortNameLeavesRoomForANumber() {
    String id = "a234567890-b234567890-c234567890-d234567";
    Protocol wide =
        new Protocol(id, "T", "O", 2026, false, TestPlans.edition("aha-2025").guidance());
    String made =
        ProtocolDraft.copyOf(wide, GuidelineLibrary.baseOf(wide), Set.of(id), 2026)
            .text(ProtocolDetail.ID);
    assertThat(made).hasSizeLessThan(38).matches("[a-z0-9]+(-[a-z0-9]+)*");
  }

  @Test
  void aLocalProtocolMayKeepItsOwnShortName() {
    Protocol local = ready().protocol();
    ProtocolDraft again =
        ProtocolDraft.edit(local, GuidelineLibrary.baseOf(local), Set.of("aha-2025", local.id()));
    assertThat(again.faults()).isEmpty();
    assertThat(again.protocol()).isEqualTo(local);
  }

  @Test
  void aCopyOfALocalProtocolIsBasedOnTheSameGuideline() {
    ProtocolDraft second =
        ProtocolDraft.copyOf(
            ready().protocol(), GuidelineLibrary.baseOf(ready().protocol()), TAKEN, 2027);
    assertThat(second.base().get().id()).isEqualTo("aha-2025");
    assertThat(second.text(ProtocolDetail.APPROVED_BY)).isEmpty();
  }

  @Test
  void aChangedValueIsCitedAsTheServicesOwnAndTheOthersAsBefore() {
    Protocol made = ready().with(PULSE, ProtocolValue.BREATH_INTERVAL, "5").protocol();
    BreathPlan plan = made.guidance().get(PULSE).rhythm().steadyBreaths().get();
    BreathPlan before =
        TestPlans.edition("aha-2025").guidance().get(PULSE).rhythm().steadyBreaths().get();
    assertThat(plan.interval().seconds()).isEqualTo(5);
    assertThat(plan.intervalSource())
        .isEqualTo(
            new Citation(
                "An ambulance service",
                "Service protocol",
                2026,
                "value set by this service",
                Confidence.PRIMARY));
    assertThat(plan.rangeSource()).isEqualTo(before.rangeSource());
    assertThat(plan.inspirationSource()).isEqualTo(before.inspirationSource());
    assertThat(made.guidance().get(CYCLE))
        .isEqualTo(TestPlans.edition("aha-2025").guidance().get(CYCLE));
  }

  @Test
  void ownValuesFollowTheNameOfTheService() {
    Protocol first = ready().with(PULSE, ProtocolValue.GAP_LONGEST, "9").protocol();
    Protocol renamed =
        ProtocolDraft.edit(first, GuidelineLibrary.baseOf(first), TAKEN)
            .with(ProtocolDetail.TITLE, "Orders")
            .protocol();
    assertThat(renamed.guidance().get(PULSE).limits().gapLongest().source().title())
        .isEqualTo("Orders");
  }

  @Test
  void aValueThatIsPutBackIsCitedAsTheGuidelinesAgain() {
    Protocol first = ready().with(PULSE, ProtocolValue.BREATH_HIGH, "8").protocol();
    Protocol back =
        ProtocolDraft.edit(first, GuidelineLibrary.baseOf(first), TAKEN)
            .with(PULSE, ProtocolValue.BREATH_HIGH, "7.0")
            .protocol();
    assertThat(back.guidance()).isEqualTo(TestPlans.edition("aha-2025").guidance());
  }

  @Test
  void theGuidelinesValueStandsBesideEachWithItsSource() {
    ProtocolDraft draft = ready().with(PULSE, ProtocolValue.BREATH_INTERVAL, "5");
    ProtocolDraft.Guideline there = draft.guideline(PULSE, ProtocolValue.BREATH_INTERVAL).get();
    // One breath every 6 s: AHA 2025, adult basic life support.
    assertThat(ProtocolValue.BREATH_INTERVAL.words(there.number())).isEqualTo("6 s");
    assertThat(there.source().organisation()).isEqualTo("American Heart Association");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "BREATH_INTERVAL | 600 | Allowed: a number from 0.5 to 60 s, with a point and at most 3"
            + " decimals.",
        "BREATH_INTERVAL | 0.4999 | Allowed: a number from 0.5 to 60 s, with a point and at most 3"
            + " decimals.",
        "BREATH_INTERVAL | 6.0001 | Allowed: a number from 0.5 to 60 s, with a point and at most 3"
            + " decimals.",
        "BREATH_LOW | 6.5 | Allowed: at most 6 s, the value of “breath every”.",
        "BREATH_HIGH | 5.9 | Allowed: at least 6 s, the value of “breath every”.",
        "INSPIRATION | 5 | Allowed: under 5 s, the value of “shortest interval in range”.",
        "PULSE_CHECK_NOTICE | 60 | ",
        "PULSE_CHECK_SHORTEST | 11 | Allowed: at most 10 s, the value of “longest pulse check”.",
        "SUCTION_NOTICE | 15 | Allowed: under 15 s, the value of “longest suction”.",
        "GAP_LONGEST | 120.5 | Allowed: a number from 1 to 120 s, with a point and at most 3"
            + " decimals.",
      })
  void aValueIsCheckedAsItIsTyped(ProtocolValue value, String text, String sentence) {
    assertThat(copy().with(PULSE, value, text).fault(PULSE, value).orElse(null))
        .isEqualTo(sentence);
  }

  @Test
  void theNoticeOfACheckIsAtMostHalfTheTimeBetweenChecks() {
    assertThat(
            copy()
                .with(PULSE, ProtocolValue.PULSE_CHECK_EVERY, "15")
                .fault(PULSE, ProtocolValue.PULSE_CHECK_NOTICE))
        .contains("Allowed: at most half of the time between pulse checks, which is 15 s.");
  }

  @Test
  void allBreathsOfACycleFitIntoItsPause() {
    assertThat(
            copy()
                .with(CYCLE, ProtocolValue.CYCLE_BREATHS, "5")
                .fault(CYCLE, ProtocolValue.INSPIRATION))
        .contains("Allowed: so short that 5 fit into the planned pause, which is 4 s.");
    assertThat(
            copy()
                .with(CYCLE, ProtocolValue.CYCLE_COMPRESSIONS, "15.5")
                .fault(CYCLE, ProtocolValue.CYCLE_COMPRESSIONS))
        .contains("Allowed: a whole number from 1 to 100.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "-6",
        "+6",
        "6 s",
        "six",
        "NaN",
        "1e1",
        "0x6",
        "6,0",
        ".6",
        "6.",
        "٦",
        "6\u0000",
        "00000000000006"
      })
  void whatIsNoPlainNumberIsRefused(String text) {
    ProtocolDraft draft = ready().with(PULSE, ProtocolValue.BREATH_INTERVAL, text);
    assertThat(draft.fault(PULSE, ProtocolValue.BREATH_INTERVAL)).isPresent();
    assertThatThrownBy(draft::protocol)
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("Adult, pulse, not breathing, breath every. Allowed: a number");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "TITLE | '' | false",
        "TITLE | ' \t' | false",
        "ORGANISATION | <html><img src=x> | true",
        "YEAR | 26 | false",
        "YEAR | 2101 | false",
        "YEAR | ' 2026 ' | true",
        "ID | Local | false",
        "ID | a--b | false",
        "ID | ../../x | false",
        "ID | local-2 | true",
      })
  void aDetailIsCheckedAsItIsTyped(ProtocolDetail detail, String text, boolean good) {
    assertThat(ready().with(detail, text).fault(detail).isPresent()).isEqualTo(!good);
  }

  @Test
  void controlCharactersAndHalvesOfCharactersAreRefused() {
    for (String bad : List.of("a\nb", "a\u001b[31m", "a\u0000", "\ud83d", "\udc00x")) {
      assertThat(ready().with(ProtocolDetail.TITLE, bad).fault(ProtocolDetail.TITLE)).isPresent();
    }
    assertThat(ready().with(ProtocolDetail.TITLE, "\ud83d\ude91").fault(ProtocolDetail.TITLE))
        .isEmpty();
    String long81 = "x".repeat(81);
    assertThat(ready().with(ProtocolDetail.TITLE, long81).fault(ProtocolDetail.TITLE)).isPresent();
    for (String megabyte : List.of("9".repeat(1_000_000), "9" + " ".repeat(1_000_000) + "9")) {
      ProtocolDraft draft =
          ready()
              .with(PULSE, ProtocolValue.BREATH_INTERVAL, megabyte)
              .with(ProtocolDetail.TITLE, megabyte);
      assertThat(draft.fault(PULSE, ProtocolValue.BREATH_INTERVAL)).isPresent();
      assertThat(draft.fault(ProtocolDetail.TITLE)).isPresent();
    }
  }

  @Test
  void anIntervalAtTheEdgeOfItsRangeIsAdvisedAgainst() {
    assertThat(ready().advice()).isEmpty();
    assertThat(ready().with(PULSE, ProtocolValue.BREATH_INTERVAL, "5.5").advice()).isEmpty();
    ProtocolDraft edge = ready().with(PULSE, ProtocolValue.BREATH_INTERVAL, "5");
    assertThat(edge.faults()).isEmpty();
    assertThat(edge.advice())
        .singleElement()
        .asString()
        .startsWith("Adult, pulse, not breathing: the interval lies at the edge of its range");
    for (Protocol edition : GuidelineLibrary.editions()) {
      assertThat(
              ProtocolDraft.copyOf(edition, GuidelineLibrary.baseOf(edition), TAKEN, 2026).advice())
          .as(edition.id())
          .isEmpty();
    }
  }

  @Test
  void anApprovalNeedsAPersonAndADayOrNothingAtAll() {
    ProtocolDraft noted = ready().with(ProtocolDetail.APPROVAL_NOTE, "until March");
    assertThat(noted.fault(ProtocolDetail.APPROVED_BY)).isPresent();
    assertThat(noted.fault(ProtocolDetail.APPROVED_ON))
        .contains("Allowed: a day such as 2026-01-31, from 1950 to 2100.");
    ProtocolDraft approved =
        noted
            .with(ProtocolDetail.APPROVED_BY, "the medical director")
            .with(ProtocolDetail.APPROVED_ON, "2026-02-28");
    assertThat(approved.protocol().approval().get().words())
        .isEqualTo("approved by the medical director on 2026-02-28 (until March)");
    assertThat(approved.with(ProtocolDetail.APPROVED_ON, "2026-02-29").faults()).hasSize(1);
  }

  @Test
  void anApprovalThatIsOlderThanAChangeIsSaidToBe() {
    ProtocolDraft approved =
        ready()
            .with(ProtocolDetail.APPROVED_BY, "the medical director")
            .with(ProtocolDetail.APPROVED_ON, "2026-02-28");
    ProtocolDraft again =
        ProtocolDraft.edit(
            approved.protocol(), GuidelineLibrary.baseOf(approved.protocol()), TAKEN);
    assertThat(again.isApprovalOlderThanValues()).isFalse();
    ProtocolDraft changed = again.with(PULSE, ProtocolValue.GAP_LONGEST, "9");
    assertThat(changed.isApprovalOlderThanValues()).isTrue();
    assertThat(changed.with(ProtocolDetail.APPROVED_ON, "2026-03-01").isApprovalOlderThanValues())
        .isFalse();
    assertThat(ready().with(PULSE, ProtocolValue.GAP_LONGEST, "9").isApprovalOlderThanValues())
        .isFalse();
  }

  /** Whatever is typed: either something is refused with a reason, or a file holds it unchanged. */
  @Test
  void anyEditsAreRefusedOrReadBackEqual() throws Exception {
    int refused = 0;
    int kept = 0;
    List<Protocol> editions = GuidelineLibrary.editions();
    for (int seed = 0; seed < 1_000; seed++) {
      Random random = new Random(seed);
      Protocol edition = editions.get(random.nextInt(editions.size()));
      ProtocolDraft draft =
          ProtocolDraft.copyOf(edition, GuidelineLibrary.baseOf(edition), TAKEN, 2026)
              .with(ProtocolDetail.ORGANISATION, "A service");
      int edits = 1 + random.nextInt(6);
      for (int i = 0; i < edits; i++) {
        draft = edit(draft, random);
      }
      if (!draft.faults().isEmpty()) {
        assertThat(draft.faults()).allSatisfy(f -> assertThat(f).contains(". Allowed: "));
        refused++;
        continue;
      }
      Protocol made = draft.protocol();
      Protocol read = ProtocolReader.readText("seed-" + seed, ProtocolRoundTripTest.write(made));
      assertThat(read).as("seed %d", seed).isEqualTo(made);
      ProtocolDraft again = ProtocolDraft.edit(read, GuidelineLibrary.baseOf(read), TAKEN);
      assertThat(again.faults()).as("seed %d", seed).isEmpty();
      assertThat(again.protocol()).as("seed %d", seed).isEqualTo(made);
      kept++;
    }
    // Both must happen often, or the edits are too harsh or too mild to tell anything.
    assertThat(refused).isGreaterThan(200);
    assertThat(kept).isGreaterThan(200);
  }

  private static ProtocolDraft edit(ProtocolDraft draft, Random random) {
    if (random.nextInt(4) == 0) {
      ProtocolDetail[] details = ProtocolDetail.values();
      List<String> texts =
          List.of("", "A \"quoted\" naïve text", "2027", "2026-02-28", "local-x", "<b>&amp;", "\t");
      return draft.with(
          details[random.nextInt(details.length)], texts.get(random.nextInt(texts.size())));
    }
    int entry = random.nextInt(draft.entries().size());
    List<ProtocolValue> values = draft.values(entry);
    ProtocolValue value = values.get(random.nextInt(values.size()));
    double span = value.most().doubleValue() - value.least().doubleValue();
    double now = Double.parseDouble(usable(draft.text(entry, value)));
    double number =
        switch (random.nextInt(4)) {
          case 0 -> value.least().doubleValue() + span * random.nextDouble();
          case 1 -> random.nextBoolean() ? value.least().doubleValue() : value.most().doubleValue();
          default -> now * (0.9 + 0.2 * random.nextDouble());
        };
    int decimals = random.nextInt(20) == 0 ? 4 : random.nextInt(value.decimals() + 1);
    return draft.with(
        entry,
        value,
        new java.math.BigDecimal(number)
            .setScale(decimals, java.math.RoundingMode.HALF_EVEN)
            .toPlainString());
  }

  private static String usable(String text) {
    return text.matches("[0-9]+([.][0-9]+)?") ? text : "1";
  }
}
