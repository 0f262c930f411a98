package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * The time limits of a practice.
 *
 * @param all each limit that {@link ProtocolValue} lists, in its order; none breaks a rule of
 *     {@link ValueRule}
 */
public record Limits(Map<ProtocolValue, Limit> all) {
  public Limits {
    all = Collections.unmodifiableMap(new EnumMap<>(all));
    Map<ProtocolValue, BigDecimal> numbers = new EnumMap<>(ProtocolValue.class);
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.isLimit() != all.containsKey(value)) {
        throw new IllegalArgumentException("missing, or no limit: " + value);
      }
      if (value.isLimit()) {
        numbers.put(value, BigDecimal.valueOf(all.get(value).nanos(), 9));
      }
    }
    for (ValueRule rule : ValueRule.values()) {
      if (rule.isBroken(numbers)) {
        throw new IllegalArgumentException(rule.judged() + " must be " + rule.allowed());
      }
    }
  }

  /** Start of one pulse check to the start of the next. */
  public Limit pulseCheckEvery() {
    return all.get(ProtocolValue.PULSE_CHECK_EVERY);
  }

  /**
   * How long before it is due a check is announced; at most half the spacing, so that a check is
   * never announced before the one before it is settled.
   */
  public Limit pulseCheckNotice() {
    return all.get(ProtocolValue.PULSE_CHECK_NOTICE);
  }

  /** A shorter check can't tell. */
  public Limit pulseCheckShortest() {
    return all.get(ProtocolValue.PULSE_CHECK_SHORTEST);
  }

  /** A longer check holds up the breaths. */
  public Limit pulseCheckLongest() {
    return all.get(ProtocolValue.PULSE_CHECK_LONGEST);
  }

  /** Longest time for which to suction. */
  public Limit suctionLongest() {
    return all.get(ProtocolValue.SUCTION_LONGEST);
  }

  /** How long before that limit to warn. */
  public Limit suctionNotice() {
    return all.get(ProtocolValue.SUCTION_NOTICE);
  }

  /** Longest time without a breath. */
  public Limit gapLongest() {
    return all.get(ProtocolValue.GAP_LONGEST);
  }
}
