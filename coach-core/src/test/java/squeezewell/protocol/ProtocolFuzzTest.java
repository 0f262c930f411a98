package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import squeezewell.Tries;
import squeezewell.input.BadInputException;

/** Random damage to the built-in files either is refused or leaves a protocol that makes sense. */
class ProtocolFuzzTest {
  private static final int MUTATIONS = Tries.orLong(20_000, 100_000);
  private static final Pattern TOKEN = Pattern.compile("\"[^\"]*\"|-?[0-9.]+|[{}\\[\\]:,]");
  private static final List<String> SPARE =
      List.of(
          "0",
          "-1",
          "1e308",
          "1e-9",
          "0.5",
          "5",
          "6",
          "7",
          "30",
          "60",
          "119.9995",
          "240",
          "null",
          "true",
          "\"\"",
          "\"s\"",
          "\"/min\"",
          "\"adult\"",
          "\"years\"",
          "\"house\"",
          "[",
          "]",
          "{",
          "}",
          ",",
          ":",
          "\"compression-cycle\"",
          "\"steady-breaths\"",
          "\"continuous-compressions\"");

  @Test
  void aMutatedFileIsRefusedOrMakesSense() {
    Random random = new Random(20_260_131);
    List<String> texts =
        List.of(
            ProtocolReaderTest.builtIn("aha-2015"),
            ProtocolReaderTest.builtIn("erc-2021"),
            ProtocolReaderTest.builtIn("nrp-8"));
    int refused = 0;
    int read = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      String text = mutate(texts.get(i % texts.size()), random);
      try {
        requireSense(ProtocolReader.readText("mutated.json", text));
        read++;
      } catch (BadInputException e) {
        assertThat(e.getMessage()).startsWith("mutated.json").doesNotContainPattern("\\p{Cntrl}");
        refused++;
      } catch (RuntimeException | AssertionError e) {
        throw new AssertionError("mutation " + i + ":\n" + text, e);
      }
    }
    // Both must happen, or the mutations are too harsh or too mild to tell anything.
    assertThat(refused).isGreaterThan(MUTATIONS / 4);
    assertThat(read).isGreaterThan(MUTATIONS / 20);
  }

  private static String mutate(String text, Random random) {
    String mutated = text;
    int changes = 1 + random.nextInt(2);
    for (int c = 0; c < changes && mutated.length() > 2; c++) {
      int at = random.nextInt(mutated.length() - 1);
      mutated =
          switch (random.nextInt(4)) {
            case 0 -> mutated.substring(0, at) + mutated.substring(at + 1);
            case 1 ->
                mutated.substring(0, at) + (char) random.nextInt(300) + mutated.substring(at + 1);
            default -> swapToken(mutated, at, random);
          };
    }
    return mutated;
  }

  private static String swapToken(String text, int at, Random random) {
    Matcher token = TOKEN.matcher(text);
    if (!token.find(at)) {
      return text;
    }
    String spare = SPARE.get(random.nextInt(SPARE.size()));
    return text.substring(0, token.start()) + spare + text.substring(token.end());
  }

  /** What any protocol must keep to, worked out without the reader's help. */
  private static void requireSense(Protocol protocol) {
    assertThat(protocol.guidance()).isNotEmpty();
    for (AgeBand band : protocol.ages()) {
      assertThat(band.from().days()).isBetween(0.0, 50_000.0);
      band.to().ifPresent(to -> assertThat(to.days()).isBetween(band.from().days(), 50_000.0));
    }
    for (Guidance g : protocol.guidance()) {
      Limits limits = g.limits();
      for (Limit limit : List.of(limits.pulseCheckEvery(), limits.gapLongest())) {
        assertThat(limit.seconds()).isPositive().isFinite().isLessThanOrEqualTo(3_600);
      }
      assertThat(limits.pulseCheckNotice().nanos()).isLessThan(limits.pulseCheckEvery().nanos());
      assertThat(limits.pulseCheckShortest().nanos())
          .isLessThanOrEqualTo(limits.pulseCheckLongest().nanos());
      assertThat(limits.suctionNotice().nanos()).isLessThan(limits.suctionLongest().nanos());
      g.rhythm().steadyBreaths().ifPresent(ProtocolFuzzTest::requireSense);
      g.rhythm().compressions().ifPresent(ProtocolFuzzTest::requireSense);
      if (g.rhythm() instanceof Rhythm.CompressionCycle c) {
        assertThat(c.perCycle()).isBetween(1, 100);
        assertThat(c.breathsPerCycle()).isBetween(1, 10);
        assertThat(c.inspirationNanos()).isPositive();
        assertThat(c.inspirationNanos() * c.breathsPerCycle()).isLessThanOrEqualTo(c.pauseNanos());
        assertThat(c.pauseNanos()).isLessThanOrEqualTo(c.pauseLimitNanos());
        assertThat(c.cycle().seconds()).isPositive().isFinite();
      }
    }
  }

  private static void requireSense(BreathPlan plan) {
    assertThat(plan.interval().seconds()).isBetween(0.5, 60.0);
    assertThat(plan.inspirationNanos()).isPositive().isLessThan(plan.lowNanos());
    assertThat(plan.lowNanos()).isLessThanOrEqualTo(plan.interval().nanosAt(1));
    assertThat(plan.highNanos()).isGreaterThanOrEqualTo(plan.interval().nanosAt(1));
  }

  private static void requireSense(CompressionPlan plan) {
    assertThat(plan.tempo().perMinute()).isBetween(30.0, 240.001);
    assertThat(plan.lowPerMinute())
        .isPositive()
        .isLessThanOrEqualTo(plan.tempo().perMinute() + 1e-6);
    assertThat(plan.highPerMinute())
        .isFinite()
        .isGreaterThanOrEqualTo(plan.tempo().perMinute() - 1e-6);
  }
}
