package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;

/** What a replay shows is what the live coach showed at the same moment. */
class ReplayTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long SECOND = TestPlans.SECOND;
  private static final Protocol EDITION = TestPlans.edition("aha-2020");

  private final MemoryJournal journal = new MemoryJournal();
  private final Map<Long, CoachState> shown = new TreeMap<>();
  private final PracticePlan plan = plan();
  private final Coach coach = new Coach(plan, journal, List.of());

  private static PracticePlan plan() {
    Guidance guidance =
        EDITION.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2).orElseThrow();
    return PracticePlan.of(EDITION, guidance, 3 * SECOND, 120 * SECOND, 35 * MILLI);
  }

  private void pass(long to) {
    while (coach.nextDueNanos().isPresent() && coach.nextDueNanos().getAsLong() <= to) {
      coach.advance(coach.nextDueNanos().getAsLong());
    }
    coach.advance(to);
  }

  private Session session() {
    return new Session(
        new SessionHeader(
            TestPlans.header(plan).startedAt(), SessionHeader.Origin.LIVE, "", EDITION, plan),
        journal.events,
        List.of());
  }

  /** Any order of squeezes, compressions, holds, findings, slips and their corrections. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void eachMomentStandsAsTheLiveCoachShowedIt(long seed) {
    Random chance = new Random(seed);
    Command[] commands = {
      Command.SQUEEZE, Command.SQUEEZE_END, Command.SQUEEZE, Command.SQUEEZE_END,
      Command.COMPRESS, Command.COMPRESS, Command.COMPRESS, Command.PULSE_CHECK,
      Command.PULSE_CHECK_END, Command.SUCTION, Command.SUCTION_END, Command.PAUSE,
      Command.RESUME, Command.RETRACT_BREATH, Command.UNDO_FINDING, Command.SOUND_LOST,
      Command.SOUND_BACK
    };
    long now = 0;
    while (!coach.state().finished()) {
      // Above the bounce of a contact, of which a journal keeps only the ends.
      now += (250 + chance.nextInt(1_500)) * MILLI;
      pass(now);
      if (chance.nextInt(12) == 0) {
        PatientChange[] all = PatientChange.values();
        coach.find(all[chance.nextInt(all.length)], now);
      } else {
        coach.command(commands[chance.nextInt(commands.length)], now);
      }
      pass(now + 100 * MILLI);
      shown.put(now + 100 * MILLI, coach.state());
      if (now > 3_600 * SECOND) {
        coach.command(Command.FINISH, now);
      }
      if (now > 400 * SECOND) {
        coach.command(Command.RESUME, now);
      }
    }
    assertThat(shown).hasSizeGreaterThan(60);
    Replay replay = new Replay(session());
    List<Map.Entry<Long, CoachState>> anyOrder = new ArrayList<>(shown.entrySet());
    java.util.Collections.shuffle(anyOrder, chance);
    for (Map.Entry<Long, CoachState> moment : anyOrder) {
      same(replay.stateAt(moment.getKey()), moment.getValue(), moment.getKey());
    }
  }

  private static void same(CoachState played, CoachState live, long at) {
    assertThat(played.breaths()).as("breaths at %s", at).isEqualTo(live.breaths());
    assertThat(played.squeezing()).as("squeezing at %s", at).isEqualTo(live.squeezing());
    assertThat(played.recentCompressions()).isEqualTo(live.recentCompressions());
    assertThat(played.compressionCount()).isEqualTo(live.compressionCount());
    assertThat(played.lastIntervalNanos()).isEqualTo(live.lastIntervalNanos());
    assertThat(played.soundLost()).isEqualTo(live.soundLost());
    assertThat(played.finished()).as("finished at %s", at).isEqualTo(live.finished());
    assertThat(played.schedule().segments()).isEqualTo(live.schedule().segments());
    assertThat(played.findings().toString().replaceAll("Course@\\w+", ""))
        .isEqualTo(live.findings().toString().replaceAll("Course@\\w+", ""));
    assertThat(played.course().guidance()).isEqualTo(live.course().guidance());
    assertThat(played.course().care()).isEqualTo(live.course().care());
  }

  @Test
  void whatLiesAheadIsNotBetrayed() {
    pass(10 * SECOND);
    coach.command(Command.SQUEEZE, 10 * SECOND);
    pass(11 * SECOND);
    coach.command(Command.SQUEEZE_END, 11 * SECOND);
    pass(12 * SECOND);
    coach.command(Command.RETRACT_BREATH, 12 * SECOND);
    pass(20 * SECOND);
    coach.find(PatientChange.PULSE_LOST, 20 * SECOND);
    pass(22 * SECOND);
    coach.command(Command.UNDO_FINDING, 22 * SECOND);
    pass(30 * SECOND);
    coach.command(Command.FINISH, 30 * SECOND);
    Replay replay = new Replay(session());
    assertThat(replay.endNanos()).isEqualTo(30 * SECOND);
    assertThat(replay.stateAt(10 * SECOND - 1).breaths()).isEmpty();
    assertThat(replay.stateAt(10_500 * MILLI).squeezing()).isTrue();
    assertThat(replay.stateAt(10_500 * MILLI).breaths().get(0).endNanos()).isEmpty();
    assertThat(replay.stateAt(11_500 * MILLI).breaths().get(0).endNanos()).hasValue(11 * SECOND);
    assertThat(replay.stateAt(13 * SECOND).breaths()).isEmpty();
    assertThat(replay.stateAt(19 * SECOND).schedule().endNanos()).hasValue(123 * SECOND);
    assertThat(replay.stateAt(19 * SECOND).findings()).isEmpty();
    assertThat(replay.stateAt(21 * SECOND).findings().get(0).undone()).isFalse();
    assertThat(replay.stateAt(23 * SECOND).findings().get(0).undone()).isTrue();
    assertThat(replay.stateAt(-1).finished()).isFalse();
    assertThat(replay.stateAt(31 * SECOND).finished()).isTrue();
  }
}
