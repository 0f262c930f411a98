package squeezewell.station.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import squeezewell.cue.Segment;
import squeezewell.equipment.Cylinder;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.EquipmentReader;
import squeezewell.equipment.Flow;
import squeezewell.equipment.OxygenSupply;
import squeezewell.equipment.Pressure;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;
import squeezewell.input.UnknownField;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** Reads what is in a station file; all faults are gathered, in the order of this class. */
final class StationParser {
  /** A preparation of two minutes is usual (common practice, from memory). */
  private static final int USUAL_PREPARATION_SECONDS = 120;

  /** A station of five minutes is usual (common practice, from memory). */
  private static final int USUAL_EXERCISE_SECONDS = 300;

  private static final int LONGEST_TITLE = 80;
  private static final int LONGEST_SETTING = 1_000;
  private static final int MOST = 100;
  private static final int MOST_BRANCHES = 4;
  private static final int MOST_WAYS = 6;

  private final JsonValue top;
  private final Faults faults = new Faults();
  private final StationFields fields;

  /** Tasks of which something that others rely on could not be read. */
  private final Set<String> unsure = new HashSet<>();

  StationParser(JsonValue top) {
    this.top = top;
    this.fields = new StationFields(top, Identifiers.of(top, "findings", "tasks"), faults);
  }

  /**
   * Reads the file.
   *
   * @param definition its text without needless space
   * @param version of the format, at least 1
   */
  StationFile read(String definition, long version) {
    String id = fields.id();
    String title = fields.words("title", LONGEST_TITLE);
    String teachingTitle =
        fields.optional("teachingTitle", () -> top.text("teachingTitle", LONGEST_TITLE)).orElse("");
    String setting = fields.words("setting", LONGEST_SETTING);
    Optional<StationFields> patient =
        faults.take(() -> top.field("patient", "the patient")).map(fields::of);
    PatientGroup group = patient.map(StationParser::group).orElse(PatientGroup.ADULT);
    String patientWords = patient.map(who -> who.words("words")).orElse("");
    Situation situation = situation(group);
    long preparation = fields.seconds("preparationSeconds", 0, 1_800, USUAL_PREPARATION_SECONDS);
    long exercise = fields.seconds("exerciseSeconds", 10, 3_600, USUAL_EXERCISE_SECONDS);
    List<StationFinding> findings = each("findings", 0, StationParser::finding);
    List<StationBranch> branches = branches();
    List<StationOrder> orders =
        each("orders", 0, order -> new StationOrder(order.id(), order.words("words")));
    List<StationTask> tasks = each("tasks", 1, this::task);
    List<ScriptStep> steps = each("script", 0, step -> step(step, group));
    List<StationRule> critical = each("criticalFaults", 0, RuleReader::critical);
    List<StationRule> more = each("rules", 0, RuleReader::rule);
    if (!more.isEmpty() && version < StationReader.VERSION) {
      faults.add(
          BadInputException.fault(top.source(), "rules", "rules need version 2 of the format"));
    }
    StationLinks links = new StationLinks(top, faults, unsure);
    links.check(findings, branches, orders, tasks, steps);
    links.check("criticalFaults", critical);
    links.check("rules", more);
    List<StationRule> rules = new ArrayList<>(critical);
    rules.addAll(more);
    Station station =
        new Station(
            id,
            title,
            teachingTitle,
            setting,
            group,
            patientWords,
            situation,
            each("kit", 0, item -> item.words("item")),
            oxygen(),
            preparation,
            exercise,
            findings,
            tasks,
            orders,
            branches,
            steps,
            rules,
            definition);
    if (!faults.all().isEmpty()) {
      return new StationFile(
          Optional.empty(), faults.all(), List.of(), names(station, critical, more));
    }
    List<String> doubts = new ArrayList<>();
    for (UnknownField unknown : top.unknown()) {
      doubts.add(StationLint.unknown(unknown));
    }
    doubts.addAll(StationLint.of(station));
    return new StationFile(Optional.of(station), List.of(), doubts, names(station, critical, more));
  }

  private static PatientGroup group(StationFields patient) {
    return patient.take(
        () -> patient.value().choice("group", List.of(PatientGroup.values()), PatientGroup::id),
        PatientGroup.ADULT);
  }

  private Situation situation(PatientGroup group) {
    Situation situation =
        fields.take(
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

  private Optional<StationOxygen> oxygen() {
    return fields.optional("oxygen", () -> readOxygen(top.field("oxygen", "")));
  }

  private static StationOxygen readOxygen(JsonValue value) throws BadInputException {
    String place = value.source() + ": oxygen.";
    EquipmentLibrary library = EquipmentReader.builtIn();
    Cylinder cylinder = library.cylinder(place + "cylinder", value.text("cylinder", 10));
    Pressure gauge = Pressure.read(place + "pressure", value.text("pressure", 20));
    Flow flow =
        Flow.of(
            place + "litresPerMinute",
            value.number("litresPerMinute", BigDecimal.ONE, BigDecimal.valueOf(60), "L/min"));
    OxygenSupply supply = new OxygenSupply(cylinder, gauge, library.reserve());
    if (supply.isImplausible()) {
      throw value.field("pressure", "").wrong("no more than such a cylinder holds");
    }
    return new StationOxygen(supply, flow);
  }

  private static StationFinding finding(StationFields finding) {
    return new StationFinding(
        finding.id(),
        finding.words("words"),
        finding.flag("atStart"),
        finding.flag("lasting"),
        finding.flag("hidden"),
        finding.flag("stopsBreaths"));
  }

  private List<StationBranch> branches() {
    List<StationBranch> branches = new ArrayList<>();
    for (JsonValue value : list("branches", 0)) {
      branch(fields.of(value), branches.size()).ifPresent(branches::add);
    }
    return branches;
  }

  /** Nothing if there are too many of them or of its ways. */
  private static Optional<StationBranch> branch(StationFields branch, int before) {
    List<JsonValue> entries =
        branch.take(() -> branch.value().list("options", 2, "a list of 2 to 6 ways"), List.of());
    if (entries.size() > MOST_WAYS || before >= MOST_BRANCHES) {
      branch.breaks("there may be at most 4 branches, each of at most 6 ways");
      return Optional.empty();
    }
    List<StationBranch.Way> ways = new ArrayList<>();
    for (JsonValue entry : entries) {
      StationFields way = branch.of(entry);
      int weight = way.optional("weight", () -> (int) entry.integer("weight", 0, 100)).orElse(1);
      ways.add(new StationBranch.Way(way.id(), way.words("words"), weight, way.ids("findings")));
    }
    if (!ways.isEmpty() && ways.stream().allMatch(way -> way.weight() == 0)) {
      branch.breaks("at least one way needs a weight above 0");
    }
    return Optional.of(new StationBranch(branch.id(), branch.words("words"), ways));
  }

  private StationTask task(StationFields task) {
    StationPhase phase = task.phase();
    int faultsBefore = task.faultCount();
    Optional<TaskKind> kind = task.choice("kind", TaskKind.values());
    boolean kindUnread = task.faultCount() > faultsBefore;
    OptionalLong least = task.seconds("leastSeconds");
    OptionalLong most = task.seconds("mostSeconds");
    Optional<Segment.Kind> hold =
        task.choice("holds", new Segment.Kind[] {Segment.Kind.PULSE_CHECK, Segment.Kind.SUCTION});
    Optional<Adjunct> adjunct = task.choice("adjunct", Adjunct.values());
    boolean tap = !kindUnread && kind.orElse(TaskKind.TAP) == TaskKind.TAP;
    boolean paced = kind.isPresent() && kind.get() == TaskKind.PACED;
    boolean places = adjunct.isPresent() && adjunct.get() != Adjunct.NONE;
    boolean hasLength = (least.isPresent() && !places) || most.isPresent() || hold.isPresent();
    if (tap && hasLength) {
      task.breaks(
          "leastSeconds, mostSeconds and holds are only for a task of the kind timed or paced;"
              + " leastSeconds also for one that places an adjunct");
    }
    if (!tap && !kindUnread && adjunct.isPresent()) {
      task.breaks("adjunct is only for a task of the kind tap");
    }
    if (paced && hold.isPresent()) {
      task.breaks("holds is only for a task of the kind timed");
    }
    if (paced && phase == StationPhase.PREPARATION) {
      task.breaks("a paced task belongs to the exercise, not to the preparation");
    }
    if (least.isPresent() && most.isPresent() && least.getAsLong() > most.getAsLong()) {
      task.breaks("leastSeconds must not be more than mostSeconds");
    }
    String id = task.id();
    if (task.faultCount() > faultsBefore) {
      unsure.add(id);
    }
    return new StationTask(
        id,
        task.words("words"),
        task.words("doneWhen"),
        phase,
        kind.orElse(TaskKind.TAP),
        task.ids("after"),
        task.limit(),
        task.flag("critical"),
        task.flag("optional"),
        task.reference("ifFinding"),
        task.only(),
        least,
        most,
        hold,
        task.flag("oxygen"),
        adjunct);
  }

  private static ScriptStep step(StationFields step, PatientGroup group) {
    int faultsBefore = step.faultCount();
    Trigger when = step.trigger();
    String says =
        step.optional("says", () -> step.value().text("says", StationFields.LONGEST_WORDS))
            .orElse("");
    List<String> raises = step.ids("raises");
    List<String> clears = step.ids("clears");
    Optional<PatientChange> tells = step.optional("tells", () -> tells(step.value(), group));
    boolean allRead = step.faultCount() == faultsBefore;
    if (allRead && says.isEmpty() && raises.isEmpty() && clears.isEmpty() && !tells.isPresent()) {
      step.breaks("it needs at least one of says, raises, clears, tells, or it does nothing");
    }
    return new ScriptStep(
        step.id(),
        when,
        step.seconds("delaySeconds", 0, 3_600, 0),
        step.ids("while"),
        step.ids("unless"),
        step.only(),
        says,
        raises,
        clears,
        tells);
  }

  private static PatientChange tells(JsonValue step, PatientGroup group) throws BadInputException {
    PatientChange told = step.choice("tells", List.of(PatientChange.values()), PatientChange::word);
    if (!told.concerns(group)) {
      throw step.field("tells", "").wrong("what can be found in this patient");
    }
    return told;
  }

  private <T> List<T> each(String name, int fewest, Function<StationFields, T> reading) {
    List<T> read = new ArrayList<>();
    for (JsonValue value : list(name, fewest)) {
      read.add(reading.apply(fields.of(value)));
    }
    return read;
  }

  private List<JsonValue> list(String name, int fewest) {
    return fields.take(
        () -> {
          if (fewest == 0 && !top.has(name)) {
            return List.of();
          }
          String allowed = "a list in square brackets of " + fewest + " to " + MOST + " entries";
          List<JsonValue> values = top.list(name, fewest, allowed);
          if (values.size() > MOST) {
            throw top.field(name, "").wrong("at most " + MOST + " entries");
          }
          return values;
        },
        List.of());
  }

  /** What stands at a place such as {@code tasks[2]}, for people who do not count from 0. */
  private static Map<String, String> names(
      Station station, List<StationRule> critical, List<StationRule> rules) {
    Map<String, String> names = new HashMap<>();
    name(names, "tasks", "task", station.tasks());
    name(names, "findings", "finding", station.findings());
    name(names, "branches", "branch", station.branches());
    name(names, "orders", "order", station.orders());
    name(names, "script", "step", station.steps());
    name(names, "criticalFaults", "fault", critical);
    name(names, "rules", "rule", rules);
    return names;
  }

  private static void name(
      Map<String, String> names, String list, String kind, List<? extends StationEntry> entries) {
    for (int i = 0; i < entries.size(); i++) {
      StationEntry entry = entries.get(i);
      String words = entry.words().isEmpty() ? "" : ": " + entry.words();
      names.put(list + "[" + i + "]", kind + " " + (i + 1) + " of the list, " + entry.id() + words);
    }
  }
}
