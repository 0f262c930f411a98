package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A cylinder at a gauge pressure, with a reserve that is kept back. Immutable; everything is exact
 * and rounded down once, at the end, since too long a time is the dangerous fault. The figures are
 * planning values: gauges and flows are approximate (a tenth either way for the flow of an
 * ambulance, by federal specification KKK-A-1822E).
 *
 * <p>Minutes are (gauge - reserve) x litres for each unit of pressure / flow; at or below the
 * reserve there are none. Source of the rule: Virginia Office of Emergency Medical Services, Oxygen
 * Cylinder Guidance (2010).
 *
 * @param cylinder what holds the gas
 * @param gauge what its gauge shows
 * @param reserve what is kept back
 */
public record OxygenSupply(Cylinder cylinder, Pressure gauge, Pressure reserve) {
  private static final int DECIMALS = 6;
  private static final Fraction NANOS_PER_MINUTE = Fraction.of(60_000_000_000L);

  /** Litres in the cylinder, the reserve included, rounded down at six decimals. */
  public BigDecimal litres() {
    return down(cylinder.litres(gauge.pascals()));
  }

  /** Litres above the reserve; 0 at or below it. Rounded down at six decimals. */
  public BigDecimal usableLitres() {
    return down(usable());
  }

  /** Whether the gauge shows no more than the reserve. */
  public boolean atReserve() {
    return gauge.compareTo(reserve) <= 0;
  }

  /** Whether the gauge shows clearly more than such a cylinder holds: a wrong size or unit. */
  public boolean isImplausible() {
    return cylinder.cannotHold(gauge);
  }

  /** Minutes until the reserve is reached, rounded down at six decimals. */
  public BigDecimal minutesAt(Flow flow) {
    return down(usable().over(flow.exact()));
  }

  /** Whole minutes until the reserve is reached, rounded down. */
  public long wholeMinutesAt(Flow flow) {
    return usable().over(flow.exact()).decimal(0, RoundingMode.DOWN).longValueExact();
  }

  /** Time until the reserve is reached, in nanoseconds, rounded down. */
  public long nanosUntilReserve(Flow flow) {
    return usable()
        .over(flow.exact())
        .times(NANOS_PER_MINUTE)
        .decimal(0, RoundingMode.DOWN)
        .longValueExact();
  }

  /**
   * The same cylinder after a flow has run for a while; the flow may change from call to call. The
   * reserve is used too, and an empty cylinder stays empty.
   *
   * @param flow how fast
   * @param nanos for how long, not negative
   * @throws IllegalArgumentException if the time is negative
   */
  public OxygenSupply after(Flow flow, long nanos) {
    if (nanos < 0) {
      throw new IllegalArgumentException("the time is negative: " + nanos);
    }
    Fraction litres = flow.exact().times(Fraction.of(nanos)).over(NANOS_PER_MINUTE);
    Fraction left = gauge.pascals().minus(cylinder.pascals(litres)).orZero();
    return new OxygenSupply(cylinder, new Pressure(left), reserve);
  }

  private Fraction usable() {
    return cylinder.litres(gauge.pascals().minus(reserve.pascals()).orZero());
  }

  private static BigDecimal down(Fraction number) {
    return number.decimal(DECIMALS, RoundingMode.DOWN);
  }
}
