package squeezewell.review;

import java.math.BigDecimal;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.protocol.Tempo;

/** A made-up service: one breath every 6 s without breathing, every 4 s with slow breathing. */
final class TwoRhythms {
  private TwoRhythms() {}

  static Protocol protocol() {
    return new Protocol(
        "two-rhythms",
        "Two rhythms",
        "A body",
        2026,
        true,
        List.of(
            guidance(Situation.PULSE_NO_BREATHING, steady("6", 5, 7)),
            guidance(Situation.PULSE_SLOW_BREATHING, steady("4", 3, 5)),
            guidance(
                Situation.ARREST_NO_ADVANCED_AIRWAY, TestPlans.cycle("110", 30, 2, "4", "1"))));
  }

  private static Guidance guidance(Situation situation, Rhythm rhythm) {
    return new Guidance(PatientGroup.ADULT, situation, 0, rhythm, TestPlans.usualLimits());
  }

  private static Rhythm steady(String interval, int low, int high) {
    return new Rhythm.SteadyBreaths(
        new BreathPlan(
            Tempo.everySeconds(new BigDecimal(interval)),
            low * TestPlans.SECOND,
            high * TestPlans.SECOND,
            TestPlans.SECOND,
            TestPlans.CITATION,
            TestPlans.CITATION,
            TestPlans.CITATION));
  }
}
