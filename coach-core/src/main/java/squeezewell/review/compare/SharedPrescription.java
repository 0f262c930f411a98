package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import squeezewell.protocol.BreathPlan;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.review.say.Words;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** What two practices asked for, and in what they did not ask for the same. */
final class SharedPrescription {
  /** So many changes of the rhythm are told one by one. */
  private static final int MOST_CHANGES = 6;

  private static final Wording WORDS = Wording.beside(SharedPrescription.class);

  private final Review a;
  private final Review b;
  private final List<BreathPlan> breathingA;
  private final List<BreathPlan> breathingB;

  SharedPrescription(Review a, Review b) {
    this.a = a;
    this.b = b;
    this.breathingA = breathing(a);
    this.breathingB = breathing(b);
  }

  /** Whether both asked for breaths at one interval and one range, and for the same. */
  boolean sameBreaths() {
    return breathingA.size() == 1 && sameBreathing();
  }

  private boolean sameBreathing() {
    return breathingA.size() == breathingB.size()
        && IntStream.range(0, breathingA.size())
            .allMatch(i -> breathingA.get(i).asksTheSame(breathingB.get(i)));
  }

  /** Whether both asked for squeezes of one length, and for the same. */
  boolean sameSqueeze() {
    return squeezing(a).size() == 1 && squeezing(a).equals(squeezing(b));
  }

  /** Whether both asked for compressions of one kind, and for the same. */
  boolean sameCompressions() {
    return compressing(a).size() == 1 && compressing(a).equals(compressing(b));
  }

  /** Whether both asked for breaths at a steady interval, the same or not. */
  boolean steadyBreaths() {
    return !breathingA.isEmpty() && !breathingB.isEmpty();
  }

  /** What both asked for; only where {@link #sameBreaths()}. */
  BreathPlan breaths() {
    return breathingA.get(0);
  }

  /** In what they did not ask for the same, a sentence each. */
  List<String> differences() {
    List<String> lines = new ArrayList<>();
    differs(lines, "asked.protocol", r -> r.asked().protocolTitle());
    if (!a.asked().local().equals(b.asked().local())) {
      boolean both = a.asked().local().isPresent() && b.asked().local().isPresent();
      String one = WORDS.say(a.asked().local().isPresent() ? "outside.a" : "outside.b");
      lines.add(WORDS.say("asked.local", both ? WORDS.say("outside.both") : one));
    }
    differs(lines, "asked.patient", r -> r.asked().patient().toLowerCase(Locale.ROOT));
    if (!a.asked().situation().equals(b.asked().situation())) {
      if (a.parts().isEmpty() && b.parts().isEmpty()) {
        differs(lines, "asked.situation", r -> r.asked().situation());
      } else {
        lines.add(WORDS.say("asked.situations.a", situations(a)));
        lines.add(WORDS.say("asked.situations.b", situations(b)));
      }
    }
    if (!sameBreathing()) {
      differs(lines, "asked.breaths", r -> all(breathingWords(breathing(r)), "asked.breaths.none"));
    }
    differs(lines, "asked.compressions", r -> all(compressing(r), "asked.compressions.none"));
    if (!sameBreaths() && steadyBreaths()) {
      lines.add(WORDS.say("asked.own-breaths"));
    }
    if (!sameSqueeze()) {
      lines.add(WORDS.say("asked.own-squeeze"));
    }
    if (Math.abs(a.asked().practisedNanos() - b.asked().practisedNanos()) >= 1_000_000_000L) {
      differs(lines, "asked.practised", r -> Quantities.clock(r.asked().practisedNanos()));
      lines.add(WORDS.say("asked.longer"));
    }
    return lines;
  }

  /** With what it began, and from when on what held: each change by itself. */
  private static String situations(Review review) {
    List<Review> parts =
        review.rhythms().stream().filter(r -> !r.slip()).collect(Collectors.toList());
    String first = parts.get(0).asked().situation();
    if (parts.size() == 1) {
      return WORDS.say("asked.throughout", first);
    }
    int changes = parts.size() - 1;
    String told =
        parts.stream()
            .skip(1)
            .limit(MOST_CHANGES)
            .map(
                part ->
                    WORDS.say(
                        "asked.change",
                        Quantities.clock(part.startNanos()),
                        part.asked().situation()))
            .collect(Collectors.joining("; "));
    int more = changes - MOST_CHANGES;
    String changed =
        changes == 1
            ? WORDS.say("asked.changed.once", first, told)
            : WORDS.say("asked.changed.often", first, changes, told);
    return changed + (more > 0 ? WORDS.say("asked.changed.more", more) : ".");
  }

  private static String all(List<String> words, String none) {
    return words.isEmpty() ? WORDS.say(none) : String.join(WORDS.say("asked.then") + " ", words);
  }

  private void differs(List<String> lines, String key, Function<Review, String> words) {
    String ofA = words.apply(a);
    String ofB = words.apply(b);
    if (!ofA.equals(ofB)) {
      lines.add(WORDS.say(key, ofA, ofB));
    }
  }

  private static List<Prescription> judged(Review review) {
    return review.rhythms().stream()
        .filter(r -> !r.slip())
        .map(Review::asked)
        .collect(Collectors.toList());
  }

  /** The different intervals and ranges that a practice asked for. */
  private static List<BreathPlan> breathing(Review review) {
    List<BreathPlan> plans = new ArrayList<>();
    for (Prescription asked : judged(review)) {
      asked
          .breaths()
          .filter(plan -> plans.stream().noneMatch(plan::asksTheSame))
          .ifPresent(plans::add);
    }
    return plans;
  }

  private static List<String> breathingWords(List<BreathPlan> plans) {
    return plans.stream()
        .map(
            plan ->
                WORDS.say(
                    "asked.breaths.one",
                    Words.hundredths(plan.interval().seconds()),
                    Words.hundredths(plan.range().low()),
                    Words.hundredths(plan.range().high())))
        .collect(Collectors.toList());
  }

  private static List<Long> squeezing(Review review) {
    return judged(review).stream()
        .map(Prescription::inspirationNanos)
        .distinct()
        .collect(Collectors.toList());
  }

  private static List<String> compressing(Review review) {
    return judged(review).stream()
        .map(Prescription::compressions)
        .filter(words -> !words.isEmpty())
        .distinct()
        .collect(Collectors.toList());
  }
}
