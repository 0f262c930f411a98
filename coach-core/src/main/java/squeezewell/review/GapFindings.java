package squeezewell.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Findings about times without a breath. None for a rhythm of compressions and pauses. */
final class GapFindings {
  /** A gap less than this many times the intervals beside it is slow tempo, not a pause. */
  private static final double STANDS_OUT = 1.5;

  private static final int NEIGHBOURS = 3;

  private GapFindings() {}

  static List<Ranked> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    if (!facts.practice().breathPlan().isPresent()) {
      return found;
    }
    long limit = facts.practice().limits().gapLongest().nanos();
    List<Gaps.Gap> all = Gaps.of(facts.practice());
    List<Gaps.Gap> over = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      // A hold that overran its limit has a finding of its own.
      if (all.get(i).unheldNanos() > limit && standsOut(all, i)) {
        over.add(all.get(i));
      }
    }
    Optional<Gaps.Gap> longest = over.stream().max(Comparator.comparingLong(Gaps.Gap::unheldNanos));
    if (longest.isPresent()) {
      found.add(longGap(longest.get(), over.size(), limit, facts));
    } else if (all.stream().allMatch(g -> g.netNanos() <= limit)) {
      double net = facts.metrics().gap().longestNetSeconds();
      found.add(
          Ranked.good(
              2,
              "no-long-gap",
              "No long gap",
              "The longest time without a breath was "
                  + Words.seconds(net)
                  + ", with checks and suction taken off; at most "
                  + Words.seconds(limit / 1e9)
                  + " was asked."));
    }
    return found;
  }

  private static boolean standsOut(List<Gaps.Gap> all, int index) {
    Gaps.Gap gap = all.get(index);
    if (!gap.interval()) {
      return true;
    }
    List<Gaps.Gap> beside =
        all.subList(Math.max(0, index - NEIGHBOURS), Math.min(all.size(), index + NEIGHBOURS + 1));
    double[] others =
        beside.stream()
            .filter(g -> !g.equals(gap) && g.interval())
            .mapToDouble(Gaps.Gap::onsetNanos)
            .toArray();
    return others.length == 0
        || gap.onsetNanos() > STANDS_OUT * Statistics.median(others).getAsDouble();
  }

  private static Ranked longGap(Gaps.Gap longest, int count, long limit, Facts facts) {
    String where = "from " + Words.clock(longest.startNanos());
    String title = "A long time without a breath";
    if (longest.startNanos() == facts.practice().startNanos()) {
      where = "before the first breath";
      title = "A late start";
    } else if (longest.startNanos() + longest.rawNanos() == facts.practice().endNanos()) {
      title = "No breaths towards the end";
    }
    String times = count == 1 ? "" : " It was longer than that " + count + " times.";
    return Ranked.fault(
        Ranked.LONG_GAP,
        "long-gap",
        title,
        "The longest time without a breath was "
            + Words.seconds(longest.unheldNanos() / 1e9)
            + ", "
            + where
            + "; at most "
            + Words.seconds(limit / 1e9)
            + " was asked."
            + times
            + " A patient who does not breathe lives on your breaths alone.");
  }

  /** Missed prompts that follow each other, as the lengths of such rows. */
  static int[] rowsOfMissed(Facts facts) {
    List<Integer> rows = new ArrayList<>();
    int row = 0;
    List<PromptMark.Outcome> outcomes =
        facts.prompts().stream().map(PromptMark::outcome).collect(Collectors.toList());
    for (PromptMark.Outcome outcome : outcomes) {
      if (outcome == PromptMark.Outcome.MISSED) {
        row++;
      } else if (row > 0) {
        rows.add(row);
        row = 0;
      }
    }
    if (row > 0) {
      rows.add(row);
    }
    return rows.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Whether breaths were left out here and there, rather than in a few long pauses. */
  static boolean leavesOutSingleBreaths(Facts facts) {
    double mean = Arrays.stream(rowsOfMissed(facts)).average().orElse(0);
    return mean > 0 && mean < 2;
  }
}
