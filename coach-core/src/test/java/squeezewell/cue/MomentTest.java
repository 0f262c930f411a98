package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.protocol.Rhythm;

class MomentTest {
  private static final long SECOND = TestPlans.SECOND;

  /**
   * Worked by hand for 6 s with a squeeze of 1 s: six counts, a second each; the vessel fills in
   * the first second and ebbs evenly over the other five, a fifth a second; the last two counts
   * lead in.
   */
  @ParameterizedTest
  @CsvSource({
    "0,     SQUEEZE, 1, 0",
    "0.25,  SQUEEZE, 1, 0.25",
    "0.999, SQUEEZE, 1, 0.999",
    "1,     RELEASE, 2, 1",
    "1.5,   RELEASE, 2, 0.9",
    "2,     RELEASE, 3, 0.8",
    "3,     RELEASE, 4, 0.6",
    "4,     READY,   5, 0.4",
    "5,     READY,   6, 0.2",
    "5.75,  READY,   6, 0.05",
    "6,     SQUEEZE, 1, 0",
    "61,    RELEASE, 2, 1"
  })
  void oneIntervalOfSixSeconds(String seconds, Moment.Act act, int count, double fill) {
    CueSchedule schedule = CueSchedule.of(TestPlans.everySixSeconds(5 * TestPlans.MINUTE));
    long at = TestPlans.nanos(seconds);
    Moment moment = schedule.momentAt(at);
    assertThat(moment.act()).isEqualTo(act);
    assertThat(moment.count()).isEqualTo(count);
    assertThat(moment.of()).isEqualTo(6);
    assertThat(moment.fill()).isEqualTo(fill, within(1e-12));
    assertThat(moment.nextSqueezeNanos()).hasValue((at / (6 * SECOND) + 1) * 6 * SECOND);
  }

  /**
   * Worked by hand for 3:1 at 120 events a minute: compressions at 0, 0.5 and 1 s, the breath from
   * 1.5 to 2 s, then again.
   */
  @ParameterizedTest
  @CsvSource({
    "0, COMPRESS, 1, 3, 0, 1.5",
    "0.6, COMPRESS, 2, 3, 0, 1.5",
    "1.4, COMPRESS, 3, 3, 0, 1.5",
    "1.5, SQUEEZE, 1, 1, 0, 3.5",
    "1.75, SQUEEZE, 1, 1, 0.5, 3.5",
    "2, COMPRESS, 1, 3, 0, 3.5"
  })
  void oneCycleForANewborn(
      String seconds, Moment.Act act, int count, int of, double fill, String next) {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.guidance(TestPlans.cycle("120", 3, 1, "0.5", "0.5"), TestPlans.usualLimits()),
            0,
            TestPlans.MINUTE,
            0);
    Moment moment = CueSchedule.of(plan).momentAt(TestPlans.nanos(seconds));
    assertThat(moment.act()).isEqualTo(act);
    assertThat(moment.count()).isEqualTo(count);
    assertThat(moment.of()).isEqualTo(of);
    assertThat(moment.fill()).isEqualTo(fill, within(1e-12));
    assertThat(moment.nextSqueezeNanos()).hasValue(TestPlans.nanos(next));
  }

  /** Worked by hand: 1.2 s less the squeeze of 0.4 s is about one count, so there are two. */
  @Test
  void aNewbornsIntervalHasRoomForSqueezeAndReleaseOnly() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.guidance(TestPlans.steady("1.2", "0.4"), TestPlans.usualLimits()),
            0,
            TestPlans.MINUTE,
            0);
    Moment moment = CueSchedule.of(plan).momentAt(TestPlans.nanos("0.8"));
    assertThat(moment.act()).isEqualTo(Moment.Act.RELEASE);
    assertThat(moment.count()).isEqualTo(2);
    assertThat(moment.of()).isEqualTo(2);
    assertThat(moment.fill()).isEqualTo(0.5, within(1e-12));
  }

  @Test
  void aCountInRunsDownToTheFirstSqueeze() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.everySixSeconds(SECOND).guidance(), 3 * SECOND, TestPlans.MINUTE, 0);
    CueSchedule schedule = CueSchedule.of(plan);
    int[] counts = {3, 3, 2, 2, 1, 1};
    for (int half = 0; half < 6; half++) {
      Moment moment = schedule.momentAt(half * SECOND / 2);
      assertThat(moment.act()).isEqualTo(Moment.Act.GET_READY);
      assertThat(moment.count()).isEqualTo(counts[half]);
      assertThat(moment.nextSqueezeNanos()).hasValue(3 * SECOND);
    }
    assertThat(schedule.momentAt(3 * SECOND).act()).isEqualTo(Moment.Act.SQUEEZE);
  }

  @Test
  void aHoldShowsItsSecondsAndALeadSaysReady() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.everySixSeconds(SECOND).guidance(), 0, TestPlans.MINUTE, SECOND / 10);
    CueSchedule schedule =
        CueSchedule.of(
            plan,
            List.of(
                new Control(10 * SECOND, Control.Kind.PULSE_CHECK),
                new Control(17 * SECOND, Control.Kind.PULSE_CHECK_END)));
    // The squeeze at 12 s will not come, since the check begins at 10 s.
    assertThat(schedule.momentAt(9 * SECOND).nextSqueezeNanos()).isEmpty();
    assertThat(schedule.momentAt(12 * SECOND + 1).act()).isEqualTo(Moment.Act.CHECK_PULSE);
    assertThat(schedule.momentAt(12 * SECOND + 1).count()).isEqualTo(2);
    Moment lead = schedule.momentAt(17 * SECOND);
    assertThat(lead.act()).isEqualTo(Moment.Act.READY);
    assertThat(lead.nextSqueezeNanos()).hasValue(17 * SECOND + SECOND / 10);
    assertThat(schedule.momentAt(17 * SECOND + SECOND / 10).act()).isEqualTo(Moment.Act.SQUEEZE);
  }

  @Test
  void anyInstantHasAMoment() {
    CueSchedule schedule = CueSchedule.of(TestPlans.everySixSeconds(TestPlans.MINUTE));
    assertThat(schedule.momentAt(-SECOND).act()).isEqualTo(Moment.Act.READY);
    assertThat(schedule.momentAt(-SECOND).nextSqueezeNanos()).hasValue(0);
    assertThat(schedule.momentAt(60 * SECOND).act()).isEqualTo(Moment.Act.FINISHED);
    assertThat(schedule.momentAt(Long.MAX_VALUE).act()).isEqualTo(Moment.Act.FINISHED);
    assertThat(schedule.momentAt(Long.MIN_VALUE / 2).act()).isEqualTo(Moment.Act.READY);
    assertThat(schedule.nextCueAt(Long.MAX_VALUE - 1)).isEmpty();
  }

  @Provide
  Arbitrary<PracticePlan> plans() {
    return ControlScripts.plans();
  }

  @Provide
  Arbitrary<List<Control>> scripts() {
    return ControlScripts.scriptsWithChanges();
  }

  /** The picture and the sound must tell the same: the last cue before an instant rules both. */
  @Property(tries = 2_000, edgeCases = EdgeCasesMode.NONE)
  void theMomentAgreesWithTheLastCue(
      @ForAll("plans") PracticePlan plan,
      @ForAll("scripts") List<Control> script,
      @ForAll @DoubleRange(min = 0, max = 1) double part) {
    long at = (long) (part * (plan.countInNanos() + plan.lengthNanos()));
    CueSchedule schedule = CueSchedule.of(plan, script);
    Moment moment = schedule.momentAt(at);
    assertThat(moment.fill()).isBetween(0.0, 1.0);
    if (moment.segment().kind() != Segment.Kind.PACED) {
      return;
    }
    Segment segment = moment.segment();
    if (schedule.silentAt(at) && Prompting.mayFallSilent(segment.guidance())) {
      assertThat(moment.act()).isEqualTo(Moment.Act.KEEP_RHYTHM);
      return;
    }
    boolean continuous = segment.guidance().rhythm() instanceof Rhythm.ContinuousCompressions;
    Cue last = null;
    for (Cue cue : schedule.between(moment.segment().startNanos(), at + 1)) {
      boolean tells =
          cue.kind() == CueKind.SQUEEZE
              || cue.kind() == CueKind.RELEASE
              || cue.kind() == CueKind.COUNT
              || (cue.kind() == CueKind.COMPRESS && !continuous);
      last = tells ? cue : last;
    }
    if (last == null) {
      // Counted on from a breath of the rhythm before, whose last cue lies in that, or from the
      // breath that brought the prompts back; or compressions that went on through suction.
      boolean compressed = segment.originNanos() < segment.startNanos();
      boolean promptsBack =
          schedule.silences().stream().anyMatch(s -> s.endNanos() == segment.startNanos() + 1);
      assertThat(
              moment.act() == Moment.Act.READY || segment.countsOn() || compressed || promptsBack)
          .isTrue();
      return;
    }
    Moment.Act act =
        switch (last.kind()) {
          case SQUEEZE -> Moment.Act.SQUEEZE;
          case COMPRESS -> Moment.Act.COMPRESS;
          default -> last.leadIn() ? Moment.Act.READY : Moment.Act.RELEASE;
        };
    assertThat(moment.act()).isEqualTo(act);
    assertThat(moment.count()).isEqualTo(last.count());
    assertThat(moment.of()).isEqualTo(last.of());
    List<Cue> next =
        schedule.between(at + 1, Math.min(moment.segment().endNanos(), at + 70 * SECOND));
    next = new ArrayList<>(next);
    next.removeIf(c -> c.kind() != CueKind.SQUEEZE);
    if (next.isEmpty()) {
      assertThat(moment.nextSqueezeNanos()).as("%s", moment).isEmpty();
    } else {
      assertThat(moment.nextSqueezeNanos()).hasValue(next.get(0).atNanos());
    }
  }
}
