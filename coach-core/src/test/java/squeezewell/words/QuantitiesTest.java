package squeezewell.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Examples are worked by hand; rounding is held against the formatter of the JDK. */
class QuantitiesTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0:00, 0:00.0",
    "59999999999, 0:59, 0:59.9",
    "62340000000, 1:02, 1:02.3",
    "62390000000, 1:02, 1:02.3",
    "3599500000000, 59:59, 59:59.5",
    "-400000000, 0:00, -0:00.4",
    "-2600000000, -0:02, -0:02.6"
  })
  void clocksLeaveOffWhatIsNotWholeYet(long nanos, String down, String tenths) {
    assertThat(Quantities.clock(nanos)).isEqualTo(down);
    assertThat(Quantities.clock(nanos / 1e9)).isEqualTo(down);
    assertThat(Quantities.tenthsClock(nanos)).isEqualTo(tenths);
  }

  @Test
  void decimalsAreThoseOfTheFormatter() {
    Random random = new Random(11);
    for (int i = 0; i < 20_000; i++) {
      double number = random.nextInt(200_000) / 1000.0 - 100;
      int decimals = i % 3;
      String formatted = String.format(Locale.ROOT, "%." + decimals + "f", number);
      assertThat(Double.parseDouble(Quantities.decimals(number, decimals)))
          .as("%s to %d", number, decimals)
          .isEqualTo(Double.parseDouble(formatted) + 0.0);
      assertThat(Double.parseDouble(Quantities.upTo(number, decimals)))
          .isEqualTo(Double.parseDouble(formatted) + 0.0);
    }
    assertThat(Quantities.upTo(-0.04, 1)).isEqualTo("0");
    assertThat(Quantities.upTo(120, 1)).isEqualTo("120");
    assertThat(Quantities.decimals(2, 2)).isEqualTo("2.00");
  }

  @Test
  void aNumberThatWouldReadLikeItsLimitSaysOnWhichSideItIs() {
    assertThat(Quantities.beside(4.98, 5, 1)).isEqualTo("just under 5");
    assertThat(Quantities.beside(5.04, 5, 1)).isEqualTo("just over 5");
    assertThat(Quantities.beside(5, 5, 1)).isEqualTo("5");
    assertThat(Quantities.beside(4.98, 5, 2)).isEqualTo("4.98");
  }

  @Test
  void listsCountsAndLettersReadAsEnglish() {
    assertThat(Quantities.list(List.of())).isEmpty();
    assertThat(Quantities.list(List.of("a"))).isEqualTo("a");
    assertThat(Quantities.list(List.of("a", "b"))).isEqualTo("a and b");
    assertThat(Quantities.list(List.of("a", "b", "c"))).isEqualTo("a, b and c");
    assertThat(Quantities.count(1, "breath")).isEqualTo("1 breath");
    assertThat(Quantities.count(0, "breath")).isEqualTo("0 breaths");
    assertThat(Quantities.letters(0)).isEqualTo("A");
    assertThat(Quantities.letters(25)).isEqualTo("Z");
    assertThat(Quantities.letters(26)).isEqualTo("AA");
    assertThat(Quantities.letters(701)).isEqualTo("ZZ");
    assertThat(Quantities.seconds(2_500_000_000L)).isEqualTo("2.5 s");
    assertThat(Quantities.seconds(120_000_000_000L)).isEqualTo("120 s");
  }
}
