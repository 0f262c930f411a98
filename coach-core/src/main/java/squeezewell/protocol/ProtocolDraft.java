package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import squeezewell.words.Wording;

/**
 * A local protocol while a person edits it: every value as it was typed, with what is wrong with
 * it. What can be made into a protocol is also what {@link ProtocolReader} takes, since both use
 * the same ranges and rules. Immutable.
 */
public final class ProtocolDraft {
  /** The part of the citation that says that a service set a value itself. */
  public static final String OWN_SECTION = "value set by this service";

  private static final Wording WORDS = Wording.beside(ProtocolDraft.class);

  private final Protocol opened;
  private final Optional<Protocol> base;
  private final Set<String> takenIds;
  private final Map<ProtocolDetail, String> details;
  private final List<Map<ProtocolValue, String>> values;

  private ProtocolDraft(
      Protocol opened,
      Optional<Protocol> base,
      Set<String> takenIds,
      Map<ProtocolDetail, String> details,
      List<Map<ProtocolValue, String>> values) {
    this.opened = opened;
    this.base = base;
    this.takenIds = takenIds;
    this.details = details;
    this.values = values;
  }

  /**
   * A copy that a service can make its own. It has neither organisation nor approval yet: the
   * publisher of the edition is not that of the copy, and stays the source of its values.
   *
   * @param edition what to copy, built in or local
   * @param base the guideline that it stems from, itself if it is one; empty if none is known
   * @param takenIds the identifiers of all protocols that are there
   * @param year the year of the copy
   */
  public static ProtocolDraft copyOf(
      Protocol edition, Optional<Protocol> base, Set<String> takenIds, int year) {
    Protocol copy =
        new Protocol(
            freeId("local-" + baseOf(edition), takenIds),
            "Service protocol",
            edition.organisation(),
            year,
            true,
            edition.guidance(),
            edition.ages(),
            baseOf(edition),
            Optional.empty());
    return open(copy, base, takenIds).with(ProtocolDetail.ORGANISATION, "");
  }

  /**
   * A local protocol to be changed.
   *
   * @param base the guideline that it is based on; empty if none is known
   * @param takenIds the identifiers of all other protocols
   */
  public static ProtocolDraft edit(Protocol local, Optional<Protocol> base, Set<String> takenIds) {
    Set<String> others = new HashSet<>(takenIds);
    others.remove(local.id());
    return open(local.asLocal(), base, others);
  }

  /** The identifier of the guideline that a protocol stems from. */
  private static String baseOf(Protocol protocol) {
    return protocol.local() && !protocol.basedOn().isEmpty() ? protocol.basedOn() : protocol.id();
  }

  private static String freeId(String wanted, Set<String> taken) {
    String stem = wanted.length() > 34 ? wanted.substring(0, 34).replaceAll("-+$", "") : wanted;
    String id = stem;
    for (int n = 2; taken.contains(id); n++) {
      id = stem + "-" + n;
    }
    return id;
  }

  private static ProtocolDraft open(
      Protocol opened, Optional<Protocol> base, Set<String> takenIds) {
    return new ProtocolDraft(opened, base, Set.copyOf(takenIds), details(opened), texts(opened));
  }

  private static Map<ProtocolDetail, String> details(Protocol opened) {
    Map<ProtocolDetail, String> details = new EnumMap<>(ProtocolDetail.class);
    details.put(ProtocolDetail.ID, opened.id());
    details.put(ProtocolDetail.TITLE, opened.title());
    details.put(ProtocolDetail.ORGANISATION, opened.organisation());
    details.put(ProtocolDetail.YEAR, Integer.toString(opened.year()));
    Optional<Approval> approval = opened.approval();
    details.put(ProtocolDetail.APPROVED_BY, approval.map(Approval::by).orElse(""));
    details.put(ProtocolDetail.APPROVED_ON, approval.map(a -> a.on().toString()).orElse(""));
    details.put(ProtocolDetail.APPROVAL_NOTE, approval.map(Approval::note).orElse(""));
    return details;
  }

  private static List<Map<ProtocolValue, String>> texts(Protocol opened) {
    List<Map<ProtocolValue, String>> values = new ArrayList<>();
    for (Guidance guidance : opened.guidance()) {
      Map<ProtocolValue, String> texts = new EnumMap<>(ProtocolValue.class);
      GuidanceValues.of(guidance)
          .numbers()
          .forEach((value, number) -> texts.put(value, number.toPlainString()));
      values.add(texts);
    }
    return values;
  }

  /** The entries that it was opened with: patients and situations can't be changed here. */
  public List<Guidance> entries() {
    return opened.guidance();
  }

  /** The edition that it is based on; empty if the program has none of that name. */
  public Optional<Protocol> base() {
    return base;
  }

  /** The values that an entry has, in the order of a screen. */
  public List<ProtocolValue> values(int entry) {
    return Collections.unmodifiableList(new ArrayList<>(values.get(entry).keySet()));
  }

  /** A value of an entry as it was typed. */
  public String text(int entry, ProtocolValue value) {
    return values.get(entry).get(value);
  }

  /** A detail as it was typed. */
  public String text(ProtocolDetail detail) {
    return details.get(detail);
  }

  /**
   * The draft with another text for a value.
   *
   * @param entry place in {@link #entries}
   * @param value one of {@link #values}
   */
  public ProtocolDraft with(int entry, ProtocolValue value, String text) {
    Objects.requireNonNull(text, "text");
    if (!values.get(entry).containsKey(value)) {
      throw new IllegalArgumentException("the entry has no such value: " + value);
    }
    List<Map<ProtocolValue, String>> changed = new ArrayList<>(values);
    Map<ProtocolValue, String> texts = new EnumMap<>(values.get(entry));
    texts.put(value, text);
    changed.set(entry, texts);
    return new ProtocolDraft(opened, base, takenIds, details, changed);
  }

  /** The draft with another text for a detail. */
  public ProtocolDraft with(ProtocolDetail detail, String text) {
    Objects.requireNonNull(text, "text");
    Map<ProtocolDetail, String> changed = new EnumMap<>(details);
    changed.put(detail, text);
    return new ProtocolDraft(opened, base, takenIds, changed, values);
  }

  /**
   * The draft once its protocol has been kept: what is changed from now on counts as changed since.
   *
   * @throws IllegalStateException if there are {@link #faults}
   */
  public ProtocolDraft saved() {
    return new ProtocolDraft(protocol(), base, takenIds, details, values);
  }

  /** Whether the same stands in both. */
  public boolean saysTheSameAs(ProtocolDraft other) {
    return details.equals(other.details) && values.equals(other.values);
  }

  /** What the base edition says for a value, with its source; empty if it has no such value. */
  public Optional<Guideline> guideline(int entry, ProtocolValue value) {
    Optional<GuidanceValues> there = baseValues(entry);
    return there.isPresent() && there.get().numbers().containsKey(value)
        ? Optional.of(new Guideline(there.get().numbers().get(value), there.get().source(value)))
        : Optional.empty();
  }

  /**
   * A value of a guideline.
   *
   * @param number in the value's unit
   * @param source where it comes from
   */
  public record Guideline(BigDecimal number, Citation source) {
    public Guideline {
      Objects.requireNonNull(number, "number");
      Objects.requireNonNull(source, "source");
    }
  }

  /** What is wrong with a value: what is allowed, in one sentence. Empty if it is good. */
  public Optional<String> fault(int entry, ProtocolValue value) {
    if (!value.typed(text(entry, value)).isPresent()) {
      return Optional.of(WORDS.say("draft.allowed", value.allowedTyped()));
    }
    Map<ProtocolValue, BigDecimal> numbers = numbers(entry);
    for (ValueRule rule : ValueRule.values()) {
      if (rule.judged() == value && rule.isBroken(numbers)) {
        return Optional.of(WORDS.say("draft.allowed", rule.allowed(numbers)));
      }
    }
    return Optional.empty();
  }

  /** What is wrong with a detail: what is allowed, in one sentence. Empty if it is good. */
  public Optional<String> fault(ProtocolDetail detail) {
    String text = trimmed(detail);
    boolean ok = detail.allows(text);
    if (text.isEmpty()) {
      boolean needed =
          !detail.isOptional() || (detail != ProtocolDetail.APPROVAL_NOTE && isApprovalBegun());
      ok = !needed;
    } else if (detail == ProtocolDetail.ID) {
      ok = ok && !takenIds.contains(text);
    }
    return ok ? Optional.empty() : Optional.of(WORDS.say("draft.allowed", detail.allowed()));
  }

  private boolean isApprovalBegun() {
    return !trimmed(ProtocolDetail.APPROVED_BY).isEmpty()
        || !trimmed(ProtocolDetail.APPROVED_ON).isEmpty()
        || !trimmed(ProtocolDetail.APPROVAL_NOTE).isEmpty();
  }

  /** Everything that is wrong, one sentence each, with the place that it is about. */
  public List<String> faults() {
    List<String> faults = new ArrayList<>();
    for (ProtocolDetail detail : ProtocolDetail.values()) {
      fault(detail).ifPresent(f -> faults.add(detail.label() + ". " + f));
    }
    for (int i = 0; i < values.size(); i++) {
      for (ProtocolValue value : values(i)) {
        Optional<String> fault = fault(i, value);
        if (fault.isPresent()) {
          faults.add(entries().get(i).words() + ", " + value.label() + ". " + fault.get());
        }
      }
    }
    return faults;
  }

  /** What is allowed and yet most likely not meant, one sentence each. */
  public List<String> advice() {
    List<String> advice = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      Map<ProtocolValue, BigDecimal> numbers = numbers(i);
      BigDecimal target = numbers.get(ProtocolValue.BREATH_INTERVAL);
      BigDecimal low = numbers.get(ProtocolValue.BREATH_LOW);
      BigDecimal high = numbers.get(ProtocolValue.BREATH_HIGH);
      boolean atEdge =
          target != null
              && low != null
              && high != null
              && low.compareTo(high) != 0
              && (target.compareTo(low) == 0 || target.compareTo(high) == 0);
      if (atEdge) {
        advice.add(WORDS.say("draft.edge", entries().get(i).words()));
      }
    }
    return advice;
  }

  /** Whether an approval stands there that was given before the values were changed. */
  public boolean isApprovalOlderThanValues() {
    Map<ProtocolDetail, String> before = details(opened);
    boolean sameApproval =
        text(ProtocolDetail.APPROVED_BY).equals(before.get(ProtocolDetail.APPROVED_BY))
            && text(ProtocolDetail.APPROVED_ON).equals(before.get(ProtocolDetail.APPROVED_ON));
    return isApprovalBegun() && sameApproval && !values.equals(texts(opened));
  }

  /**
   * The protocol. A value that was changed is cited as the service's own, one that was put back to
   * the edition's as the edition's; the others keep their source.
   *
   * @throws IllegalStateException if there are {@link #faults}
   */
  public Protocol protocol() {
    if (!faults().isEmpty()) {
      throw new IllegalStateException("the draft still has faults: " + faults());
    }
    String title = trimmed(ProtocolDetail.TITLE);
    String organisation = trimmed(ProtocolDetail.ORGANISATION);
    int year = Integer.parseInt(trimmed(ProtocolDetail.YEAR));
    Citation own = own(title, organisation, year);
    List<Guidance> guidance = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      guidance.add(guidance(i, own));
    }
    return new Protocol(
        trimmed(ProtocolDetail.ID),
        title,
        organisation,
        year,
        true,
        guidance,
        opened.ages(),
        opened.basedOn(),
        approval());
  }

  private Optional<Approval> approval() {
    return isApprovalBegun()
        ? Optional.of(
            new Approval(
                trimmed(ProtocolDetail.APPROVED_BY),
                Texts.day(trimmed(ProtocolDetail.APPROVED_ON)).get(),
                trimmed(ProtocolDetail.APPROVAL_NOTE)))
        : Optional.empty();
  }

  private Guidance guidance(int entry, Citation own) {
    Guidance before = entries().get(entry);
    GuidanceValues old = GuidanceValues.of(before);
    Map<ProtocolValue, BigDecimal> numbers = numbers(entry);
    Map<ProtocolValue, Citation> sources = new EnumMap<>(ProtocolValue.class);
    for (ProtocolValue value : values(entry)) {
      if (value.sourceOf() == value) {
        sources.put(value, source(entry, value, numbers, old, own));
      }
    }
    return new GuidanceValues(numbers, sources)
        .guidance(
            before.patient(),
            before.situation(),
            before.rescuers(),
            RhythmKind.of(before.rhythm()),
            before.fromAge());
  }

  private Citation source(
      int entry,
      ProtocolValue value,
      Map<ProtocolValue, BigDecimal> numbers,
      GuidanceValues old,
      Citation own) {
    Citation before = old.source(value);
    if (sameGroup(value, numbers, old.numbers())) {
      boolean wasOwn = before.equals(own(opened.title(), opened.organisation(), opened.year()));
      return wasOwn ? own : before;
    }
    Optional<GuidanceValues> there = baseValues(entry);
    return there.isPresent() && sameGroup(value, numbers, there.get().numbers())
        ? there.get().source(value)
        : own;
  }

  /** Whether all values that share a citation are the same in both. */
  private static boolean sameGroup(
      ProtocolValue group, Map<ProtocolValue, BigDecimal> a, Map<ProtocolValue, BigDecimal> b) {
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.sourceOf() == group
          && !(a.containsKey(value)
              && b.containsKey(value)
              && a.get(value).compareTo(b.get(value)) == 0)) {
        return false;
      }
    }
    return true;
  }

  /** The service is itself the source of what it asks for. */
  private static Citation own(String title, String organisation, int year) {
    return new Citation(organisation, title, year, OWN_SECTION, Confidence.PRIMARY);
  }

  private Optional<GuidanceValues> baseValues(int entry) {
    Guidance mine = entries().get(entry);
    return base.flatMap(b -> b.findLike(mine)).map(GuidanceValues::of);
  }

  /** The values that are good by themselves. */
  private Map<ProtocolValue, BigDecimal> numbers(int entry) {
    Map<ProtocolValue, BigDecimal> numbers = new EnumMap<>(ProtocolValue.class);
    values
        .get(entry)
        .forEach(
            (value, text) -> value.typed(text).ifPresent(number -> numbers.put(value, number)));
    return numbers;
  }

  private String trimmed(ProtocolDetail detail) {
    return Texts.trimmed(text(detail));
  }
}
