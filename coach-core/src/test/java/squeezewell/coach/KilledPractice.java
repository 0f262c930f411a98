package squeezewell.coach;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.storage.FileJournal;

/** A practice at speed in a process of its own, for {@link JournalSurvivesKillTest} to kill. */
final class KilledPractice {
  private KilledPractice() {}

  public static void main(String[] args) throws IOException {
    Random random = new Random(Long.parseLong(args[1]));
    PracticePlan plan = TestPlans.everySixSeconds(PracticePlan.LONGEST_NANOS);
    try (FileJournal file = FileJournal.create(Path.of(args[0]), TestPlans.header(plan))) {
      Coach coach = new Coach(plan, new Acknowledging(file), List.of());
      Command[] commands = Command.values();
      long now = 0;
      while (!coach.state().finished()) {
        now += random.nextInt(2_000_000_000);
        Command command = commands[random.nextInt(commands.length)];
        coach.command(command == Command.FINISH ? Command.SQUEEZE : command, now);
      }
    }
  }

  /** Says the number of an event as soon as the file has taken it. */
  private static final class Acknowledging implements Journal {
    private final Journal inner;

    Acknowledging(Journal inner) {
      this.inner = inner;
    }

    @Override
    public void append(SessionEvent event) throws IOException {
      inner.append(event);
      System.out.println(event.number());
      System.out.flush();
    }

    @Override
    public void close() throws IOException {
      inner.close();
    }
  }
}
