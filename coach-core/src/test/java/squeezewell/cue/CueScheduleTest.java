package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Rhythm;

/** Worked examples of what a schedule tells besides its instants: one breath every 6 s, 5 min. */
class CueScheduleTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long END = 300 * SECOND;
  private static final Rhythm CONTINUOUS = TestPlans.continuous("110", "6", "1");
  private static final PracticePlan STEADY = plan(TestPlans.steady("6", "1"));

  private static PracticePlan plan(Rhythm rhythm) {
    return new PracticePlan(guidance(rhythm), 0, END, 0);
  }

  private static Guidance guidance(Rhythm rhythm) {
    return TestPlans.guidance(rhythm, TestPlans.usualLimits());
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * SECOND);
  }

  private static Control at(double seconds, Control.Kind kind) {
    return new Control(nanos(seconds), kind);
  }

  private static Control change(double seconds, Rhythm rhythm) {
    return Control.change(nanos(seconds), guidance(rhythm));
  }

  private static CueSchedule with(Control... controls) {
    return CueSchedule.of(STEADY, List.of(controls));
  }

  private static Cue cue(CueSchedule schedule, CueKind kind, double seconds) {
    return schedule.between(nanos(seconds), nanos(seconds) + 1).stream()
        .filter(c -> c.kind() == kind)
        .findFirst()
        .orElseThrow();
  }

  private static double until(CueSchedule schedule, CueKind kind, double seconds) {
    return schedule.soundsUntil(cue(schedule, kind, seconds)) / 1e9;
  }

  @Test
  void aHoldCutsTheSqueezeThatItFallsIntoAndNoOther() {
    CueSchedule schedule =
        with(at(12.4, Control.Kind.PULSE_CHECK), at(20, Control.Kind.PULSE_CHECK_END));
    assertThat(cue(schedule, CueKind.SQUEEZE, 6).lengthNanos()).isEqualTo(SECOND);
    assertThat(cue(schedule, CueKind.SQUEEZE, 12).lengthNanos()).isEqualTo(nanos(0.4));
    assertThat(cue(schedule, CueKind.SQUEEZE, 20).lengthNanos()).isEqualTo(SECOND);
    assertThat(until(schedule, CueKind.SQUEEZE, 12)).isEqualTo(12.4);
    assertThat(until(schedule, CueKind.PULSE_CHECK_SECOND, 19.4)).isEqualTo(20);
    assertThat(until(schedule, CueKind.SQUEEZE, 20)).isEqualTo(300);
  }

  @Test
  void whatIsSaidInAHoldEndsWithItThoughBreathsAreCountedOn() {
    CueSchedule schedule =
        with(at(13, Control.Kind.PULSE_CHECK), at(15, Control.Kind.PULSE_CHECK_END));
    assertThat(schedule.squeezesAsked(nanos(15), nanos(24.5)))
        .containsExactly(nanos(18), nanos(24));
    assertThat(until(schedule, CueKind.SQUEEZE, 12)).isEqualTo(13);
    assertThat(until(schedule, CueKind.PULSE_CHECK_SECOND, 14)).isEqualTo(15);
  }

  @Test
  void aSqueezeGoesOnIntoARhythmThatIsCountedOnFromIt() {
    CueSchedule schedule = with(change(12.5, TestPlans.steady("5.5", "1")));
    assertThat(cue(schedule, CueKind.SQUEEZE, 12).lengthNanos()).isEqualTo(SECOND);
    assertThat(until(schedule, CueKind.SQUEEZE, 12)).isEqualTo(300);
    assertThat(cue(schedule, CueKind.SQUEEZE, 17.5).lengthNanos()).isEqualTo(SECOND);
  }

  @Test
  void theWordsOfAChangeEndWhereSomethingElseIsToBeDone() {
    CueSchedule schedule =
        with(
            at(20, Control.Kind.WATCH),
            at(25, Control.Kind.NO_RATE),
            change(30, TestPlans.steady("6", "1")),
            change(42.5, TestPlans.steady("5.5", "1")),
            change(43, CONTINUOUS));
    assertThat(until(schedule, CueKind.WATCH, 20)).isEqualTo(25);
    assertThat(until(schedule, CueKind.NO_RATE, 25)).isEqualTo(30);
    // At another pace the same is done, so the words go on until the chest is compressed as well.
    assertThat(until(schedule, CueKind.RHYTHM_CHANGED, 30)).isEqualTo(300);
    assertThat(until(schedule, CueKind.RHYTHM_CHANGED, 43)).isEqualTo(300);
    CueSchedule soon =
        with(
            at(20, Control.Kind.WATCH),
            change(30, TestPlans.steady("6", "1")),
            change(31, CONTINUOUS));
    assertThat(until(soon, CueKind.RHYTHM_CHANGED, 30)).isEqualTo(31);
    assertThat(until(soon, CueKind.SQUEEZE, 30)).isEqualTo(300);
  }

  @Test
  void aSilenceEndsTheSoundsOfABreathButNoReminder() {
    CueSchedule schedule = with(at(12.2, Control.Kind.PROMPTS_OFF));
    assertThat(schedule.silences())
        .extracting(UnpromptedSpan::startNanos)
        .containsExactly(nanos(14));
    assertThat(until(schedule, CueKind.COUNT, 11)).isEqualTo(14);
    assertThat(until(schedule, CueKind.SQUEEZE, 12)).isEqualTo(14);
    assertThat(until(schedule, CueKind.RELEASE, 13)).isEqualTo(14);
    CueSchedule late = with(at(246.2, Control.Kind.PROMPTS_OFF));
    assertThat(until(late, CueKind.LAST_MINUTE, 240)).isEqualTo(300);
    assertThat(until(late, CueKind.SQUEEZE, 240)).isEqualTo(248);
  }

  /** Every 60/110 s from the start, whether or not suction goes on; no breath in suction. */
  @Test
  void compressionsGoOnInStepThroughSuctionWithoutBreaths() {
    CueSchedule schedule =
        CueSchedule.of(
            plan(CONTINUOUS),
            List.of(
                at(30.1, Control.Kind.SUCTION_COMPRESSING), at(42.7, Control.Kind.SUCTION_END)));
    long[] wanted =
        LongStream.range(0, 110)
            .map(k -> Math.round(k * 60e9 / 110))
            .filter(n -> n < 59 * SECOND)
            .toArray();
    List<Long> heard =
        schedule.between(0, 59 * SECOND).stream()
            .filter(c -> c.kind() == CueKind.COMPRESS)
            .map(Cue::atNanos)
            .toList();
    assertThat(heard).hasSameSizeAs(wanted);
    for (int i = 0; i < wanted.length; i++) {
      // Counted on from a compression, whose instant is rounded.
      assertThat(heard.get(i)).isBetween(wanted[i] - 2, wanted[i] + 2);
    }
    assertThat(schedule.between(nanos(30.1), nanos(42.7)))
        .extracting(Cue::kind)
        .containsOnly(CueKind.COMPRESS, CueKind.SUCTION_SOON);
    assertThat(schedule.squeezesAsked(nanos(30.1), nanos(50)))
        .containsExactly(nanos(42.7), nanos(48.7));
    assertThat(schedule.inForceAt(nanos(35)).compressing()).isTrue();
  }

  @Test
  void suctionHoldsUpARhythmWithoutCompressions() {
    CueSchedule schedule = with(at(30.1, Control.Kind.SUCTION_COMPRESSING));
    assertThat(schedule.stretchAt(nanos(31)).compressing()).isFalse();
    assertThat(schedule.between(nanos(30.1), nanos(41)))
        .extracting(Cue::kind)
        .containsExactly(CueKind.SUCTION_SOON);
  }

  /** The limit of 15 s is told every 5 s from then on, whichever part is asked for. */
  @Test
  void anOverrunLimitIsToldAgainFromItsPlaceOn() {
    CueSchedule schedule = with(at(30, Control.Kind.SUCTION));
    assertThat(schedule.between(nanos(45) + 1, nanos(55)))
        .extracting(Cue::atNanos)
        .containsExactly(nanos(50));
    assertThat(schedule.between(nanos(50), nanos(50) + 1))
        .extracting(Cue::count)
        .containsExactly(2);
    assertThat(schedule.between(nanos(50) + 1, nanos(55) + 1))
        .extracting(Cue::count)
        .containsExactly(3);
  }

  @Test
  void aRangeDoesNotHoldItsEnd() {
    CueSchedule schedule = with(at(30, Control.Kind.PULSE_CHECK));
    assertThat(schedule.between(nanos(34) + 1, nanos(35))).isEmpty();
    assertThat(schedule.between(nanos(35), nanos(35) + 1))
        .extracting(Cue::kind)
        .containsExactly(CueKind.PULSE_CHECK_SECOND, CueKind.PULSE_CHECK_ENOUGH);
  }

  @Test
  void onlyOneRhythmWithoutAHoldIsUnbroken() {
    CueSchedule schedule =
        with(
            at(13, Control.Kind.PULSE_CHECK),
            at(15, Control.Kind.PULSE_CHECK_END),
            change(42.5, TestPlans.steady("5.5", "1")),
            at(60, Control.Kind.WATCH),
            at(70, Control.Kind.NO_RATE));
    assertThat(schedule.unbroken(0, nanos(12.9))).isTrue();
    assertThat(schedule.unbroken(nanos(12), nanos(18))).isFalse();
    assertThat(schedule.unbroken(nanos(14), nanos(18))).isFalse();
    assertThat(schedule.unbroken(nanos(18), nanos(42))).isTrue();
    assertThat(schedule.unbroken(nanos(42), nanos(48))).isFalse();
    assertThat(schedule.unbroken(nanos(59), nanos(61))).isFalse();
    assertThat(schedule.unbroken(nanos(61), nanos(69))).isFalse();
    assertThat(schedule.unbroken(nanos(69), nanos(71))).isFalse();
  }

  /** Due at 120 s; a check within a minute serves it, so it is told until 180 s. */
  @Test
  void aCheckIsDueUntilItIsServedOrAMinuteIsOver() {
    assertThat(with().nextPulseCheckAt(nanos(180))).hasValue(nanos(120));
    assertThat(with().nextPulseCheckAt(nanos(180) + 1)).hasValue(nanos(240));
    CueSchedule served =
        with(at(130, Control.Kind.PULSE_CHECK), at(136, Control.Kind.PULSE_CHECK_END));
    assertThat(served.nextPulseCheckAt(nanos(130) - 1)).hasValue(nanos(120));
    assertThat(served.nextPulseCheckAt(nanos(130))).hasValue(nanos(250));
  }

  private static List<Long> first(CueSchedule schedule, CueKind kind, double from, int count) {
    return schedule.between(nanos(from), END).stream()
        .filter(c -> c.kind() == kind)
        .limit(count)
        .map(Cue::atNanos)
        .toList();
  }

  private static PracticePlan withLead(Rhythm rhythm, double countIn) {
    return new PracticePlan(guidance(rhythm), nanos(countIn), END, nanos(0.1));
  }

  @Test
  void compressionsAreCountedFromOne() {
    assertThat(CueSchedule.of(plan(CONTINUOUS)).between(1, 2 * SECOND))
        .filteredOn(c -> c.kind() == CueKind.COMPRESS)
        .extracting(Cue::count)
        .containsExactly(2, 3, 4);
  }

  /** Compressions of 110/min come at 9.818, 10.364 and 10.909 s; a breath at 6 and 12 s. */
  @Test
  void compressionsKeepTheirDistanceWhereTheyAlreadyRan() {
    Rhythm cycle = TestPlans.cycle("110", 30, 2, "4", "1");
    long nineteenth = Math.round(19 * 60e9 / 110);
    long twentieth = Math.round(20 * 60e9 / 110);
    CueSchedule between = CueSchedule.of(withLead(CONTINUOUS, 0), List.of(change(10, cycle)));
    assertThat(first(between, CueKind.COMPRESS, 10, 1).get(0))
        .isBetween(nineteenth - 2, nineteenth + 2);
    CueSchedule justBefore = CueSchedule.of(withLead(CONTINUOUS, 0), List.of(change(10.3, cycle)));
    assertThat(first(justBefore, CueKind.COMPRESS, 10.3, 1)).containsExactly(nineteenth);
    CueSchedule justAfter = CueSchedule.of(withLead(CONTINUOUS, 0), List.of(change(10.4, cycle)));
    assertThat(first(justAfter, CueKind.COMPRESS, 10.4, 1).get(0))
        .isBetween(twentieth - 2, twentieth + 2);
    CueSchedule begun =
        CueSchedule.of(withLead(TestPlans.steady("6", "1"), 0), List.of(change(10.3, CONTINUOUS)));
    assertThat(first(begun, CueKind.COMPRESS, 0, 1)).containsExactly(nanos(10.4));
    assertThat(first(begun, CueKind.SQUEEZE, 10.3, 1)).containsExactly(nanos(12));
  }

  /** The breaths that waited come first, the lead after the end; 30 compressions follow them. */
  @Test
  void afterSuctionInACycleBreathsComeFirst() {
    CueSchedule schedule =
        CueSchedule.of(
            withLead(TestPlans.cycle("110", 30, 2, "4", "1"), 0),
            List.of(at(5, Control.Kind.SUCTION_COMPRESSING), at(9, Control.Kind.SUCTION_END)));
    assertThat(first(schedule, CueKind.SQUEEZE, 0, 2)).containsExactly(nanos(9.1), nanos(11.1));
    assertThat(first(schedule, CueKind.COMPRESS, 9, 1)).containsExactly(nanos(13.1));
    assertThat(schedule.segments())
        .extracting(Segment::kind)
        .startsWith(Segment.Kind.PACED, Segment.Kind.SUCTION, Segment.Kind.PACED);
  }

  @Test
  void suctionOutlastsTheCompressionsThatAChangeEnds() {
    CueSchedule schedule =
        CueSchedule.of(
            plan(CONTINUOUS),
            List.of(
                at(5, Control.Kind.SUCTION_COMPRESSING),
                change(8, TestPlans.steady("6", "1")),
                at(12, Control.Kind.SUCTION_END)));
    assertThat(schedule.stretchAt(nanos(7)).compressing()).isTrue();
    assertThat(schedule.stretchAt(nanos(9)).kind()).isEqualTo(Segment.Kind.SUCTION);
    assertThat(schedule.stretchAt(nanos(9)).compressing()).isFalse();
    assertThat(first(schedule, CueKind.COMPRESS, 8, 1)).isEmpty();
    assertThat(first(schedule, CueKind.SQUEEZE, 8, 1)).containsExactly(nanos(12));
  }

  @Test
  void aHoldWhileWatchingEndsInWatching() {
    CueSchedule schedule =
        with(
            at(20, Control.Kind.WATCH),
            at(30, Control.Kind.PULSE_CHECK),
            at(36, Control.Kind.PULSE_CHECK_END));
    assertThat(schedule.segments())
        .extracting(Segment::kind)
        .containsExactly(
            Segment.Kind.PACED,
            Segment.Kind.WATCHING,
            Segment.Kind.PULSE_CHECK,
            Segment.Kind.WATCHING,
            Segment.Kind.ENDED);
  }

  @Test
  void aChangeInTheCountInTakesThePlaceOfWhatItLedTo() {
    PracticePlan plan = withLead(TestPlans.steady("6", "1"), 3);
    CueSchedule watched =
        CueSchedule.of(plan, List.of(at(0.5, Control.Kind.PROMPTS_OFF), at(1, Control.Kind.WATCH)));
    assertThat(watched.stretchAt(nanos(3)).kind()).isEqualTo(Segment.Kind.WATCHING);
    assertThat(watched.silences()).containsExactly(new UnpromptedSpan(nanos(0.5), nanos(1)));
    CueSchedule changed = CueSchedule.of(plan, List.of(change(1, CONTINUOUS)));
    assertThat(first(changed, CueKind.COMPRESS, 0, 1)).containsExactly(nanos(3));
    assertThat(changed.stretchAt(nanos(2)).kind()).isEqualTo(Segment.Kind.COUNT_IN);
  }

  @Test
  void promptsFallSilentAtOnceBeforeTheFirstSqueezeAfterAHold() {
    CueSchedule schedule =
        CueSchedule.of(
            withLead(TestPlans.steady("6", "1"), 0),
            List.of(
                at(20, Control.Kind.SUCTION),
                at(25, Control.Kind.SUCTION_END),
                at(25.05, Control.Kind.PROMPTS_OFF),
                at(40, Control.Kind.PROMPTS_AT_ONCE)));
    assertThat(schedule.silences()).containsExactly(new UnpromptedSpan(nanos(25.05), nanos(40)));
    assertThat(first(schedule, CueKind.SQUEEZE, 19, 2)).containsExactly(nanos(40.1), nanos(46.1));
  }

  /** 30:2 at 110/min: breaths begin after 16.364 s, one every 2 s of a pause of 4 s. */
  @Test
  void aCycleIsShownFromItsCompressionsToItsBreathsAndOn() {
    CueSchedule schedule = CueSchedule.of(plan(TestPlans.cycle("110", 30, 2, "4", "1")));
    long breathing = Math.round(30 * 60e9 / 110);
    Moment compressing = schedule.momentAt(5 * SECOND);
    assertThat(compressing.act()).isEqualTo(Moment.Act.COMPRESS);
    assertThat(compressing.count()).isEqualTo(10);
    assertThat(compressing.nextSqueezeNanos()).hasValue(breathing);
    Moment falling = schedule.momentAt(breathing + nanos(1.5));
    assertThat(falling.act()).isEqualTo(Moment.Act.RELEASE);
    assertThat(falling.fill()).isEqualTo(0.5);
    assertThat(falling.nextSqueezeNanos()).hasValue(breathing + 2 * SECOND);
    Moment second = schedule.momentAt(breathing + nanos(2.5));
    assertThat(second.act()).isEqualTo(Moment.Act.SQUEEZE);
    assertThat(second.count()).isEqualTo(2);
    assertThat(second.nextSqueezeNanos()).hasValue(Math.round(60 * 60e9 / 110) + 4 * SECOND);
  }
}
