package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;

/** The time limits of the built-in editions, typed here from the sources. */
class LibraryLimitsTest {
  /**
   * Suction: emergency medical responders' study texts, 15, 10 and 5 s for adult, child and infant;
   * the newborn as an infant, our own choice. Checks: AHA BLS course texts, about every 2 minutes,
   * 5 to 10 s (ERC: from memory). Newborn: AHA, NRP and the UK newborn FAQ, heart rate after 30 s
   * of ventilation; AHA and NRP, after 60 s of compressions; UK, every 30 s throughout.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2015, adult, 120, 15, SECONDARY",
    "aha-2015, child, 120, 10, SECONDARY",
    "aha-2015, infant, 120, 5, SECONDARY",
    "aha-2015, newborn, 30, 5, SECONDARY",
    "aha-2020, adult, 120, 15, SECONDARY",
    "aha-2020, child, 120, 10, SECONDARY",
    "aha-2020, infant, 120, 5, SECONDARY",
    "aha-2020, newborn, 30, 5, SECONDARY",
    "aha-2025, adult, 120, 15, SECONDARY",
    "aha-2025, child, 120, 10, SECONDARY",
    "aha-2025, infant, 120, 5, SECONDARY",
    "aha-2025, newborn, 30, 5, MEMORY",
    "erc-2021, adult, 120, 15, MEMORY",
    "erc-2021, child, 120, 10, MEMORY",
    "erc-2021, infant, 120, 5, MEMORY",
    "erc-2021, newborn, 30, 5, SECONDARY",
    "erc-2025, adult, 120, 15, MEMORY",
    "erc-2025, child, 120, 10, MEMORY",
    "erc-2025, infant, 120, 5, MEMORY",
    "erc-2025, newborn, 30, 5, MEMORY",
    "nrp-8, newborn, 30, 5, SECONDARY"
  })
  void theLimitsOfAPatientAreAsPublished(
      String id, String patient, double every, double suction, Confidence checked) {
    List<Guidance> found = new ArrayList<>();
    for (Guidance g : TestPlans.edition(id).guidance()) {
      if (g.patient().id().equals(patient)) {
        found.add(g);
      }
    }
    assertThat(found).isNotEmpty();
    for (Guidance g : found) {
      Limits limits = g.limits();
      boolean slower =
          patient.equals("newborn") && g.rhythm().compressions().isPresent() && !id.contains("erc");
      assertThat(limits.pulseCheckEvery().seconds()).isEqualTo(slower ? 60 : every);
      if (!slower) {
        assertThat(limits.pulseCheckEvery().source().confidence()).isEqualTo(checked);
      }
      assertThat(limits.pulseCheckShortest().seconds()).isEqualTo(5);
      assertThat(limits.pulseCheckLongest().seconds()).isEqualTo(10);
      assertThat(limits.suctionLongest().seconds()).isEqualTo(suction);
      assertThat(limits.suctionLongest().source().confidence())
          .isEqualTo(patient.equals("newborn") ? Confidence.HOUSE : Confidence.PRACTICE);
    }
  }

  @Test
  void remindersAndTheLongestGapAreMarkedAsOurOwnAndFitTheRhythm() {
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance g : edition.guidance()) {
        Limits limits = g.limits();
        assertThat(limits.pulseCheckNotice().source().confidence()).isEqualTo(Confidence.HOUSE);
        assertThat(limits.suctionNotice().source().confidence()).isEqualTo(Confidence.HOUSE);
        // Our own choice: 5, 3, 2 and 2 s before 15, 10, 5 and 5 s.
        double longest = limits.suctionLongest().seconds();
        assertThat(limits.suctionNotice().seconds())
            .isEqualTo(longest == 15 ? 5 : longest == 10 ? 3 : 2);
        assertThat(limits.gapLongest().source().confidence()).isEqualTo(Confidence.HOUSE);
        g.rhythm()
            .steadyBreaths()
            .ifPresent(
                b ->
                    assertThat(limits.gapLongest().nanos())
                        .as(edition.id() + " " + g.patient() + " " + g.situation())
                        .isGreaterThan(b.highNanos())
                        .isLessThanOrEqualTo(3 * b.interval().nanosAt(1)));
      }
    }
  }
}
