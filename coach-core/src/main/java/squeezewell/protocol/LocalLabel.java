package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import squeezewell.words.Wording;

/**
 * The words by which a local protocol is told from a guideline, wherever it is shown: whose it is,
 * who approved it, what it is based on, and where it differs from that.
 *
 * @param title one short line, for a place with little room
 * @param origin whose it is, who approved it, what it is based on; some short sentences
 * @param differences where it differs from its base, one clause each, with the values of both
 */
public record LocalLabel(String title, String origin, List<String> differences) {
  private static final Wording WORDS = Wording.beside(LocalLabel.class);

  public LocalLabel {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(origin, "origin");
    differences = List.copyOf(differences);
  }

  /**
   * A value that is not the same as in the base.
   *
   * @param value which
   * @param here the local number; empty if it has none
   * @param there the base's number; empty if it has none
   * @param source where the base's number comes from; empty if it has none
   */
  public record Difference(
      ProtocolValue value,
      Optional<BigDecimal> here,
      Optional<BigDecimal> there,
      Optional<Citation> source) {
    /**
     * Such as {@code breath every 5 s here, 6 s in AHA 2025}. What the program chose itself is not
     * laid at the guideline's door.
     *
     * @param base the name of the base
     */
    public String words(String base) {
      Confidence confidence = source.map(Citation::confidence).orElse(Confidence.PRIMARY);
      boolean own = confidence.compareTo(Confidence.PRACTICE) >= 0;
      return WORDS.say(
          own ? "local.difference." + confidence.id() : "local.difference",
          value.label(),
          here.map(value::words).orElse(WORDS.say("local.not-set")),
          there.map(value::words).orElse(WORDS.say("local.not-set")),
          base);
    }
  }

  /**
   * The label of a protocol with all its situations; empty if it is not a local one.
   *
   * @param base the edition that it is based on; empty if there is none of that name
   */
  public static Optional<LocalLabel> of(Protocol protocol, Optional<Protocol> base) {
    return of(protocol, protocol.guidance(), base);
  }

  /**
   * The label of a protocol for some of its situations; empty if it is not a local one.
   *
   * @param base the edition that it is based on; empty if there is none of that name
   */
  public static Optional<LocalLabel> of(
      Protocol protocol, List<Guidance> shown, Optional<Protocol> base) {
    if (!protocol.local()) {
      return Optional.empty();
    }
    List<String> differences = new ArrayList<>();
    if (base.isPresent()) {
      for (Guidance guidance : shown) {
        String where = shown.size() > 1 ? guidance.words() + ": " : "";
        clauses(guidance, base.get()).forEach(clause -> differences.add(where + clause));
      }
    }
    return Optional.of(
        new LocalLabel(
            WORDS.say("local.title", protocol.title()),
            origin(protocol, base, differences.isEmpty()),
            differences));
  }

  private static String origin(Protocol protocol, Optional<Protocol> base, boolean same) {
    Optional<String> approval = protocol.approval().map(Approval::words);
    String whose =
        WORDS.say(
            approval.isPresent() ? "local.approved" : "local.not-approved",
            protocol.title(),
            protocol.organisation(),
            protocol.year(),
            approval.orElse(""));
    if (base.isPresent()) {
      return whose + " " + WORDS.say(same ? "local.same" : "local.differs", base.get().title());
    }
    boolean named = !protocol.basedOn().isEmpty();
    return whose
        + " "
        + WORDS.say(named ? "local.unknown-base" : "local.no-base", protocol.basedOn());
  }

  private static List<String> clauses(Guidance here, Protocol base) {
    Optional<Guidance> there = base.findLike(here);
    List<String> clauses = new ArrayList<>();
    if (!there.isPresent()) {
      clauses.add(WORDS.say("local.no-values", base.title()));
      return clauses;
    }
    if (RhythmKind.of(here.rhythm()) != RhythmKind.of(there.get().rhythm())) {
      clauses.add(WORDS.say("local.other-pattern", base.title()));
    }
    for (Difference difference : differences(here, there.get())) {
      clauses.add(difference.words(base.title()));
    }
    return clauses;
  }

  /** The values that differ between two that ask for something in the same situation. */
  public static List<Difference> differences(Guidance here, Guidance there) {
    GuidanceValues mine = GuidanceValues.of(here);
    GuidanceValues theirs = GuidanceValues.of(there);
    List<Difference> found = new ArrayList<>();
    TreeSet<ProtocolValue> all = new TreeSet<>(mine.numbers().keySet());
    all.addAll(theirs.numbers().keySet());
    for (ProtocolValue value : all) {
      Optional<BigDecimal> a = number(mine.numbers(), value);
      Optional<BigDecimal> b = number(theirs.numbers(), value);
      boolean same = a.isPresent() && b.isPresent() && a.get().compareTo(b.get()) == 0;
      if (!same && (a.isPresent() || b.isPresent())) {
        found.add(new Difference(value, a, b, Optional.ofNullable(theirs.source(value))));
      }
    }
    return found;
  }

  private static Optional<BigDecimal> number(
      Map<ProtocolValue, BigDecimal> numbers, ProtocolValue value) {
    BigDecimal number = numbers.get(value);
    boolean none = value.isOptional() && (number == null || number.signum() == 0);
    return Optional.ofNullable(none ? null : number);
  }
}
