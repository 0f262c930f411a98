package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.Tries;
import squeezewell.coach.Command;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationTask;
import squeezewell.storage.FileJournal;

/** A clock that leaps, an input that comes late, a file that is cut off: nothing done is lost. */
class StationClockTest {
  private static final long SECOND = Candidate.SECOND;

  /** A machine that slept: the clock leaps, within the exercise, past it, past the whole plan. */
  @ParameterizedTest
  @ValueSource(longs = {2, 30, 130, 400, 600, 7_200, 400_000})
  void aClockThatLeapsLosesNoFact(long leapSeconds) throws Exception {
    for (Station station : StationLibrary.stations()) {
      for (int moment = 0; moment < 4; moment++) {
        for (boolean withSqueeze : new boolean[] {false, true}) {
          List<SessionEvent> events = new ArrayList<>();
          StationPractice practice = practice(station, new StationRunPropertyTest.InMemory(events));
          long now = upTo(moment, practice) + leapSeconds * SECOND;
          if (withSqueeze) {
            practice.command(Command.SQUEEZE, now);
          }
          practice.advance(now);
          practice.runClock(now);
          practice.advanceByAll(now + 1_000 * SECOND);
          String place = station.id() + ", moment " + moment + ", leap " + leapSeconds;
          assertThat(practice.state().end()).as(place).contains(StationState.End.CLOCK);
          assertThat(practice.practice().finished()).as(place).isTrue();
          assertThat(count(events, EventType.STATION_BEGIN)).as(place).isEqualTo(1);
          assertThat(count(events, EventType.STATION_END)).as(place).isEqualTo(1);
          assertThat(count(events, EventType.EXAMINER))
              .as(place)
              .isEqualTo(practice.state().lines().size());
          assertInOrder(events);
          assertThat(StationResult.of(events).state()).as(place).isEqualTo(practice.state());
        }
      }
    }
  }

  /** In the preparation, before breaths, between breaths, and with the station's clock stopped. */
  private static long upTo(int moment, StationPractice practice) {
    long now = 10 * SECOND;
    practice.advanceByAll(now);
    if (moment > 0) {
      practice.begin(now);
      now += 5 * SECOND;
      practice.advanceByAll(now);
    }
    for (int breath = 0; moment > 1 && breath < 4; breath++) {
      practice.command(Command.SQUEEZE, now);
      practice.advanceByAll(now + SECOND);
      practice.command(Command.SQUEEZE_END, now + SECOND);
      now += 6 * SECOND;
      practice.advanceByAll(now);
    }
    if (moment > 2) {
      practice.stopClock(now);
    }
    return now;
  }

  /** An input may be stamped long before what the program has got to by then. */
  @Property(tries = 60)
  void anInputOfAnEarlierTimeIsTakenAtTheTimeItCameTo(@ForAll long seed) throws Exception {
    for (int i = 0; i < Tries.orLong(1, 5); i++) {
      anInputOfAnEarlierTime(seed + i);
    }
  }

  private void anInputOfAnEarlierTime(long seed) throws Exception {
    Random random = new Random(seed);
    List<Station> all = StationLibrary.stations();
    List<SessionEvent> events = new ArrayList<>();
    StationPractice practice =
        practice(all.get(random.nextInt(all.size())), new StationRunPropertyTest.InMemory(events));
    practice.begin(0);
    long now = 0;
    int taken = 0;
    for (int i = 0; i < 40; i++) {
      now += (long) (random.nextDouble() * 5 * SECOND);
      practice.advanceByAll(now);
      long at = (long) (random.nextDouble() * now);
      List<StationTask> tasks = practice.state().station().tasks();
      String task = tasks.get(random.nextInt(tasks.size())).id();
      boolean done =
          switch (random.nextInt(4)) {
            case 0 -> practice.done(task, at);
            case 1 -> practice.start(task, at);
            case 2 -> practice.remark("said", at);
            default -> {
              practice.command(Command.BREATH, at);
              yield false;
            }
          };
      taken += done ? 1 : 0;
      assertThat(
              count(events, EventType.TASK_DONE)
                  + count(events, EventType.TASK_START)
                  + count(events, EventType.REMARK))
          .isGreaterThanOrEqualTo(taken);
      assertInOrder(events);
    }
    practice.end(0);
    assertThat(practice.practice().finished()).isTrue();
    assertThat(StationResult.of(events).state()).isEqualTo(practice.state());
  }

  /** Wherever the file ends, all whole lines are there, and the rest is told in plain words. */
  @Test
  void aJournalCutOffAnywhereKeepsAllItsWholeLines(@TempDir Path folder) throws Exception {
    Station station = StationLibrary.stations().get(0);
    Path file = folder.resolve("whole.jsonl");
    List<SessionEvent> events = played(station, file);
    byte[] whole = Files.readAllBytes(file);
    int lines = 0;
    for (int length = 1; length <= whole.length; length++) {
      boolean lineEnds = whole[length - 1] == '\n';
      lines += lineEnds ? 1 : 0;
      // Each end of a line, and many places within one.
      if (lines == 0 || !(lineEnds || length % 97 == 0)) {
        continue;
      }
      Path cut = folder.resolve("cut.jsonl");
      Files.write(cut, Arrays.copyOf(whole, length));
      Session session = SessionReader.read(cut);
      assertThat(session.events()).isEqualTo(events.subList(0, lines - 1));
      if (lineEnds) {
        assertThat(session.notes()).isEmpty();
      } else {
        assertThat(session.notes())
            .singleElement()
            .asString()
            .startsWith("line " + (lines + 1) + " was torn off after ")
            .endsWith("everything before it is good");
      }
      boolean ended = count(session.events(), EventType.STATION_END) > 0;
      if (StationResult.isIn(session.events()) && !ended) {
        StationResult result = StationResult.of(session.events());
        assertThat(result.state().end()).as("%s bytes", length).isEmpty();
        assertThat(result.state().remarks())
            .hasSize((int) count(session.events(), EventType.REMARK));
      }
    }
    assertThat(lines).isEqualTo(events.size() + 1);
  }

  @Test
  void anEventOfAnEarlierTimeEndsWhatIsRead(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("whole.jsonl");
    List<SessionEvent> events = played(StationLibrary.stations().get(0), file);
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    int remark = 0;
    while (events.get(remark).what() != EventType.REMARK) {
      remark++;
    }
    long before = events.get(remark - 1).atNanos();
    lines.set(
        remark + 1,
        lines.get(remark + 1).replace(Long.toString(events.get(remark).atNanos()), "1000"));
    Files.write(file, lines);
    Session read = SessionReader.read(file);
    assertThat(read.events()).isEqualTo(events.subList(0, remark));
    assertThat(read.notes().get(0))
        .startsWith(
            "line "
                + (remark + 2)
                + ": at is 1000; allowed: at least "
                + before
                + ", the time of the line before");
  }

  private static StationPractice practice(Station station, Journal journal) throws Exception {
    return new StationPractice(
        station,
        StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), 1),
        StationRunPropertyTest.plan(station),
        journal,
        List.of());
  }

  /** A short run with breaths, taps and a remark, in a file and as what went into it. */
  private static List<SessionEvent> played(Station station, Path file) throws Exception {
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-03-01T09:00:00Z"),
            SessionHeader.Origin.LIVE,
            "",
            StationRunPropertyTest.edition(station),
            StationRunPropertyTest.plan(station));
    List<SessionEvent> events = new ArrayList<>();
    try (FileJournal kept = FileJournal.create(file, header)) {
      StationPractice practice =
          practice(
              station,
              new Journal() {
                @Override
                public void append(SessionEvent event) throws IOException {
                  kept.append(event);
                  events.add(event);
                }

                @Override
                public void close() {
                  // The file is closed by whoever opened it.
                }
              });
      long now = upTo(2, practice);
      for (StationTask task : station.tasks()) {
        now += SECOND;
        practice.advanceByAll(now);
        practice.done(task.id(), now);
      }
      practice.remark("Good seal.", now + SECOND);
      practice.end(now + 2 * SECOND);
    }
    return events;
  }

  private static long count(List<SessionEvent> events, EventType what) {
    return events.stream().filter(e -> e.what() == what).count();
  }

  private static void assertInOrder(List<SessionEvent> events) {
    for (int i = 0; i < events.size(); i++) {
      assertThat(events.get(i).number()).isEqualTo(i + 1);
      assertThat(events.get(i).atNanos())
          .isGreaterThanOrEqualTo(i == 0 ? 0 : events.get(i - 1).atNanos());
    }
  }
}
