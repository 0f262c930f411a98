package squeezewell.protocol;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;
import squeezewell.input.UnknownField;

/**
 * Reads protocol files, format version 1. Every value is checked for its type, its unit, its range
 * and its citation, and values are checked against each other. The format is described in
 * docs/formats.md.
 */
public final class ProtocolReader {
  public static final String FORMAT = "squeezewell-protocol";
  public static final int VERSION = 1;

  private static final long LARGEST_FILE = 1_000_000;

  private final JsonValue top;
  private final Faults faults = new Faults();
  private final List<Guidance> guidance = new ArrayList<>();
  private final List<AgeBand> ages = new ArrayList<>();

  private ProtocolReader(JsonValue top) {
    this.top = top;
  }

  /**
   * What was found in a file.
   *
   * @param protocol the protocol; empty if there is any fault
   * @param faults every fault that can be told at once, in the order of the file; at most {@link
   *     Faults#MOST}
   * @param unknown one sentence for each field that this version does not know and leaves out; no
   *     fault, but it may be misspelt
   */
  public record Checked(
      Optional<Protocol> protocol, List<BadInputException> faults, List<String> unknown) {
    public Checked {
      Objects.requireNonNull(protocol, "protocol");
      faults = List.copyOf(faults);
      unknown = List.copyOf(unknown);
    }
  }

  /**
   * Reads a file.
   *
   * @throws BadInputException if the file is not a protocol that this version can use; for its
   *     first fault
   */
  public static Protocol readFile(Path file) throws BadInputException {
    return read(Json.readFile(file, LARGEST_FILE));
  }

  /** Reads a text; {@code source} names it in messages. */
  public static Protocol readText(String source, String text) throws BadInputException {
    return read(Json.readText(source, text));
  }

  /** Reads a protocol that stands inside another file. */
  public static Protocol read(JsonValue top) throws BadInputException {
    Checked checked = new ProtocolReader(top).check();
    if (!checked.faults().isEmpty()) {
      throw checked.faults().get(0);
    }
    return checked.protocol().get();
  }

  /** Reads a file and gathers its faults. A text that is no JSON at all has one. */
  public static Checked checkFile(Path file) {
    try {
      return new ProtocolReader(Json.readFile(file, LARGEST_FILE)).check();
    } catch (BadInputException e) {
      return new Checked(Optional.empty(), List.of(e), List.of());
    }
  }

  /** The same for a text; {@code source} names it in messages. */
  public static Checked checkText(String source, String text) {
    try {
      return new ProtocolReader(Json.readText(source, text)).check();
    } catch (BadInputException e) {
      return new Checked(Optional.empty(), List.of(e), List.of());
    }
  }

  private Checked check() {
    // In a file of another kind or of a newer version the rest would only be noise.
    if (!faults.take(this::requireVersion).isPresent()) {
      return new Checked(Optional.empty(), faults.all(), List.of());
    }
    Optional<String> id = faults.take(() -> id("id"));
    Optional<String> title = faults.take(() -> top.text("title", Texts.LONGEST_TITLE));
    Optional<String> organisation =
        faults.take(() -> top.text("organisation", Texts.LONGEST_ORGANISATION));
    Optional<Long> year = faults.take(() -> top.integer("year", Texts.FIRST_YEAR, Texts.LAST_YEAR));
    Optional<Boolean> local = faults.take(() -> top.flagOr("local", false));
    Optional<String> basedOn = faults.take(() -> top.has("basedOn") ? id("basedOn") : "");
    Optional<Approval> approval = approval();
    Optional<String> supersededBy =
        faults.take(() -> top.textOr("supersededBy", Texts.LONGEST_TITLE, ""));
    addPatients();
    if (!faults.all().isEmpty()) {
      return new Checked(Optional.empty(), faults.all(), unknown());
    }
    Protocol read =
        new Protocol(
            id.get(),
            title.get(),
            organisation.get(),
            year.get().intValue(),
            local.get(),
            guidance,
            ages,
            basedOn.get(),
            approval,
            supersededBy.get());
    return new Checked(Optional.of(read), List.of(), unknown());
  }

  private List<String> unknown() {
    return top.unknown().stream().map(ProtocolReader::sentence).collect(Collectors.toList());
  }

  /** A value of another place is not only unknown: the sentence names the place. */
  private static String sentence(UnknownField field) {
    String name = field.name();
    if (ProtocolValue.isLimitObject(name)) {
      return misplaced(field, "here", "limits." + name);
    }
    if (!ProtocolValue.rhythmObjects().contains(name)) {
      return BadInputException.fault(
              field.value().source(),
              field.value().path(),
              "this version does not know the field and leaves it out" + field.question())
          .getMessage();
    }
    // No other object has a kind.
    Optional<RhythmKind> kind = new Faults().take(() -> kind(field.owner()));
    return kind.isPresent()
        ? misplaced(
            field, "in the kind " + kind.get().id(), "the kind " + ProtocolValue.kindsWith(name))
        : misplaced(field, "here", name + " of one of the rhythms");
  }

  private static String misplaced(UnknownField field, String where, String meant) {
    return BadInputException.notAllowed(
            field.value().source(),
            field.value().path(),
            field.value().describe(),
            where
                + " "
                + String.join(", ", field.known())
                + "; it is left out; did you mean "
                + meant
                + "?")
        .getMessage();
  }

  private boolean requireVersion() throws BadInputException {
    top.choice("format", List.of(FORMAT), f -> f);
    long version = top.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          top.source(),
          place("version"),
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
    return true;
  }

  private String id(String field) throws BadInputException {
    String id = top.text(field, Texts.LONGEST_ID);
    if (!Texts.isId(id)) {
      throw BadInputException.notAllowed(top.source(), place(field), id, Texts.ALLOWED_ID);
    }
    return id;
  }

  private Optional<Approval> approval() {
    if (!faults.take(() -> top.has("approval")).orElse(false)) {
      return Optional.empty();
    }
    Optional<JsonValue> entry = faults.take(() -> top.field("approval", ""));
    if (!entry.isPresent()) {
      return Optional.empty();
    }
    JsonValue approval = entry.get();
    Optional<String> by = faults.take(() -> approval.text("by", Texts.LONGEST_APPROVER));
    Optional<LocalDate> on = faults.take(() -> day(approval));
    Optional<String> note = faults.take(() -> approval.textOr("note", Texts.LONGEST_NOTE, ""));
    return by.isPresent() && on.isPresent() && note.isPresent()
        ? Optional.of(new Approval(by.get(), on.get(), note.get()))
        : Optional.empty();
  }

  private static LocalDate day(JsonValue approval) throws BadInputException {
    JsonValue value = approval.field("on", Texts.ALLOWED_DAY);
    Optional<LocalDate> day;
    try {
      day = Texts.day(approval.text("on", 10));
    } catch (BadInputException e) {
      day = Optional.empty();
    }
    if (!day.isPresent()) {
      throw value.wrong(Texts.ALLOWED_DAY);
    }
    return day.get();
  }

  private void addPatients() {
    ProtocolValues values = new ProtocolValues(top, faults);
    Set<PatientGroup> groups = new HashSet<>();
    String allowed = "a list of at least one patient group";
    for (JsonValue patient :
        faults.take(() -> top.list("patients", 1, allowed)).orElse(List.of())) {
      if (faults.isFull()) {
        return;
      }
      Optional<PatientGroup> group =
          faults.take(
              () -> patient.choice("group", List.of(PatientGroup.values()), PatientGroup::id));
      if (group.isPresent() && !groups.add(group.get())) {
        faults.add(
            BadInputException.fault(
                patient.source(),
                patient.path(),
                "the group " + group.get().id() + " stands there twice; allowed: once"));
      }
      addPatient(values, patient, group);
    }
  }

  private void addPatient(ProtocolValues values, JsonValue patient, Optional<PatientGroup> group) {
    if (faults.take(() -> patient.has("ages")).orElse(false)) {
      faults
          .take(() -> patient.field("ages", ""))
          .flatMap(band -> AgeBandReader.read(values, band, group))
          .ifPresent(ages::add);
    }
    Optional<JsonValue> usual = faults.take(() -> patient.field("limits", "an object of limits"));
    usual.ifPresent(limits -> GuidanceReader.checkLimits(values, limits));
    Set<String> seen = new HashSet<>();
    String allowed = "a list of at least one rhythm";
    for (JsonValue entry :
        faults.take(() -> patient.list("rhythms", 1, allowed)).orElse(List.of())) {
      if (faults.isFull()) {
        return;
      }
      addRhythm(values, entry, group, usual, seen);
    }
  }

  private void addRhythm(
      ProtocolValues values,
      JsonValue entry,
      Optional<PatientGroup> group,
      Optional<JsonValue> usual,
      Set<String> seen) {
    Optional<Situation> situation =
        faults.take(() -> entry.choice("situation", List.of(Situation.values()), Situation::id));
    Optional<Integer> rescuers =
        faults.take(
            () -> entry.has("rescuers") ? (int) entry.integer("rescuers", 1, 4) : (Integer) 0);
    Optional<AgeLimit> fromAge =
        faults.take(() -> entry.has("fromAge")).orElse(false)
            ? AgeBandReader.limit(values, entry, "fromAge")
            : Optional.empty();
    if (situation.isPresent()
        && rescuers.isPresent()
        && !seen.add(
            situation.get().id() + rescuers.get() + fromAge.map(AgeLimit::words).orElse(""))) {
      faults.add(
          BadInputException.fault(
              entry.source(),
              entry.path(),
              "the situation "
                  + situation.get().id()
                  + " stands there twice for the same rescuers and age; allowed: once"));
    }
    Optional<RhythmKind> kind = faults.take(() -> kind(entry));
    Optional<GuidanceValues> read = GuidanceReader.read(values, entry, usual, kind);
    if (group.isPresent() && situation.isPresent() && rescuers.isPresent() && read.isPresent()) {
      guidance.add(
          read.get().guidance(group.get(), situation.get(), rescuers.get(), kind.get(), fromAge));
    }
  }

  private static RhythmKind kind(JsonValue rhythm) throws BadInputException {
    return rhythm.choice("kind", List.of(RhythmKind.values()), RhythmKind::id);
  }

  private String place(String field) {
    return top.path().isEmpty() ? field : top.path() + "." + field;
  }
}
