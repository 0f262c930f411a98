package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.session.EventType;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionEvent;

/**
 * The thread that drives a practice: its end is always told, and the file is closed before that.
 */
class LivePracticeTest {
  private static final int PATIENCE_SECONDS = 30;

  private final LivePlans.Fragile journal = new LivePlans.Fragile();
  private final BlockingQueue<CoachState> ends = new LinkedBlockingQueue<>();
  private final BlockingQueue<Boolean> closedAtEnd = new LinkedBlockingQueue<>();
  private final MonotonicClock clock = MonotonicClock.startNow();
  private final LivePractice practice =
      new LivePractice(LivePlans.plan(), clock, journal, List.of(), this::changed);

  private void changed(CoachState state) {
    if (state.finished()) {
      closedAtEnd.add(journal.closed);
      ends.add(state);
    }
  }

  private CoachState end() throws InterruptedException {
    CoachState end = ends.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    assertThat(end).as("the end is told").isNotNull();
    return end;
  }

  @Test
  void theEndIsToldOnceWhenTheFileIsClosed() throws InterruptedException {
    practice.start();
    practice.post(Command.SQUEEZE, System.nanoTime());
    practice.close();
    assertThat(end().trouble()).isEmpty();
    assertThat(closedAtEnd).containsExactly(true);
    assertThat(ends).as("no second end").isEmpty();
    assertThat(journal.events)
        .extracting(SessionEvent::what)
        .containsExactly(EventType.BREATH, EventType.BREATH_END, EventType.FINISH);
    practice.close();
    assertThat(journal.events).hasSize(3);
  }

  @Test
  void aFaultOfTheProgramEndsThePracticeAndIsToldRatherThanLeavingItHanging()
      throws InterruptedException {
    BlockingQueue<Throwable> faults = new LinkedBlockingQueue<>();
    journal.fault = new IllegalStateException("broken on purpose");
    Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
    Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> faults.add(fault));
    practice.start();
    practice.post(Command.SQUEEZE, System.nanoTime());
    assertThat(end().trouble()).contains("something went wrong", "broken on purpose");
    assertThat(practice.state().finished()).isTrue();
    assertThat(closedAtEnd).containsExactly(true);
    assertThat(faults.poll(PATIENCE_SECONDS, TimeUnit.SECONDS)).isSameAs(journal.fault);
    Thread.setDefaultUncaughtExceptionHandler(before);
  }

  @Test
  void aCommandBearsTheTimeAtWhichItWasGivenNotThatOfItsTurn() throws InterruptedException {
    long pressed = clock.nanos();
    long at = System.nanoTime();
    practice.post(Command.SQUEEZE, at);
    practice.post(Command.SQUEEZE_END, at + 40_000_000);
    while (clock.nanos() < pressed + 100_000_000) {
      Thread.onSpinWait();
    }
    practice.start();
    practice.close();
    end();
    assertThat(journal.events.get(0).atNanos()).isEqualTo(clock.at(at));
    assertThat(journal.events.get(1).atNanos()).isEqualTo(clock.at(at) + 40_000_000);
  }

  @Test
  void aFileThatCanNotBeClosedIsTold() throws InterruptedException {
    practice.start();
    journal.failure = new IOException("no space left");
    practice.close();
    assertThat(end().trouble()).contains("no space left");
  }
}
