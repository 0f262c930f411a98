package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/** Compressions go on in step while somebody else clears the airway, and after it. */
class CompressionsThroughSuctionTest {
  private static final long SECOND = TestPlans.SECOND;
  private static final long COUNT_IN = 3_100_000_000L;
  private static final long FROM = 20_300_000_000L;
  private static final long TO = 41_700_000_000L;

  private static CueSchedule schedule(Control.Kind suction) {
    Protocol edition = TestPlans.edition("aha-2025");
    PracticePlan plan =
        PracticePlan.of(
            edition,
            edition.find(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY).get(),
            COUNT_IN,
            60 * SECOND,
            0);
    return CueSchedule.of(
        plan, List.of(new Control(FROM, suction), new Control(TO, Control.Kind.SUCTION_END)));
  }

  private static List<Cue> cues(CueSchedule schedule, CueKind kind, long from, long to) {
    List<Cue> cues = new ArrayList<>(schedule.between(from, to));
    cues.removeIf(c -> c.kind() != kind);
    return cues;
  }

  @Test
  void noCompressionIsLostOrShifted() {
    List<Cue> cues =
        cues(schedule(Control.Kind.SUCTION_COMPRESSING), CueKind.COMPRESS, 0, 60 * SECOND);
    assertThat(cues).hasSizeGreaterThan(100);
    for (int k = 0; k < cues.size(); k++) {
      // By hand: 110 a minute, counted from the end of the count-in.
      double expected = COUNT_IN + k * 60.0e9 / 110;
      assertThat(cues.get(k).atNanos()).isBetween((long) expected - 1, (long) expected + 1);
    }
  }

  @Test
  void breathsWaitAndTheLimitOfSuctionIsTold() {
    CueSchedule schedule = schedule(Control.Kind.SUCTION_COMPRESSING);
    assertThat(cues(schedule, CueKind.SQUEEZE, FROM, TO)).isEmpty();
    Segment segment = schedule.stretchAt(30 * SECOND);
    assertThat(segment.kind()).isEqualTo(Segment.Kind.SUCTION);
    assertThat(segment.compressing()).isTrue();
    assertThat(segment.holdsUp()).isTrue();
    // The first breath after suction comes at once: it takes oxygen away.
    assertThat(cues(schedule, CueKind.SQUEEZE, TO, 60 * SECOND).get(0).atNanos()).isEqualTo(TO);
    CueSchedule waiting = schedule(Control.Kind.SUCTION);
    assertThat(cues(waiting, CueKind.COMPRESS, FROM, TO)).as("all waits").isEmpty();
  }
}
