package squeezewell.report;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import squeezewell.protocol.BreathPlan;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Asked;
import squeezewell.review.say.Review;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;

/**
 * What the page and the picture of a debrief say alike, so that they can never differ. Pure.
 * Nothing is escaped here.
 */
final class DebriefWords {
  private static final int LONGEST_NAME = 120;

  /** What stands where a figure can't be known. */
  static final String UNKNOWN = "–";

  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private DebriefWords() {}

  /**
   * A figure to be seen first.
   *
   * @param value with its unit; {@link #UNKNOWN} if it can't be known
   * @param name what it is
   * @param note what was asked or how it is meant; may be empty
   */
  record Card(String value, String name, String note) {}

  /** What was practised, for how long, by which protocol. */
  static String asked(Review review) {
    Asked asked = review.asked();
    boolean early = asked.practisedNanos() < asked.lengthNanos();
    return Quantities.clock(asked.practisedNanos())
        + (early ? " of " + Quantities.clock(asked.lengthNanos()) : "")
        + ", "
        + asked.patient().toLowerCase(Locale.ROOT)
        + ", "
        + asked.situation()
        + (review.parts().isEmpty() ? ", " + rhythm(asked) : "")
        + " ("
        + asked.protocolTitle()
        + (asked.local().isPresent() ? ", local protocol)" : ")");
  }

  /** The rhythm that was asked for. */
  static String rhythm(Asked asked) {
    String breaths =
        asked.intervalSeconds().isPresent()
            ? "one breath every " + Quantities.upTo(asked.intervalSeconds().getAsDouble(), 2) + " s"
            : "";
    String both = breaths.isEmpty() || asked.compressions().isEmpty() ? "" : "; compressions ";
    return breaths + both + asked.compressions();
  }

  /** Who practised, how and when. */
  static String who(SessionHeader header, ZoneId zone) {
    String name = shortened(header.trainee(), LONGEST_NAME);
    String trainee = name.isEmpty() ? "" : name + ", ";
    String when = WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone));
    return switch (header.origin()) {
      case LIVE -> trainee + "practised live, " + when;
      case VIRTUAL -> trainee + "a virtual practice, not a person, " + when;
      case EVENT_LIST -> trainee + "from a list of events";
    };
  }

  /** What is too long for a page is cut, and that is said. */
  static String shortened(String text, int most) {
    int length = text.codePointCount(0, text.length());
    return length <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most))
            + "… (cut, "
            + length
            + " characters in all)";
  }

  /** The figures to be seen first, of a whole practice or of a part. */
  static List<Card> cards(Review review) {
    Metrics metrics = review.metrics();
    Asked asked = review.asked();
    boolean steady = asked.intervalSeconds().isPresent();
    boolean changed = !review.parts().isEmpty();
    List<Card> cards = new ArrayList<>();
    if (steady) {
      cards.add(
          new Card(
              number(metrics.rate().overallPerMinute(), 1),
              "breaths a minute",
              "asked: " + Quantities.upTo(60 / asked.intervalSeconds().getAsDouble(), 1)));
    } else {
      cards.add(
          new Card(
              Integer.toString(metrics.breathCount()),
              "breaths",
              changed ? "" : asked.compressions()));
    }
    Metrics.Interval interval = metrics.interval();
    if (steady || interval.count() > 0) {
      cards.add(
          new Card(
              interval.count() == 0 ? UNKNOWN : interval.inRangeCount() + " of " + interval.count(),
              "intervals in range",
              steady ? range(asked) : changed ? "each in its part" : ""));
    }
    metrics.compressions().ifPresent(done -> cards.add(compressions(done)));
    cards.add(gap(metrics.gap()));
    return List.copyOf(cards);
  }

  private static Card compressions(Compressions done) {
    return new Card(
        number(done.ratePerMinute(), 0), "compressions a minute", done.count() + " in all");
  }

  /**
   * The longest time without a breath, first without the times in which none was asked for; not
   * known if the breaths never began.
   */
  static Card gap(Metrics.Gap gap) {
    if (!gap.happened()) {
      return new Card(UNKNOWN, "longest gap", "not known: the breaths never began");
    }
    String longest = Quantities.upTo(gap.longestSeconds(), 1);
    String net = Quantities.upTo(gap.longestNetSeconds(), 1);
    return new Card(
        net + " s",
        "longest gap",
        net.equals(longest)
            ? "from " + Quantities.clock(Math.round(gap.longestAtSeconds()) * 1_000_000_000L)
            : longest + " s with checks, suction and pauses");
  }

  private static String range(Asked asked) {
    return asked
        .breaths()
        .map(BreathPlan::range)
        .map(
            range ->
                Quantities.upTo(range.low(), 2) + " to " + Quantities.upTo(range.high(), 2) + " s")
        .orElse("");
  }

  /** How the ribbon is to be read; only what is on it is told. */
  static String legend(Review review) {
    return "Above: prompts, hollow if missed. Below: breaths, as long as the squeeze;"
        + " a tip upwards came too soon, a tip downwards too late."
        + (review.compressions().isEmpty() ? "" : " Thin ticks: compressions.")
        + (review.silences().isEmpty() ? "" : " Slanting lines: no prompts.")
        + (review.found().isEmpty() ? "" : " Upright lines: what was found, by its number.");
  }

  /** The heading over where the rhythm is from. */
  static String protocolHeading(Asked asked) {
    return asked.local().isPresent() ? "Local protocol" : "Guideline";
  }

  /** Where the rhythm is from. */
  static String protocol(Asked asked) {
    return asked.protocolTitle() + ", " + asked.organisation() + ", " + asked.year() + ".";
  }

  private static String number(OptionalDouble value, int decimals) {
    return value.isPresent() ? Quantities.upTo(value.getAsDouble(), decimals) : UNKNOWN;
  }
}
