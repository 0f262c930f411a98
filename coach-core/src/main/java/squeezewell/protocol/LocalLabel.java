package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;

/**
 * The words by which a local protocol is told from a guideline, wherever it is shown: whose it is,
 * who approved it, what it is based on, and where it differs from that.
 *
 * @param title one short line, for a place with little room
 * @param origin whose it is, who approved it, what it is based on; some short sentences
 * @param differences where it differs from its base, one clause each, with the values of both
 */
public record LocalLabel(String title, String origin, List<String> differences) {
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
      return value.label()
          + " "
          + here.map(value::words).orElse("not set")
          + " here, "
          + there.map(value::words).orElse("not set")
          + whose(base);
    }

    private String whose(String base) {
      Confidence confidence = source.map(Citation::confidence).orElse(Confidence.PRIMARY);
      switch (confidence) {
        case HOUSE:
          return " by this program's own choice";
        case MEMORY:
          return " in " + base + " (from memory)";
        default:
          return " in " + base;
      }
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
            "Local protocol: " + protocol.title(),
            origin(protocol, base, differences.isEmpty()),
            differences));
  }

  private static String origin(Protocol protocol, Optional<Protocol> base, boolean same) {
    StringBuilder words = new StringBuilder("Local protocol: ");
    words.append(protocol.title()).append(", of ").append(protocol.organisation());
    words.append(", ").append(protocol.year());
    words.append(
        protocol.approval().map(a -> "; " + a.words() + ". ").orElse("; no approval noted. "));
    if (base.isPresent()) {
      String name = base.get().title();
      words.append("Based on ").append(name);
      words.append(same ? ", with the same values." : ", and differs from it.");
    } else if (protocol.basedOn().isEmpty()) {
      words.append("It does not say which guideline it is based on.");
    } else {
      words.append("Based on ").append(protocol.basedOn());
      words.append(", which is no edition of this program.");
    }
    return words.toString();
  }

  private static List<String> clauses(Guidance here, Protocol base) {
    Optional<Guidance> there = base.findLike(here);
    List<String> clauses = new ArrayList<>();
    if (!there.isPresent()) {
      clauses.add(base.title() + " has no values for this situation");
      return clauses;
    }
    if (RhythmKind.of(here.rhythm()) != RhythmKind.of(there.get().rhythm())) {
      clauses.add("another pattern of breaths and compressions than in " + base.title());
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
      if (!same) {
        found.add(new Difference(value, a, b, Optional.ofNullable(theirs.source(value))));
      }
    }
    return found;
  }

  private static Optional<BigDecimal> number(
      Map<ProtocolValue, BigDecimal> numbers, ProtocolValue value) {
    return Optional.ofNullable(numbers.get(value));
  }
}
