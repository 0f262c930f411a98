package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import squeezewell.protocol.BreathPlan;
import squeezewell.review.say.Asked;
import squeezewell.review.say.Review;
import squeezewell.review.say.Words;

/** What two practices asked for, and in what they did not ask for the same. */
final class AskedOfBoth {
  /** So many changes of the rhythm are told one by one. */
  private static final int MOST_CHANGES = 6;

  private final Review a;
  private final Review b;
  private final List<String> breathingA;
  private final List<String> breathingB;

  AskedOfBoth(Review a, Review b) {
    this.a = a;
    this.b = b;
    this.breathingA = breathing(a);
    this.breathingB = breathing(b);
  }

  /** Whether both asked for breaths at one interval and one range, and for the same. */
  boolean sameBreaths() {
    return breathingA.size() == 1 && breathingA.equals(breathingB);
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
    return judged(a).stream()
        .filter(r -> r.breaths().isPresent())
        .findFirst()
        .get()
        .breaths()
        .get();
  }

  /** In what they did not ask for the same, a sentence each. */
  List<String> differences() {
    List<String> lines = new ArrayList<>();
    differs(lines, "Asked by ", r -> r.asked().protocolTitle());
    if (!a.asked().local().equals(b.asked().local())) {
      lines.add(
          "Local protocol: "
              + (a.asked().local().isPresent() ? "A" : "")
              + (a.asked().local().isPresent() && b.asked().local().isPresent() ? " and " : "")
              + (b.asked().local().isPresent() ? "B" : "")
              + ".");
    }
    differs(lines, "Patient: ", r -> r.asked().patient().toLowerCase(Locale.ROOT));
    if (!a.asked().situation().equals(b.asked().situation())) {
      if (a.parts().isEmpty() && b.parts().isEmpty()) {
        differs(lines, "Situation: ", r -> r.asked().situation());
      } else {
        lines.add("Situation in A: " + situations(a));
        lines.add("Situation in B: " + situations(b));
      }
    }
    if (!breathingA.equals(breathingB)) {
      differs(lines, "Asked for ", r -> all(breathing(r), "no steady breaths"));
    }
    differs(lines, "Compressions: ", r -> all(compressing(r), "none asked"));
    if (!sameBreaths() && steadyBreaths()) {
      lines.add(
          "Each asked for breaths of its own, so rate, mean, median and spread of the intervals and"
              + " the time after the prompt are left out. Whether an interval is in range is"
              + " judged by the rhythm that asked for it.");
    }
    if (!sameSqueeze()) {
      lines.add("The squeezes asked for differ in length, so their mean is left out.");
    }
    if (Math.abs(a.asked().practisedNanos() - b.asked().practisedNanos()) >= 1_000_000_000L) {
      differs(lines, "Practised: ", r -> Words.clock(r.asked().practisedNanos()));
      lines.add("A longer practice has more room for a long gap and for missed prompts.");
    }
    return lines;
  }

  /** With what it began, and from when on what held: each change by itself. */
  private static String situations(Review review) {
    List<Review> parts =
        review.rhythms().stream().filter(r -> !r.slip()).collect(Collectors.toList());
    StringBuilder words = new StringBuilder(parts.get(0).asked().situation());
    if (parts.size() == 1) {
      return words.append(", throughout.").toString();
    }
    int changes = parts.size() - 1;
    words.append(". It changed ").append(changes == 1 ? "once" : changes + " times").append(":");
    for (int i = 1; i <= Math.min(changes, MOST_CHANGES); i++) {
      words
          .append(i == 1 ? " at " : "; at ")
          .append(Words.clock(parts.get(i).startNanos()))
          .append(" to \u201c")
          .append(parts.get(i).asked().situation())
          .append("\u201d");
    }
    if (changes > MOST_CHANGES) {
      words.append("; and ").append(changes - MOST_CHANGES).append(" more, see its own debrief");
    }
    return words.append('.').toString();
  }

  private static String all(List<String> words, String none) {
    return words.isEmpty() ? none : String.join("; then ", words);
  }

  private void differs(List<String> lines, String what, Function<Review, String> words) {
    String ofA = words.apply(a);
    String ofB = words.apply(b);
    if (!ofA.equals(ofB)) {
      lines.add(what + ofA + " in A, " + ofB + " in B.");
    }
  }

  private static List<Asked> judged(Review review) {
    return review.rhythms().stream()
        .filter(r -> !r.slip())
        .map(Review::asked)
        .collect(Collectors.toList());
  }

  /** The different intervals and ranges that a practice asked for, in words. */
  private static List<String> breathing(Review review) {
    return judged(review).stream()
        .filter(asked -> asked.intervalSeconds().isPresent())
        .map(
            asked ->
                "one breath every "
                    + Words.hundredths(asked.intervalSeconds().getAsDouble())
                    + " s (in range: "
                    + Words.hundredths(asked.breaths().get().range().low())
                    + " to "
                    + Words.hundredths(asked.breaths().get().range().high())
                    + " s)")
        .distinct()
        .collect(Collectors.toList());
  }

  private static List<Long> squeezing(Review review) {
    return judged(review).stream()
        .map(Asked::inspirationNanos)
        .distinct()
        .collect(Collectors.toList());
  }

  private static List<String> compressing(Review review) {
    return judged(review).stream()
        .map(Asked::compressions)
        .filter(words -> !words.isEmpty())
        .distinct()
        .collect(Collectors.toList());
  }
}
