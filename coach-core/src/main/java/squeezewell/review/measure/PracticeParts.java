package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.IntToLongFunction;
import java.util.stream.Collectors;
import squeezewell.cue.Cue;
import squeezewell.cue.InOrder;
import squeezewell.cue.PulseCheckDue;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.session.Breath;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;

/**
 * Cuts a session where the rhythm changed. A breath belongs to the part of the prompt it answers,
 * so that one that comes a little after a change still counts for the prompt before it; a breath
 * that answers none belongs where it was given.
 */
public final class PracticeParts {
  private final Practice whole;
  private final Alignment alignment;
  private final long[] starts;
  private final List<Guidance> guidance;
  private final NavigableMap<Long, Long> slips;
  private final List<List<Interruption>> holds;
  private final List<List<PulseCheckDue>> checks;
  private final long[] compressions;

  /**
   * A part and the pairing of its prompts and breaths, by their places in the part.
   *
   * @param practice the part
   * @param alignment its share of the session's pairing
   */
  public record Part(Practice practice, Alignment alignment) {}

  private PracticeParts(Session session, Practice whole, Alignment alignment) {
    this.whole = whole;
    this.alignment = alignment;
    List<Long> found = new ArrayList<>();
    guidance = new ArrayList<>();
    for (Segment segment : whole.schedule().segments()) {
      long start = Math.max(segment.startNanos(), whole.startNanos());
      boolean empty = Math.min(segment.endNanos(), whole.endNanos()) <= start;
      boolean same =
          !guidance.isEmpty() && guidance.get(guidance.size() - 1).equals(segment.guidance());
      if (!empty && !same && segment.kind() != Segment.Kind.ENDED) {
        found.add(start);
        guidance.add(segment.guidance());
      }
    }
    starts = found.stream().mapToLong(Long::longValue).toArray();
    slips = slips(session);
    holds = holds();
    checks = checks();
    compressions = whole.compressions().stream().mapToLong(Long::longValue).toArray();
  }

  /** The parts, in order; the whole alone if the rhythm never changed. */
  public static List<Part> of(Session session, Practice whole, Alignment alignment) {
    PracticeParts parts = new PracticeParts(session, whole, alignment);
    if (parts.starts.length > 1) {
      return parts.cut();
    }
    Practice only =
        parts.starts.length == 0
            ? whole
            : new Practice(
                whole.schedule(),
                whole.zeroNanos(),
                parts.guidance.get(0),
                Practice.Place.WHOLE,
                whole.startNanos(),
                whole.endNanos(),
                whole.prompts(),
                whole.breaths(),
                whole.compressions(),
                whole.holds(),
                whole.checks(),
                whole.silences(),
                whole.highestLevel());
    return List.of(new Part(only, alignment));
  }

  /** From when to when findings that were taken back changed the prompts. */
  private static NavigableMap<Long, Long> slips(Session session) {
    NavigableMap<Long, Long> slips = new TreeMap<>();
    for (NotedFinding noted : session.findings()) {
      if (noted.undone() && noted.changesPrompts()) {
        slips.merge(noted.atNanos(), noted.undoneNanos().getAsLong(), Math::max);
      }
    }
    // One slip may hold others: from each start on, the latest end of all that began by then.
    long latest = Long.MIN_VALUE;
    for (Map.Entry<Long, Long> slip : slips.entrySet()) {
      latest = Math.max(latest, slip.getValue());
      slip.setValue(latest);
    }
    return slips;
  }

  private List<Part> cut() {
    int[] promptParts = whole.prompts().stream().mapToInt(c -> partAt(c.atNanos())).toArray();
    int[] breathParts = breathParts(promptParts);
    List<Part> parts = new ArrayList<>();
    int firstPrompt = 0;
    int firstBreath = 0;
    for (int part = 0; part < starts.length; part++) {
      int prompts = upTo(promptParts, part);
      int breaths = upTo(breathParts, part);
      Practice practice =
          practice(
              part,
              whole.prompts().subList(firstPrompt, prompts),
              whole.breaths().subList(firstBreath, breaths),
              firstBreath);
      parts.add(new Part(practice, share(firstPrompt, prompts, firstBreath, breaths)));
      firstPrompt = prompts;
      firstBreath = breaths;
    }
    return parts;
  }

  private int partAt(long nanos) {
    int found = Arrays.binarySearch(starts, nanos);
    return found >= 0 ? found : Math.max(0, -found - 2);
  }

  /** Never falls from one breath to the next, since pairs keep the order of both. */
  private int[] breathParts(int[] promptParts) {
    Map<Integer, Integer> prompts = new HashMap<>();
    alignment.pairs().forEach(p -> prompts.put(p.breath(), p.prompt()));
    int[] parts = new int[whole.breaths().size()];
    int latest = starts.length - 1;
    for (int k = parts.length - 1; k >= 0; k--) {
      Integer prompt = prompts.get(k);
      latest = prompt == null ? latest : promptParts[prompt];
      parts[k] = latest;
    }
    int earliest = 0;
    for (int k = 0; k < parts.length; k++) {
      if (prompts.containsKey(k)) {
        earliest = parts[k];
      } else {
        int own = partAt(whole.breaths().get(k).startNanos());
        parts[k] = Math.max(earliest, Math.min(parts[k], own));
      }
    }
    return parts;
  }

  /** How many values are at most that part; the values rise. */
  private static int upTo(int[] parts, int part) {
    return InOrder.countUpTo(parts.length, i -> parts[i], part);
  }

  private Practice practice(int part, List<Cue> prompts, List<Breath> breaths, int firstBreath) {
    boolean last = part + 1 == starts.length;
    long start = starts[part];
    long end = last ? whole.endNanos() : starts[part + 1];
    return new Practice(
        whole.schedule(),
        whole.zeroNanos(),
        guidance.get(part),
        new Practice.Place(
            part == 0, last, isSlip(start, end), breathedUntil(firstBreath), compressedAt(start)),
        start,
        end,
        List.copyOf(prompts),
        List.copyOf(breaths),
        List.copyOf(
            whole
                .compressions()
                .subList(
                    part == 0 ? 0 : compressionsBefore(start),
                    last ? compressions.length : compressionsBefore(end))),
        List.copyOf(holds.get(part)),
        List.copyOf(checks.get(part)),
        Practice.silences(whole.schedule(), part == 0 ? 0 : start, end),
        whole.highestLevel());
  }

  /** A change in a pause comes into force after it, so a slip may begin later than its finding. */
  private boolean isSlip(long start, long end) {
    Map.Entry<Long, Long> slip = slips.floorEntry(start);
    return slip != null && end <= slip.getValue();
  }

  private long breathedUntil(int firstBreath) {
    if (firstBreath == 0) {
      return 0;
    }
    Breath before = whole.breaths().get(firstBreath - 1);
    return before.endNanos().orElse(before.startNanos());
  }

  private OptionalLong compressedAt(long start) {
    int before = compressionsBefore(start);
    return before == 0 ? OptionalLong.empty() : OptionalLong.of(compressions[before - 1]);
  }

  /** How many compressions came before an instant. */
  private int compressionsBefore(long nanos) {
    return InOrder.countBefore(compressions.length, i -> compressions[i], nanos);
  }

  /** What of each hold lies in each part, in the order of the holds. */
  private List<List<Interruption>> holds() {
    List<List<Interruption>> found = listForEachPart();
    for (Interruption hold : whole.holds()) {
      int last = starts.length - 1;
      for (int part = partAt(hold.startNanos());
          part <= Math.min(last, partAt(hold.endNanos()));
          part++) {
        long from = part == 0 ? 0 : starts[part];
        long to = part == last ? Long.MAX_VALUE : starts[part + 1];
        hold.within(from, to).ifPresent(found.get(part)::add);
      }
    }
    return found;
  }

  /** Each check in the part in which it began, or was due if nobody made it. */
  private List<List<PulseCheckDue>> checks() {
    List<List<PulseCheckDue>> found = listForEachPart();
    for (PulseCheckDue check : whole.checks()) {
      if (!found.isEmpty()) {
        found.get(partAt(check.startedNanos().orElse(check.dueNanos()))).add(check);
      }
    }
    return found;
  }

  private <T> List<List<T>> listForEachPart() {
    List<List<T>> lists = new ArrayList<>();
    for (int part = 0; part < starts.length; part++) {
      lists.add(new ArrayList<>());
    }
    return lists;
  }

  private Alignment share(int firstPrompt, int prompts, int firstBreath, int breaths) {
    List<Alignment.Pair> pairs = new ArrayList<>();
    List<Alignment.Pair> all = alignment.pairs();
    IntToLongFunction prompt = i -> all.get(i).prompt();
    int from = InOrder.countBefore(all.size(), prompt, firstPrompt);
    for (Alignment.Pair pair :
        all.subList(from, InOrder.countBefore(all.size(), prompt, prompts))) {
      pairs.add(
          new Alignment.Pair(
              pair.prompt() - firstPrompt, pair.breath() - firstBreath, pair.errorNanos()));
    }
    return new Alignment(
        pairs,
        within(alignment.unpairedPrompts(), firstPrompt, prompts),
        within(alignment.unpairedBreaths(), firstBreath, breaths),
        alignment.offsetNanos(),
        alignment.costNanos());
  }

  private static List<Integer> within(List<Integer> places, int from, int to) {
    int first = InOrder.countBefore(places.size(), places::get, from);
    return places.subList(first, InOrder.countBefore(places.size(), places::get, to)).stream()
        .map(i -> i - from)
        .collect(Collectors.toList());
  }
}
