package squeezewell.station.file;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The entries of a station file, each list in the file's order, as far as they could be read.
 *
 * @param findings what may be found
 * @param branches where chance or an examiner decides
 * @param orders what may be ordered besides tasks
 * @param tasks what is to be done
 * @param steps the script
 * @param faults critical faults
 */
record StationParts(
    List<StationFinding> findings,
    List<StationBranch> branches,
    List<StationOrder> orders,
    List<StationTask> tasks,
    List<ScriptStep> steps,
    List<CriticalFault> faults) {

  /** What stands at a place such as {@code tasks[2]}, for people who do not count from 0. */
  Map<String, String> names() {
    Map<String, String> names = new HashMap<>();
    for (int i = 0; i < tasks.size(); i++) {
      names.put("tasks[" + i + "]", name("task", i, tasks.get(i).id(), tasks.get(i).words()));
    }
    for (int i = 0; i < findings.size(); i++) {
      StationFinding finding = findings.get(i);
      names.put("findings[" + i + "]", name("finding", i, finding.id(), finding.words()));
    }
    for (int i = 0; i < branches.size(); i++) {
      StationBranch branch = branches.get(i);
      names.put("branches[" + i + "]", name("branch", i, branch.id(), branch.words()));
    }
    for (int i = 0; i < orders.size(); i++) {
      names.put("orders[" + i + "]", name("order", i, orders.get(i).id(), orders.get(i).words()));
    }
    for (int i = 0; i < steps.size(); i++) {
      names.put("script[" + i + "]", name("step", i, steps.get(i).id(), steps.get(i).says()));
    }
    for (int i = 0; i < faults.size(); i++) {
      CriticalFault fault = faults.get(i);
      names.put("criticalFaults[" + i + "]", name("fault", i, fault.id(), fault.words()));
    }
    return names;
  }

  private static String name(String kind, int place, String id, String words) {
    return kind + " " + (place + 1) + " of the list, " + id + (words.isEmpty() ? "" : ": " + words);
  }
}
