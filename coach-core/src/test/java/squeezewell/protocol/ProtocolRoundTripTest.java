package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.TestPlans;
import squeezewell.input.BadInputException;

class ProtocolRoundTripTest {
  static Stream<Protocol> editions() {
    return GuidelineLibrary.editions().stream();
  }

  @ParameterizedTest
  @MethodSource("editions")
  void everyEditionIsReadAsItWasWritten(Protocol edition) throws Exception {
    assertThat(read(write(edition))).isEqualTo(edition);
  }

  @Test
  void everyKindOfRhythmIsReadAsItWasWritten() throws Exception {
    for (Rhythm rhythm : TestPlans.rhythms()) {
      Protocol protocol = TestPlans.protocol(TestPlans.guidance(rhythm, TestPlans.usualLimits()));
      assertThat(read(write(protocol))).isEqualTo(protocol);
    }
  }

  @Test
  void severalGroupsAndRescuersAreReadAsTheyWereWritten() throws Exception {
    Limits limits = TestPlans.limits("60", "10");
    List<Guidance> guidance = new ArrayList<>();
    // Physicians' reference manual: a lone rescuer of a child gives 30:2, two give 15:2.
    guidance.add(
        new Guidance(
            PatientGroup.CHILD,
            Situation.ARREST_NO_ADVANCED_AIRWAY,
            1,
            TestPlans.cycle("110", 30, 2, "4", "1"),
            limits));
    guidance.add(
        new Guidance(
            PatientGroup.CHILD,
            Situation.ARREST_NO_ADVANCED_AIRWAY,
            2,
            TestPlans.cycle("110", 15, 2, "4", "1"),
            limits));
    guidance.add(
        new Guidance(
            PatientGroup.NEWBORN,
            Situation.NEWBORN_VENTILATION,
            0,
            TestPlans.steady("1.2", "0.4"),
            TestPlans.limits("30", "5")));
    Protocol protocol =
        new Protocol("our-own", "Our \"own\" — naïve", "A body", 2026, true, guidance);
    assertThat(read(write(protocol))).isEqualTo(protocol);
  }

  /**
   * Worked by hand: 30 at 110 a minute take 30 × 60 / 110 = 16.3636 s, with 4 s for two breaths
   * 20.36 s; 15 take 8.1818 s, with 4 s 12.18 s; newborn, 120 events a minute (90 compressions and
   * 30 breaths; Solevåg and others, Scand J Trauma Resusc Emerg Med 2012;20:73): 3 × 0.5 s and 0.5
   * s for the breath, 2.0 s.
   */
  @ParameterizedTest
  @CsvSource({
    "110, 30, 2, 4, 1, 20.3636",
    "110, 15, 2, 4, 1, 12.1818",
    "120, 3, 1, 0.5, 0.5, 2.0",
    "100, 30, 2, 4, 1, 22.0",
    "120, 30, 2, 4, 1, 19.0"
  })
  void aCycleTakesAsLongAsItsPartsTogether(
      String rate, int compressions, int breaths, String pause, String squeeze, double seconds) {
    Rhythm.CompressionCycle cycle =
        (Rhythm.CompressionCycle) TestPlans.cycle(rate, compressions, breaths, pause, squeeze);
    assertThat(cycle.cycle().seconds()).isEqualTo(seconds, within(0.0001));
  }

  static String write(Protocol protocol) throws IOException {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      ProtocolWriter.write(json, protocol);
    }
    return text.toString();
  }

  private static Protocol read(String text) throws BadInputException {
    return ProtocolReader.readText("again.json", text);
  }
}
