package squeezewell.station.file;

import java.util.List;
import java.util.Optional;
import squeezewell.protocol.PatientChange;

/**
 * A step of the script: once something happens, the examiner says something, findings come and go.
 * A step that an order sets off is taken each time; any other is taken once.
 *
 * @param id identifier
 * @param when what sets it off
 * @param delayNanos how long after that it is taken, on the station's clock
 * @param holding identifiers of findings that must all hold at that time
 * @param absent identifiers of findings of which none may hold at that time
 * @param only the way of a branch on which it exists; empty for all
 * @param says the examiner's words; empty if nothing is said
 * @param raises identifiers of findings that come
 * @param clears identifiers of findings that go
 * @param tells what the live practice is told, so that its prompts change
 */
public record ScriptStep(
    String id,
    Trigger when,
    long delayNanos,
    List<String> holding,
    List<String> absent,
    Optional<BranchOption> only,
    String says,
    List<String> raises,
    List<String> clears,
    Optional<PatientChange> tells)
    implements StationEntry {
  public ScriptStep {
    holding = List.copyOf(holding);
    absent = List.copyOf(absent);
    raises = List.copyOf(raises);
    clears = List.copyOf(clears);
  }

  @Override
  public String words() {
    return says;
  }
}
