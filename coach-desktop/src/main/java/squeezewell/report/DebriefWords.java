package squeezewell.report;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * What the page and the picture of a debrief say alike, so that they can never differ. Pure.
 * Nothing is escaped here.
 */
final class DebriefWords {
  private static final Wording WORDS = Wording.beside(DebriefWords.class);
  private static final int LONGEST_NAME = 120;

  /** What stands where a figure can't be known. */
  static final String UNKNOWN = "–";

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
    Prescription asked = review.asked();
    boolean early = asked.practisedNanos() < asked.lengthNanos();
    String practised = Quantities.clock(asked.practisedNanos());
    return WORDS.say(
        review.parts().isEmpty() ? "asked.rhythm" : "asked",
        early ? WORDS.say("early", practised, Quantities.clock(asked.lengthNanos())) : practised,
        asked.patient().toLowerCase(Locale.ROOT),
        asked.situation(),
        asked.local().isPresent()
            ? WORDS.say("local.title", asked.protocolTitle())
            : asked.protocolTitle(),
        rhythm(asked));
  }

  /** The rhythm that was asked for. */
  static String rhythm(Prescription asked) {
    if (!asked.intervalSeconds().isPresent()) {
      return asked.compressions();
    }
    String breaths = WORDS.say("rhythm", Quantities.upTo(asked.intervalSeconds().getAsDouble(), 2));
    return asked.compressions().isEmpty()
        ? breaths
        : WORDS.say("rhythm.compressions", breaths, asked.compressions());
  }

  /** Who practised, how and when. */
  static String who(SessionHeader header, ZoneId zone) {
    return PracticeLabel.inFull(shortened(header.trainee(), LONGEST_NAME), header, zone);
  }

  /** What is too long for a page is cut, and that is said. */
  static String shortened(String text, int most) {
    int length = text.codePointCount(0, text.length());
    return length <= most
        ? text
        : WORDS.say("cut", text.substring(0, text.offsetByCodePoints(0, most)), length);
  }

  /** The figures to be seen first, of a whole practice or of a part. */
  static List<Card> cards(Review review) {
    Metrics metrics = review.metrics();
    Prescription asked = review.asked();
    boolean steady = asked.intervalSeconds().isPresent();
    boolean changed = !review.parts().isEmpty();
    List<Card> cards = new ArrayList<>();
    if (steady) {
      double perMinute = 60 / asked.intervalSeconds().getAsDouble();
      cards.add(
          new Card(
              number(metrics.rate().overallPerMinute(), 1),
              WORDS.say("card.rate"),
              WORDS.say("card.rate.asked", Quantities.upTo(perMinute, 1))));
    } else {
      cards.add(
          new Card(
              Integer.toString(metrics.breathCount()),
              WORDS.say("row.breaths"),
              changed ? "" : asked.compressions()));
    }
    Metrics.Interval interval = metrics.interval();
    if (steady || interval.count() > 0) {
      cards.add(
          new Card(
              interval.count() == 0
                  ? UNKNOWN
                  : WORDS.say("card.in-range.value", interval.inRangeCount(), interval.count()),
              WORDS.say("card.in-range"),
              steady ? range(asked) : changed ? WORDS.say("card.in-range.parts") : ""));
    }
    metrics
        .compressions()
        .ifPresent(
            done ->
                cards.add(
                    new Card(
                        number(done.ratePerMinute(), 0),
                        WORDS.say("card.compressions"),
                        WORDS.say("card.compressions.count", done.count()))));
    cards.add(gap(metrics.gap()));
    return List.copyOf(cards);
  }

  /** The longest time without a breath; not known if the breaths never began. */
  static Card gap(Metrics.Gap gap) {
    if (!gap.happened()) {
      return new Card(UNKNOWN, WORDS.say("card.gap"), WORDS.say("card.gap.unknown"));
    }
    return new Card(
        WORDS.say("seconds", Quantities.upTo(gap.longestSeconds(), 1)),
        WORDS.say("card.gap"),
        WORDS.say("card.gap.from", Quantities.clock(gap.longestAtSeconds())));
  }

  private static String range(Prescription asked) {
    return asked.lowNanos().isPresent() && asked.highNanos().isPresent()
        ? WORDS.say(
            "range",
            Quantities.upTo(asked.lowNanos().getAsLong() / 1e9, 2),
            Quantities.upTo(asked.highNanos().getAsLong() / 1e9, 2))
        : "";
  }

  /** How the ribbon is to be read; only what is on it is told. */
  static String legend(Review review) {
    List<String> lines = new ArrayList<>(List.of(WORDS.say("legend")));
    if (!review.compressions().isEmpty()) {
      lines.add(WORDS.say("legend.compressions"));
    }
    if (!review.silences().isEmpty()) {
      lines.add(WORDS.say("legend.silences"));
    }
    if (!review.found().isEmpty()) {
      lines.add(WORDS.say("legend.found"));
    }
    return String.join(" ", lines);
  }

  /** The heading over where the rhythm is from. */
  static String protocolHeading(Prescription asked) {
    return WORDS.say(asked.local().isPresent() ? "protocol.local" : "protocol.guideline");
  }

  /** Where the rhythm is from. */
  static String protocol(Prescription asked) {
    return WORDS.say("protocol", asked.protocolTitle(), asked.organisation(), asked.year());
  }

  /** Seconds with at most so many decimals, or {@link #UNKNOWN}. */
  static String seconds(OptionalDouble value, int decimals) {
    return value.isPresent()
        ? WORDS.say("seconds", Quantities.upTo(value.getAsDouble(), decimals))
        : UNKNOWN;
  }

  private static String number(OptionalDouble value, int decimals) {
    return value.isPresent() ? Quantities.upTo(value.getAsDouble(), decimals) : UNKNOWN;
  }
}
