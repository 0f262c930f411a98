package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TempoTest {
  private static final long DAY = 24L * 3_600 * 1_000_000_000L;
  private static final BigDecimal NANOS_PER_MINUTE = new BigDecimal("60000000000");

  @ParameterizedTest
  @CsvSource({"6, 14400", "5.5, 15709"})
  void secondsStayExactOverADay(String seconds, int events) {
    Tempo tempo = Tempo.everySeconds(new BigDecimal(seconds));
    for (int k = 0; k <= events; k++) {
      BigDecimal exact = new BigDecimal(seconds).multiply(BigDecimal.valueOf(k)).movePointRight(9);
      assertThat(tempo.nanosAt(k)).isEqualTo(exact.longValueExact());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {110, 120, 7, 113})
  void ratesStayExactOverADay(int perMinute) {
    Tempo tempo = Tempo.perMinute(BigDecimal.valueOf(perMinute));
    for (long k = 0; k <= perMinute * 1_440L; k += 1 + k / 1_000) {
      assertThat(tempo.nanosAt(k)).isEqualTo(nearest(k, BigDecimal.valueOf(perMinute)));
    }
    // 110 a minute are 158 400 a day (110 × 1440), and that event falls on the day exactly.
    assertThat(tempo.nanosAt(perMinute * 1_440L)).isEqualTo(DAY);
  }

  @Property
  void anyRateStaysWithinHalfANanosecond(
      @ForAll("rates") BigDecimal perMinute,
      @ForAll @LongRange(min = -400_000, max = 400_000) long k) {
    assertThat(Tempo.perMinute(perMinute).nanosAt(k)).isEqualTo(nearest(k, perMinute));
  }

  @Property
  void firstAtOrAfterTurnsNanosAtRound(
      @ForAll("rates") BigDecimal perMinute,
      @ForAll @LongRange(min = -1_000_000_000_000L, max = 400L * 86_400_000_000_000L) long nanos) {
    Tempo tempo = Tempo.perMinute(perMinute);
    long k = tempo.firstAtOrAfter(nanos);
    assertThat(tempo.nanosAt(k)).isGreaterThanOrEqualTo(nanos);
    assertThat(tempo.nanosAt(k - 1)).isLessThan(nanos);
    assertThat(tempo.firstAtOrAfter(tempo.nanosAt(k))).isEqualTo(k);
  }

  @Property
  void aRateComesBackAsItWasGiven(@ForAll("rates") BigDecimal perMinute) {
    assertThat(Tempo.perMinute(perMinute).perMinute()).isEqualTo(perMinute.doubleValue());
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 105, 110, 115, 120})
  void ratesOfCompressionsComeBackAsWholeNumbers(int perMinute) {
    assertThat(Tempo.perMinute(BigDecimal.valueOf(perMinute)).perMinute()).isEqualTo(perMinute);
  }

  @Property
  void aCycleIsItsEventsAndItsPause(
      @ForAll("rates") BigDecimal perMinute,
      @ForAll @IntRange(min = 1, max = 100) int events,
      @ForAll @LongRange(min = 0, max = 30_000_000_000L) long pause,
      @ForAll @LongRange(min = 0, max = 10_000) long c) {
    Tempo tempo = Tempo.perMinute(perMinute);
    assertThat(tempo.cycleOf(events, pause).nanosAt(c))
        .isEqualTo(tempo.nanosAt(c * events) + c * pause);
  }

  @Test
  void instantsFarAheadAreExactOrRefusedButNeverWrong() {
    Tempo tempo = Tempo.perMinute(new BigDecimal("110"));
    BigInteger numerator = BigInteger.valueOf(tempo.numerator());
    BigInteger denominator = BigInteger.valueOf(tempo.denominator());
    for (long k = 1; k < Long.MAX_VALUE / 8; k = k * 3 / 2 + 1) {
      BigDecimal exact =
          new BigDecimal(numerator.multiply(BigInteger.valueOf(k)))
              .divide(new BigDecimal(denominator), 0, RoundingMode.HALF_UP);
      try {
        assertThat(BigDecimal.valueOf(tempo.nanosAt(k))).isEqualByComparingTo(exact);
      } catch (ArithmeticException e) {
        // Centuries ahead.
        assertThat(exact).isGreaterThan(new BigDecimal("1e17"));
      }
    }
  }

  @Test
  void whatIsNoTempoIsRefused() {
    assertThatThrownBy(() -> new Tempo(0, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Tempo(1, -1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Tempo.perMinute(BigDecimal.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Tempo.everySeconds(new BigDecimal("1e-10")))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> Tempo.everySeconds(new BigDecimal("1e12")))
        .isInstanceOf(ArithmeticException.class);
  }

  /** 60 / rate, worked by hand: 10 a minute are 6 s, 12 are 5 s, 20 are 3 s, 25 are 2.4 s. */
  @ParameterizedTest
  @CsvSource({"10, 6", "12, 5", "20, 3", "25, 2.4", "30, 2", "40, 1.5", "60, 1"})
  void aRateIsSixtyOverItsInterval(BigDecimal perMinute, double seconds) {
    assertThat(Tempo.perMinute(perMinute).seconds()).isEqualTo(seconds, within(1e-12));
    assertThat(Tempo.perMinute(perMinute).perMinute())
        .isEqualTo(perMinute.doubleValue(), within(1e-9));
  }

  @Provide
  Arbitrary<BigDecimal> rates() {
    return Arbitraries.bigDecimals().between(new BigDecimal("1"), new BigDecimal("240")).ofScale(3);
  }

  private static long nearest(long k, BigDecimal perMinute) {
    BigDecimal doubled = NANOS_PER_MINUTE.multiply(BigDecimal.valueOf(2 * k)).add(perMinute);
    return doubled
        .divide(perMinute.multiply(BigDecimal.valueOf(2)), 0, RoundingMode.FLOOR)
        .longValueExact();
  }
}
