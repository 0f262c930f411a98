package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import squeezewell.words.Wording;

/**
 * Rows of figures for people. Each row has a name and clauses; a clause names the figures of {@link
 * Figures} that it tells, separated by spaces, and is left out if one of them can't be computed.
 */
public final class FigureRows {
  private final Review review;
  private final Wording words;
  private final int decimals;
  private final BiConsumer<String, String> row;

  /**
   * Rows in the words of a room.
   *
   * @param words says {@code row.KEY} for the name of a row, {@code row.KEY.FIGURE} for a clause by
   *     its first figure, and {@code row.unknown}
   * @param decimals a number has at most so many
   * @param row takes the name of each row and its text
   */
  public FigureRows(Review review, Wording words, int decimals, BiConsumer<String, String> row) {
    this.review = review;
    this.words = words;
    this.decimals = decimals;
    this.row = row;
  }

  /** Rows of plain text; a name has at most 17 characters. */
  public static FigureRows ofText(Review review, BiConsumer<String, String> row) {
    return new FigureRows(review, Sayings.WORDS, 1, row);
  }

  /** Adds a row, unless its first clause can't be told. */
  public void add(String key, String... clauses) {
    value(key, clauses).ifPresent(text -> row.accept(words.say("row." + key), text));
  }

  /** Adds a row that says so if its first clause can't be told. */
  public void addAlways(String key, String... clauses) {
    row.accept(words.say("row." + key), value(key, clauses).orElse(words.say("row.unknown")));
  }

  /** What is told in a row; empty if its first clause can't be told. */
  Optional<String> value(String key, String... clauses) {
    StringBuilder text = new StringBuilder();
    for (String clause : clauses) {
      List<Object> values = new ArrayList<>();
      for (String name : clause.split(" ", -1)) {
        Figures.named(name).shown(review, decimals).ifPresent(values::add);
      }
      if (values.size() == clause.split(" ", -1).length) {
        String first = clause.split(" ", -1)[0];
        String field = first.substring(first.lastIndexOf('.'));
        text.append(words.say("row." + key + field, values.toArray()));
      } else if (text.length() == 0) {
        return Optional.empty();
      }
    }
    return Optional.of(text.toString());
  }

  /** Adds what there is about the rhythm without prompts. */
  public void addUnprompted() {
    FigureRows rows = ofText(review, row);
    if (review.metrics().unprompted().isPresent()) {
      rows.add(
          "unprompted",
          "unprompted.seconds",
          "unprompted.silences",
          "unprompted.breathCount unprompted.plannedCount");
      rows.addAlways("unprompted-mean", "unprompted.meanSeconds unprompted.ratePerMinute");
      rows.addAlways(
          "unprompted-range",
          "unprompted.inRangeCount unprompted.intervalCount unprompted.inRangeFractionLow");
      rows.add("unprompted-gap", "unprompted.longestGapSeconds");
      OptionalDouble drift = Figures.named("unprompted.driftPercentPerMinute").number(review);
      if (drift.isPresent()) {
        String key = drift.getAsDouble() > 0 ? "row.drift.slower" : "row.drift.faster";
        String percent = Words.decimal(Math.abs(drift.getAsDouble()));
        row.accept(Sayings.WORDS.say("row.drift"), Sayings.WORDS.say(key, percent));
      }
      rows.add("level", "unprompted.highestLevel unprompted.levels");
    }
    review
        .test()
        .ifPresent(test -> row.accept(Sayings.WORDS.say("row.test"), VerdictText.test(test)));
  }

  /** Adds what there is about the compressions. */
  public void addCompressions() {
    FigureRows rows = ofText(review, row);
    rows.add(
        "compressions",
        "compressions.count",
        "compressions.ratePerMinute",
        "compressions.eventsPerMinute",
        "compressions.inRangeFraction");
    if (review.metrics().compressions().filter(done -> done.count() > 0).isPresent()) {
      rows.add(
          "pauses",
          "compressions.pauseCount",
          "compressions.longestPauseSeconds",
          "compressions.pauseLimitSeconds");
      rows.add("hands-off", "compressions.handsOffSeconds", "compressions.fraction");
      rows.add("cycles", "compressions.goodCycles compressions.cyclesMade");
    }
  }
}
