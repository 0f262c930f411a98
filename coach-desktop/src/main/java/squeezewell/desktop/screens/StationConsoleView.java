package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import squeezewell.coach.CoachState;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationFinding;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationRule;
import squeezewell.station.run.StationState;
import squeezewell.station.run.TaskState;
import squeezewell.words.Quantities;

/**
 * What the instructor sees of a running station. Pure.
 *
 * @param clock the phase and what is left of it
 * @param said what the examiner said last; empty if nothing yet
 * @param ways the ways of branches that have not been reached
 * @param findings the station's findings and whether they hold
 * @param prompts what else may be found, which changes the prompts only
 * @param tasks the tasks and how they stand
 * @param faults rules broken so far, a critical one with an exclamation mark
 * @param remarks remarks so far, the last one first
 */
record StationConsoleView(
    String clock,
    String said,
    List<Mark> ways,
    List<Mark> findings,
    List<Mark> prompts,
    List<Mark> tasks,
    List<String> faults,
    List<String> remarks) {
  StationConsoleView {
    ways = List.copyOf(ways);
    findings = List.copyOf(findings);
    prompts = List.copyOf(prompts);
    tasks = List.copyOf(tasks);
    faults = List.copyOf(faults);
    remarks = List.copyOf(remarks);
  }

  /**
   * Something that can be pressed: a way, a finding, or a task to be marked.
   *
   * @param id identifier or word
   * @param words for people; of a task, what it is and what counts as done
   * @param status how it stands, in words
   * @param on whether it holds, runs or is late
   * @param done whether it is done
   */
  record Mark(String id, String words, String status, boolean on, boolean done) {}

  /** The view of a station at an instant of session time. */
  static StationConsoleView of(StationState state, CoachState practice, long nowNanos) {
    StationRunView run = StationRunView.of(state, nowNanos);
    List<Mark> findings = new ArrayList<>();
    for (StationFinding finding : state.station().findings()) {
      boolean on = state.holds(finding.id());
      findings.add(
          new Mark(
              finding.id(),
              finding.words(),
              on ? "holds, press to clear" : "press to bring on",
              on,
              false));
    }
    List<Mark> prompts = new ArrayList<>();
    for (FindingsView.Offer choice : FindingsView.of(practice).choices()) {
      prompts.add(new Mark(choice.finding().word(), choice.label(), choice.leads(), false, false));
    }
    List<Mark> tasks = new ArrayList<>();
    for (TaskState task : state.tasks()) {
      tasks.add(
          new Mark(
              task.task().id(),
              task.task().words() + (task.task().critical() ? " *" : ""),
              task.word(),
              task.progress() == TaskState.Progress.RUNNING
                  || task.progress() == TaskState.Progress.LATE,
              task.progress() == TaskState.Progress.DONE));
    }
    List<String> faults = new ArrayList<>();
    for (StationState.Fault fault : state.faults()) {
      boolean critical = fault.severity() == StationRule.Severity.CRITICAL;
      faults.add(Quantities.clock(fault.atNanos()) + (critical ? "  ! " : "  ") + fault.words());
    }
    List<String> remarks = new ArrayList<>();
    for (int i = state.remarks().size() - 1; i >= 0; i--) {
      StationState.Remark remark = state.remarks().get(i);
      remarks.add(Quantities.clock(remark.atNanos()) + "  " + remark.words());
    }
    boolean ended = state.phase() == StationPhase.ENDED;
    return new StationConsoleView(
        state.phase().label()
            + (ended ? "" : ", " + run.left() + " left")
            + (state.clockStopped() ? ", clock stopped" : ""),
        run.examiner(),
        ways(state),
        findings,
        prompts,
        tasks,
        faults,
        remarks);
  }

  /** What can still be chosen. A branch that has been reached can't be gone back on. */
  private static List<Mark> ways(StationState state) {
    List<Mark> ways = new ArrayList<>();
    for (StationBranch branch : state.station().branches()) {
      if (state.openBranches().contains(branch.id())) {
        for (StationBranch.Way way : branch.ways()) {
          BranchOption option = new BranchOption(branch.id(), way.id());
          boolean taken = state.setup().takes(option);
          ways.add(
              new Mark(
                  option.words(),
                  branch.words() + ": " + way.words(),
                  taken ? "as it stands" : "press to choose",
                  taken,
                  false));
        }
      }
    }
    return ways;
  }
}
