package squeezewell.station;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.input.BadInputException;
import squeezewell.input.InputFile;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;
import squeezewell.kit.Cylinder;
import squeezewell.kit.Flow;
import squeezewell.kit.KitLibrary;
import squeezewell.kit.OxygenSupply;
import squeezewell.kit.Pressure;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * Reads station files, format version 1, as docs/formats.md describes them. All faults are
 * gathered; a file with any fault gives no station.
 */
public final class StationReader {
  public static final String FORMAT = "squeezewell-station";
  public static final int VERSION = 1;

  /** A preparation of two minutes is usual (common practice, from memory). */
  public static final int USUAL_PREPARATION_SECONDS = 120;

  /** A station of five minutes is usual (common practice, from memory). */
  public static final int USUAL_EXERCISE_SECONDS = 300;

  /** The longest definition, in bytes, since it stands on one line of a session. */
  static final int LONGEST_DEFINITION = 40_000;

  private static final long LARGEST_FILE = 400_000;
  private static final int LONGEST_WORDS = 300;
  private static final int MOST = 100;
  private static final int MOST_BRANCHES = 4;
  private static final int MOST_WAYS = 6;

  private final JsonValue top;
  private final FaultList faults = new FaultList();
  private final StationFields fields;
  private final List<StationFinding> findings = new ArrayList<>();
  private final List<StationTask> tasks = new ArrayList<>();
  private final List<StationOrder> orders = new ArrayList<>();
  private final List<StationBranch> branches = new ArrayList<>();
  private final List<ScriptStep> steps = new ArrayList<>();
  private final List<CriticalFault> critical = new ArrayList<>();
  private final List<String> unsure = new ArrayList<>();
  private PatientGroup group = PatientGroup.ADULT;

  private StationReader(JsonValue top) {
    this.top = top;
    this.fields =
        new StationFields(Identifiers.of(top, "findings"), Identifiers.of(top, "tasks"), faults);
  }

  /**
   * Reads a file.
   *
   * @throws BadInputException if the file is not a station that this version can use
   */
  public static Station readFile(Path file) throws BadInputException {
    return checkFile(file).require();
  }

  /** Reads a text; {@code source} names it in messages. */
  public static Station readText(String source, String text) throws BadInputException {
    return checkText(source, text).require();
  }

  /** Reads a file and tells all that is wrong with it. */
  public static StationFile checkFile(Path file) {
    String source = file.toString();
    try {
      InputFile.require(file, LARGEST_FILE);
      ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
      return checkText(source, StandardCharsets.UTF_8.newDecoder().decode(bytes).toString());
    } catch (BadInputException e) {
      return unusable(e);
    } catch (CharacterCodingException e) {
      return unusable(BadInputException.fault(source, "", "the text is not UTF-8"));
    } catch (IOException e) {
      return unusable(
          BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")"));
    }
  }

  /** Reads a text and tells all that is wrong with it. */
  public static StationFile checkText(String source, String text) {
    try {
      JsonValue top = Json.readText(source, text);
      requireVersion(top);
      return new StationReader(top).read(definition(source, text));
    } catch (BadInputException e) {
      return unusable(e);
    }
  }

  private static StationFile unusable(BadInputException fault) {
    return new StationFile(Optional.empty(), List.of(fault), List.of(), Map.of());
  }

  private static void requireVersion(JsonValue top) throws BadInputException {
    top.choice("format", List.of(FORMAT), f -> f);
    long version = top.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          top.source(),
          "version",
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
  }

  /** The text without the space between its signs. */
  private static String definition(String source, String text) throws BadInputException {
    StringBuilder out = new StringBuilder(text.length());
    boolean inText = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (inText && c == '\\') {
        out.append(c).append(text.charAt(++i));
        continue;
      }
      inText ^= c == '"';
      if (inText || (c != ' ' && c != '\n' && c != '\r' && c != '\t')) {
        out.append(c);
      }
    }
    int bytes = out.toString().getBytes(StandardCharsets.UTF_8).length;
    if (bytes > LONGEST_DEFINITION) {
      throw BadInputException.notAllowed(
          source,
          "size",
          bytes + " bytes without needless space",
          "at most " + LONGEST_DEFINITION + " bytes");
    }
    return out.toString();
  }

  private StationFile read(String definition) {
    String id = faults.take(() -> StationFields.id(top), "station");
    String title = fields.words(top, "title", 80);
    String setting = fields.words(top, "setting", 1_000);
    JsonValue patient = faults.take(() -> top.field("patient", "the patient"), null);
    String who = "";
    if (patient != null) {
      group =
          faults.take(
              () -> patient.choice("group", List.of(PatientGroup.values()), PatientGroup::id),
              group);
      who = fields.words(patient, "words", LONGEST_WORDS);
    }
    Situation situation = situation();
    long preparation =
        fields.seconds(top, "preparationSeconds", 0, 1_800, USUAL_PREPARATION_SECONDS);
    long exercise = fields.seconds(top, "exerciseSeconds", 10, 3_600, USUAL_EXERCISE_SECONDS);
    each("findings", 0, this::addFinding);
    each("branches", 0, this::addBranch);
    each("orders", 0, this::addOrder);
    each("tasks", 1, this::addTask);
    each("script", 0, this::addStep);
    each("criticalFaults", 0, this::addCritical);
    new StationLinks(top, faults, unsure).check(findings, tasks, orders, branches, steps, critical);
    Station station =
        new Station(
            id,
            title,
            setting,
            group,
            who,
            situation,
            kit(),
            oxygen(),
            preparation,
            exercise,
            findings,
            tasks,
            orders,
            branches,
            steps,
            critical,
            definition);
    if (!faults.all().isEmpty()) {
      return new StationFile(Optional.empty(), faults.all(), List.of(), names());
    }
    List<String> doubts = new ArrayList<>(UnknownFields.of(top));
    doubts.addAll(StationDoubts.of(station));
    return new StationFile(Optional.of(station), List.of(), doubts, names());
  }

  private Situation situation() {
    Situation situation =
        faults.take(
            () -> top.choice("situation", List.of(Situation.values()), Situation::id),
            Situation.PULSE_NO_BREATHING);
    boolean newborn = group == PatientGroup.NEWBORN;
    boolean breaths =
        situation == Situation.PULSE_NO_BREATHING || situation == Situation.PULSE_SLOW_BREATHING;
    if ((newborn && breaths) || (!newborn && situation == Situation.NEWBORN_VENTILATION)) {
      faults.add(
          BadInputException.notAllowed(
              top.source(), "situation", situation.id(), "one that fits " + group.id()));
    }
    return situation;
  }

  private List<String> kit() {
    List<String> kit = new ArrayList<>();
    List<JsonValue> entries = list("kit", 0);
    for (JsonValue entry : entries) {
      kit.add(fields.words(entry, "item", LONGEST_WORDS));
    }
    return kit;
  }

  private Optional<StationOxygen> oxygen() {
    return faults.take(
        () -> {
          if (!top.has("oxygen")) {
            return Optional.empty();
          }
          JsonValue value = top.field("oxygen", "");
          KitLibrary library = KitLibrary.builtIn();
          Cylinder cylinder =
              library.cylinder(value.source() + ": oxygen.cylinder", value.text("cylinder", 10));
          Pressure gauge =
              Pressure.read(value.source() + ": oxygen.pressure", value.text("pressure", 20));
          Flow flow =
              Flow.of(
                  value.source() + ": oxygen.litresPerMinute",
                  value.number("litresPerMinute", BigDecimal.ONE, BigDecimal.valueOf(60), "L/min"));
          OxygenSupply supply = new OxygenSupply(cylinder, gauge, library.reserve());
          if (supply.isImplausible()) {
            throw value.field("pressure", "").wrong("no more than such a cylinder holds");
          }
          return Optional.of(new StationOxygen(supply, flow));
        },
        Optional.empty());
  }

  private void addFinding(JsonValue value) {
    findings.add(
        new StationFinding(
            faults.take(() -> StationFields.id(value), ""),
            fields.words(value, "words", LONGEST_WORDS),
            fields.flag(value, "atStart"),
            fields.flag(value, "lasting"),
            fields.flag(value, "hidden"),
            fields.flag(value, "stopsBreaths")));
  }

  private void addOrder(JsonValue value) {
    orders.add(
        new StationOrder(
            faults.take(() -> StationFields.id(value), ""),
            fields.words(value, "words", LONGEST_WORDS)));
  }

  private void addBranch(JsonValue value) {
    List<StationBranch.Way> ways = new ArrayList<>();
    List<JsonValue> entries =
        faults.take(() -> value.list("options", 2, "a list of 2 to 6 ways"), List.of());
    if (entries.size() > MOST_WAYS || branches.size() >= MOST_BRANCHES) {
      faults.add(rule(value, "there may be at most 4 branches, each of at most 6 ways"));
      return;
    }
    int weights = 0;
    for (JsonValue way : entries) {
      int weight =
          faults.take(() -> way.has("weight") ? (int) way.integer("weight", 0, 100) : 1, 1);
      weights += weight;
      ways.add(
          new StationBranch.Way(
              faults.take(() -> StationFields.id(way), ""),
              fields.words(way, "words", LONGEST_WORDS),
              weight,
              fields.ids(way, "findings")));
    }
    if (weights == 0 && !entries.isEmpty()) {
      faults.add(rule(value, "at least one way needs a weight above 0"));
    }
    branches.add(
        new StationBranch(
            faults.take(() -> StationFields.id(value), ""),
            fields.words(value, "words", LONGEST_WORDS),
            ways));
  }

  private void addTask(JsonValue value) {
    StationPhase phase =
        faults.take(
            () ->
                value.has("phase")
                    ? value.choice(
                        "phase",
                        List.of(StationPhase.PREPARATION, StationPhase.EXERCISE),
                        StationPhase::word)
                    : StationPhase.EXERCISE,
            StationPhase.EXERCISE);
    int faultsBefore = faults.all().size();
    TaskKind kind =
        faults.take(
            () ->
                value.has("kind")
                    ? value.choice("kind", List.of(TaskKind.values()), TaskKind::word)
                    : TaskKind.TAP,
            TaskKind.TAP);
    boolean kindKnown = faults.all().size() == faultsBefore;
    OptionalLong least = fields.optionalSeconds(value, "leastSeconds");
    OptionalLong most = fields.optionalSeconds(value, "mostSeconds");
    Optional<TaskHold> hold =
        faults.take(
            () ->
                value.has("holds")
                    ? Optional.of(value.choice("holds", List.of(TaskHold.values()), TaskHold::word))
                    : Optional.empty(),
            Optional.empty());
    Optional<Adjunct> adjunct =
        faults.take(
            () ->
                value.has("adjunct")
                    ? Optional.of(value.choice("adjunct", List.of(Adjunct.values()), Adjunct::word))
                    : Optional.empty(),
            Optional.empty());
    boolean places = adjunct.isPresent() && adjunct.get() != Adjunct.NONE;
    if (kindKnown
        && kind == TaskKind.TAP
        && ((least.isPresent() && !places) || most.isPresent() || hold.isPresent())) {
      faults.add(
          rule(
              value,
              "leastSeconds, mostSeconds and holds are only for a task of the kind timed or paced;"
                  + " leastSeconds also for one that places an adjunct"));
    }
    if (kind != TaskKind.TAP && adjunct.isPresent()) {
      faults.add(rule(value, "adjunct is only for a task of the kind tap"));
    }
    if (kind == TaskKind.PACED && hold.isPresent()) {
      faults.add(rule(value, "holds is only for a task of the kind timed"));
    }
    if (kind == TaskKind.PACED && phase == StationPhase.PREPARATION) {
      faults.add(rule(value, "a paced task belongs to the exercise, not to the preparation"));
    }
    if (least.isPresent() && most.isPresent() && least.getAsLong() > most.getAsLong()) {
      faults.add(rule(value, "leastSeconds must not be more than mostSeconds"));
    }
    String id = faults.take(() -> StationFields.id(value), "");
    if (faults.all().size() > faultsBefore) {
      unsure.add(id);
    }
    tasks.add(
        new StationTask(
            id,
            fields.words(value, "words", LONGEST_WORDS),
            fields.words(value, "doneWhen", LONGEST_WORDS),
            phase,
            kind,
            fields.ids(value, "after"),
            fields.limit(value),
            fields.flag(value, "critical"),
            fields.flag(value, "optional"),
            fields.reference(value, "ifFinding"),
            fields.only(value),
            least,
            most,
            hold,
            fields.flag(value, "oxygen"),
            adjunct));
  }

  private void addStep(JsonValue value) {
    int faultsBefore = faults.all().size();
    Trigger when =
        faults.take(
            () -> fields.trigger(value.field("when", "what sets the step off")),
            new Trigger(Trigger.Kind.TIME, "", StationPhase.EXERCISE, 0));
    String says = faults.take(() -> value.has("says") ? value.text("says", LONGEST_WORDS) : "", "");
    List<String> raises = fields.ids(value, "raises");
    List<String> clears = fields.ids(value, "clears");
    Optional<ClinicalFinding> tells = tells(value);
    boolean allRead = faults.all().size() == faultsBefore;
    if (allRead && says.isEmpty() && raises.isEmpty() && clears.isEmpty() && !tells.isPresent()) {
      faults.add(
          rule(value, "it needs at least one of says, raises, clears, tells, or it does nothing"));
    }
    steps.add(
        new ScriptStep(
            faults.take(() -> StationFields.id(value), ""),
            when,
            fields.seconds(value, "delaySeconds", 0, 3_600, 0),
            fields.ids(value, "while"),
            fields.ids(value, "unless"),
            fields.only(value),
            says,
            raises,
            clears,
            tells));
  }

  private Optional<ClinicalFinding> tells(JsonValue value) {
    return faults.take(
        () -> {
          if (!value.has("tells")) {
            return Optional.empty();
          }
          ClinicalFinding told =
              value.choice("tells", List.of(ClinicalFinding.values()), ClinicalFinding::word);
          if (!told.concerns(group)) {
            throw value.field("tells", "").wrong("what can be found in this patient");
          }
          return Optional.of(told);
        },
        Optional.empty());
  }

  private void addCritical(JsonValue value) {
    CriticalFault.Rule rule =
        faults.take(
            () ->
                value.choice(
                    "rule", List.of(CriticalFault.Rule.values()), CriticalFault.Rule::word),
            CriticalFault.Rule.TOO_LONG);
    boolean byOrder = rule == CriticalFault.Rule.DONE_WHILE && fields.has(value, "order");
    String task = faults.take(() -> StationFields.id(value, byOrder ? "order" : "task"), "");
    String other = "";
    if (rule == CriticalFault.Rule.DONE_WHILE) {
      other = faults.take(() -> StationFields.id(value, "finding"), "");
    } else if (rule == CriticalFault.Rule.BEFORE) {
      other = faults.take(() -> StationFields.id(value, "other"), "");
    }
    Optional<TimeLimit> limit = fields.limit(value);
    if (limit.isPresent() != (rule == CriticalFault.Rule.NOT_DONE)) {
      faults.add(rule(value, "a limit belongs to the rule not-done, and only there"));
    }
    critical.add(
        new CriticalFault(
            faults.take(() -> StationFields.id(value), ""),
            fields.words(value, "words", LONGEST_WORDS),
            rule,
            task,
            other,
            limit,
            fields.only(value)));
  }

  private Map<String, String> names() {
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
    for (int i = 0; i < critical.size(); i++) {
      CriticalFault fault = critical.get(i);
      names.put("criticalFaults[" + i + "]", name("fault", i, fault.id(), fault.words()));
    }
    return names;
  }

  private static String name(String kind, int place, String id, String words) {
    return kind + " " + (place + 1) + " of the list, " + id + (words.isEmpty() ? "" : ": " + words);
  }

  private static BadInputException rule(JsonValue value, String words) {
    return BadInputException.fault(value.source(), value.path(), words);
  }

  private interface Adding {
    void add(JsonValue value);
  }

  private void each(String name, int fewest, Adding adding) {
    for (JsonValue value : list(name, fewest)) {
      adding.add(value);
    }
  }

  private List<JsonValue> list(String name, int fewest) {
    return faults.take(
        () -> {
          if (fewest == 0 && !top.has(name)) {
            return List.of();
          }
          List<JsonValue> values =
              top.list(
                  name,
                  fewest,
                  "a list in square brackets of " + fewest + " to " + MOST + " entries");
          if (values.size() > MOST) {
            throw top.field(name, "").wrong("at most " + MOST + " entries");
          }
          return values;
        },
        List.of());
  }
}
