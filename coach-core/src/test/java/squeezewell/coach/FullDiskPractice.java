package squeezewell.coach;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.storage.FileJournal;

/** A practice that goes on until its file can grow no more, and a little beyond. */
final class FullDiskPractice {
  private static int taken;

  private FullDiskPractice() {}

  public static void main(String[] args) throws IOException {
    PracticePlan plan = TestPlans.everySixSeconds(PracticePlan.LONGEST_NANOS);
    FileJournal file = FileJournal.create(Path.of(args[0]), TestPlans.header(plan));
    Coach coach = new Coach(plan, counting(file), List.of());
    long k = 0;
    while (coach.state().trouble().isEmpty()) {
      coach.command(Command.SQUEEZE, k * TestPlans.SECOND);
      coach.command(Command.SQUEEZE_END, k * TestPlans.SECOND + TestPlans.SECOND / 2);
      k++;
    }
    coach.command(Command.SQUEEZE, k * TestPlans.SECOND);
    boolean goesOn = coach.state().squeezing() && !coach.state().finished();
    System.out.println(taken + " " + goesOn + " " + coach.state().trouble());
  }

  private static Journal counting(Journal inner) {
    return new Journal() {
      @Override
      public void append(SessionEvent event) throws IOException {
        inner.append(event);
        taken++;
      }

      @Override
      public void close() throws IOException {
        inner.close();
      }
    };
  }
}
