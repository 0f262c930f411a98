package squeezewell.station.file;

import java.util.List;
import java.util.Optional;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * A scripted practical exercise. Made by {@link StationReader} only, so that every identifier in it
 * leads somewhere. Two stations are equal if they are defined by the same text.
 *
 * @param id identifier of lower-case letters, digits and hyphens
 * @param title name shown to people
 * @param setting where it plays and what was reported
 * @param group age group
 * @param patient the patient in words
 * @param situation the rhythm that the practice starts with
 * @param kit what lies ready
 * @param oxygen the cylinder, if there is one
 * @param preparationNanos how long the preparation may take; 0 if there is none
 * @param exerciseNanos how long the exercise lasts at most
 * @param findings what may hold
 * @param tasks what has to be done, in the order in which it is listed
 * @param orders what else the trainee may do or have done
 * @param branches where it can go several ways
 * @param steps the script
 * @param rules what alone spoils it or has to be improved
 * @param definition the text of its file, without needless space
 */
public record Station(
    String id,
    String title,
    String setting,
    PatientGroup group,
    String patient,
    Situation situation,
    List<String> kit,
    Optional<StationOxygen> oxygen,
    long preparationNanos,
    long exerciseNanos,
    List<StationFinding> findings,
    List<StationTask> tasks,
    List<StationOrder> orders,
    List<StationBranch> branches,
    List<ScriptStep> steps,
    List<StationRule> rules,
    String definition) {
  public Station {
    kit = List.copyOf(kit);
    findings = List.copyOf(findings);
    tasks = List.copyOf(tasks);
    orders = List.copyOf(orders);
    branches = List.copyOf(branches);
    steps = List.copyOf(steps);
    rules = List.copyOf(rules);
  }

  /** The task of that identifier. */
  public Optional<StationTask> task(String taskId) {
    return tasks.stream().filter(t -> t.id().equals(taskId)).findFirst();
  }

  /** The finding of that identifier. */
  public Optional<StationFinding> finding(String findingId) {
    return findings.stream().filter(f -> f.id().equals(findingId)).findFirst();
  }

  /** The order of that identifier. */
  public Optional<StationOrder> order(String orderId) {
    return orders.stream().filter(o -> o.id().equals(orderId)).findFirst();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Station station && definition.equals(station.definition);
  }

  @Override
  public int hashCode() {
    return definition.hashCode();
  }

  @Override
  public String toString() {
    return "station " + id;
  }
}
