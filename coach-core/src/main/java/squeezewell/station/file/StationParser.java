package squeezewell.station.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;
import squeezewell.kit.Cylinder;
import squeezewell.kit.Flow;
import squeezewell.kit.KitLibrary;
import squeezewell.kit.OxygenSupply;
import squeezewell.kit.Pressure;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** Reads what is in a station file; all faults are gathered, in the order of this class. */
final class StationParser {
  private static final int LONGEST_TITLE = 80;
  private static final int LONGEST_SETTING = 1_000;
  private static final int MOST = 100;
  private static final int MOST_BRANCHES = 4;
  private static final int MOST_WAYS = 6;

  private final JsonValue top;
  private final FaultList faults = new FaultList();
  private final StationFields fields;

  StationParser(JsonValue top) {
    this.top = top;
    this.fields =
        new StationFields(Identifiers.of(top, "findings"), Identifiers.of(top, "tasks"), faults);
  }

  /** Who the station is about. */
  private record Patient(PatientGroup group, String words) {}

  /**
   * Reads the file.
   *
   * @param definition its text without needless space
   */
  StationFile read(String definition) {
    String id = faults.take(() -> StationFields.id(top), "station");
    String title = fields.words(top, "title", LONGEST_TITLE);
    String setting = fields.words(top, "setting", LONGEST_SETTING);
    Patient patient = patient();
    Situation situation = situation(patient.group());
    long preparation =
        fields.seconds(
            top, "preparationSeconds", 0, 1_800, StationReader.USUAL_PREPARATION_SECONDS);
    long exercise =
        fields.seconds(top, "exerciseSeconds", 10, 3_600, StationReader.USUAL_EXERCISE_SECONDS);
    StationParts parts = parts(patient.group());
    Station station =
        new Station(
            id,
            title,
            setting,
            patient.group(),
            patient.words(),
            situation,
            kit(),
            oxygen(),
            preparation,
            exercise,
            parts.findings(),
            parts.tasks(),
            parts.orders(),
            parts.branches(),
            parts.steps(),
            parts.faults(),
            definition);
    if (!faults.all().isEmpty()) {
      return new StationFile(Optional.empty(), faults.all(), List.of(), parts.names());
    }
    List<String> doubts = new ArrayList<>(UnknownFields.of(top));
    doubts.addAll(StationDoubts.of(station));
    return new StationFile(Optional.of(station), List.of(), doubts, parts.names());
  }

  private StationParts parts(PatientGroup group) {
    TaskParser taskParser = new TaskParser(faults, fields);
    List<StationFinding> findings = each("findings", 0, this::finding);
    List<StationBranch> branches = branches();
    List<StationOrder> orders = each("orders", 0, this::order);
    List<StationTask> tasks = each("tasks", 1, taskParser::read);
    List<ScriptStep> steps = each("script", 0, value -> step(value, group));
    List<CriticalFault> critical = each("criticalFaults", 0, this::critical);
    StationParts parts = new StationParts(findings, branches, orders, tasks, steps, critical);
    new StationLinks(top, faults, taskParser.unsure()).check(parts);
    return parts;
  }

  private Patient patient() {
    Optional<JsonValue> patient =
        faults.take(() -> Optional.of(top.field("patient", "the patient")), Optional.empty());
    return patient
        .map(
            who ->
                new Patient(
                    faults.take(
                        () -> who.choice("group", List.of(PatientGroup.values()), PatientGroup::id),
                        PatientGroup.ADULT),
                    fields.words(who, "words")))
        .orElseGet(() -> new Patient(PatientGroup.ADULT, ""));
  }

  private Situation situation(PatientGroup group) {
    Situation situation =
        faults.take(
            () -> top.choice("situation", List.of(Situation.values()), Situation::id),
            Situation.PULSE_NO_BREATHING);
    boolean newborn = group.isJudgedByHeartRate();
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
    for (JsonValue entry : list("kit", 0)) {
      kit.add(fields.words(entry, "item"));
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

  private StationFinding finding(JsonValue value) {
    return new StationFinding(
        faults.take(() -> StationFields.id(value), ""),
        fields.words(value, "words"),
        fields.flag(value, "atStart"),
        fields.flag(value, "lasting"),
        fields.flag(value, "hidden"),
        fields.flag(value, "stopsBreaths"));
  }

  private StationOrder order(JsonValue value) {
    return new StationOrder(
        faults.take(() -> StationFields.id(value), ""), fields.words(value, "words"));
  }

  private List<StationBranch> branches() {
    List<StationBranch> branches = new ArrayList<>();
    for (JsonValue value : list("branches", 0)) {
      branch(value, branches.size()).ifPresent(branches::add);
    }
    return branches;
  }

  /** Nothing if there are too many of them or of its ways. */
  private Optional<StationBranch> branch(JsonValue value, int before) {
    List<StationBranch.Way> ways = new ArrayList<>();
    List<JsonValue> entries =
        faults.take(() -> value.list("options", 2, "a list of 2 to 6 ways"), List.of());
    if (entries.size() > MOST_WAYS || before >= MOST_BRANCHES) {
      faults.add(rule(value, "there may be at most 4 branches, each of at most 6 ways"));
      return Optional.empty();
    }
    int weights = 0;
    for (JsonValue way : entries) {
      int weight =
          faults.take(() -> way.has("weight") ? (int) way.integer("weight", 0, 100) : 1, 1);
      weights += weight;
      ways.add(
          new StationBranch.Way(
              faults.take(() -> StationFields.id(way), ""),
              fields.words(way, "words"),
              weight,
              fields.ids(way, "findings")));
    }
    if (weights == 0 && !entries.isEmpty()) {
      faults.add(rule(value, "at least one way needs a weight above 0"));
    }
    return Optional.of(
        new StationBranch(
            faults.take(() -> StationFields.id(value), ""), fields.words(value, "words"), ways));
  }

  private ScriptStep step(JsonValue value, PatientGroup group) {
    int faultsBefore = faults.all().size();
    Trigger when =
        faults.take(
            () -> fields.trigger(value.field("when", "what sets the step off")),
            new Trigger(Trigger.Kind.TIME, "", StationPhase.EXERCISE, 0));
    String says =
        faults.take(
            () -> value.has("says") ? value.text("says", StationFields.LONGEST_WORDS) : "", "");
    List<String> raises = fields.ids(value, "raises");
    List<String> clears = fields.ids(value, "clears");
    Optional<ClinicalFinding> tells = tells(value, group);
    boolean allRead = faults.all().size() == faultsBefore;
    if (allRead && says.isEmpty() && raises.isEmpty() && clears.isEmpty() && !tells.isPresent()) {
      faults.add(
          rule(value, "it needs at least one of says, raises, clears, tells, or it does nothing"));
    }
    return new ScriptStep(
        faults.take(() -> StationFields.id(value), ""),
        when,
        fields.seconds(value, "delaySeconds", 0, 3_600, 0),
        fields.ids(value, "while"),
        fields.ids(value, "unless"),
        fields.only(value),
        says,
        raises,
        clears,
        tells);
  }

  private Optional<ClinicalFinding> tells(JsonValue value, PatientGroup group) {
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

  private CriticalFault critical(JsonValue value) {
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
    return new CriticalFault(
        faults.take(() -> StationFields.id(value), ""),
        fields.words(value, "words"),
        rule,
        task,
        other,
        limit,
        fields.only(value));
  }

  private static BadInputException rule(JsonValue value, String words) {
    return BadInputException.fault(value.source(), value.path(), words);
  }

  private <T> List<T> each(String name, int fewest, Function<JsonValue, T> reading) {
    List<T> read = new ArrayList<>();
    for (JsonValue value : list(name, fewest)) {
      read.add(reading.apply(value));
    }
    return read;
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
