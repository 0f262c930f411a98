package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.Map;

/** How the values of one rhythm and its limits must stand to each other. */
enum ValueRule {
  LOW_TO_TARGET(
      ProtocolValue.BREATH_LOW, ProtocolValue.BREATH_INTERVAL, Order.AT_MOST, "at most the target"),
  HIGH_FROM_TARGET(
      ProtocolValue.BREATH_HIGH,
      ProtocolValue.BREATH_INTERVAL,
      Order.AT_LEAST,
      "at least the target"),
  SQUEEZE_UNDER_INTERVAL(
      ProtocolValue.INSPIRATION,
      ProtocolValue.BREATH_LOW,
      Order.UNDER,
      "shorter than the shortest interval"),
  TOLERANCE_UNDER_INTERVAL(
      ProtocolValue.BREATH_TOLERANCE,
      ProtocolValue.BREATH_LOW,
      Order.UNDER,
      "less than the shortest interval"),
  RATE_LOW_TO_TARGET(
      ProtocolValue.COMPRESSION_LOW,
      ProtocolValue.COMPRESSION_RATE,
      Order.AT_MOST,
      "at most the target"),
  RATE_HIGH_FROM_TARGET(
      ProtocolValue.COMPRESSION_HIGH,
      ProtocolValue.COMPRESSION_RATE,
      Order.AT_LEAST,
      "at least the target"),
  SQUEEZES_IN_PAUSE(
      ProtocolValue.INSPIRATION,
      ProtocolValue.PAUSE,
      Order.AT_MOST,
      "so short that all the breaths fit into the pause") {
    @Override
    BigDecimal measured(Map<ProtocolValue, BigDecimal> values) {
      BigDecimal breaths = values.get(ProtocolValue.CYCLE_BREATHS);
      return breaths == null ? null : super.measured(values).multiply(breaths);
    }
  },
  PAUSE_TO_LIMIT(
      ProtocolValue.PAUSE_LIMIT, ProtocolValue.PAUSE, Order.AT_LEAST, "at least the planned pause"),
  NOTICE_TO_HALF(
      ProtocolValue.PULSE_CHECK_NOTICE,
      ProtocolValue.PULSE_CHECK_EVERY,
      Order.AT_MOST,
      "at most half of pulseCheckEvery") {
    @Override
    BigDecimal measured(Map<ProtocolValue, BigDecimal> values) {
      return super.measured(values).multiply(BigDecimal.valueOf(2));
    }
  },
  SHORTEST_TO_LONGEST(
      ProtocolValue.PULSE_CHECK_SHORTEST,
      ProtocolValue.PULSE_CHECK_LONGEST,
      Order.AT_MOST,
      "at most pulseCheckLongest"),
  NOTICE_UNDER_SUCTION(
      ProtocolValue.SUCTION_NOTICE,
      ProtocolValue.SUCTION_LONGEST,
      Order.UNDER,
      "under suctionLongest");

  private enum Order {
    AT_MOST("at most "),
    AT_LEAST("at least "),
    UNDER("under ");

    private final String word;

    Order(String word) {
      this.word = word;
    }
  }

  private final ProtocolValue judged;
  private final ProtocolValue bound;
  private final Order order;
  private final String words;

  ValueRule(ProtocolValue judged, ProtocolValue bound, Order order, String words) {
    this.judged = judged;
    this.bound = bound;
    this.order = order;
    this.words = words;
  }

  /** The value that is named when the rule is broken. */
  ProtocolValue judged() {
    return judged;
  }

  /** Whether the values break it; they can't where one that it needs is missing. */
  boolean isBroken(Map<ProtocolValue, BigDecimal> values) {
    if (!values.containsKey(judged) || !values.containsKey(bound)) {
      return false;
    }
    BigDecimal left = measured(values);
    if (left == null) {
      return false;
    }
    int compared = left.compareTo(values.get(bound));
    switch (order) {
      case AT_MOST:
        return compared > 0;
      case AT_LEAST:
        return compared < 0;
      default:
        return compared >= 0;
    }
  }

  /** What the rule compares with the bound. */
  BigDecimal measured(Map<ProtocolValue, BigDecimal> values) {
    return values.get(judged);
  }

  /** What is allowed, in the words of a file. */
  String allowed() {
    return words;
  }

  /** What is allowed, in the words of a screen, with the value that it depends on. */
  String allowed(Map<ProtocolValue, BigDecimal> values) {
    String other = bound.words(values.get(bound));
    switch (this) {
      case SQUEEZES_IN_PAUSE:
        return "so short that "
            + values.get(ProtocolValue.CYCLE_BREATHS)
            + " fit into the planned pause, which is "
            + other;
      case NOTICE_TO_HALF:
        return "at most half of the time between pulse checks, which is " + other;
      default:
        return order.word + other + ", the value of “" + bound.label() + "”";
    }
  }
}
