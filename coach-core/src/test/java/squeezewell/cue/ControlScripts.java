package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import squeezewell.TestPlans;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;

/** Random plans and controls for property tests. */
final class ControlScripts {
  private static final long MILLI = TestPlans.MILLI;

  private ControlScripts() {}

  /** Plans of up to ten minutes with every rhythm, with and without count-in and lead. */
  static Arbitrary<PracticePlan> plans() {
    Arbitrary<Limits> limits =
        Arbitraries.of(
            TestPlans.usualLimits(),
            TestPlans.limits("60", "10"),
            TestPlans.limits("20", "10"),
            TestPlans.limits("600", "60"));
    return Combinators.combine(
            Arbitraries.of(TestPlans.rhythms()),
            limits,
            Arbitraries.of(0L, 3_000L, 5_500L),
            Arbitraries.longs().between(1_000, 600_000),
            Arbitraries.of(0L, 80L, 1_000L))
        .as(
            (rhythm, limit, countIn, length, lead) ->
                new PracticePlan(
                    TestPlans.guidance(rhythm, limit),
                    countIn * MILLI,
                    length * MILLI,
                    lead * MILLI));
  }

  /** Controls in order of time; steps of whole quarters of a second hit cues exactly. */
  static Arbitrary<List<Control>> scripts() {
    return scripts(withoutFinish());
  }

  /** The same with changes of rhythm, and times when nothing is prompted. */
  static Arbitrary<List<Control>> scriptsWithChanges() {
    List<Control.Kind> kinds = withoutFinish();
    kinds.add(Control.Kind.WATCH);
    kinds.add(Control.Kind.NO_RATE);
    kinds.addAll(List.of(Control.Kind.CHANGE, Control.Kind.CHANGE, Control.Kind.CHANGE));
    return scripts(kinds);
  }

  private static Arbitrary<List<Control>> scripts(List<Control.Kind> often) {
    Arbitrary<Long> steps =
        Arbitraries.oneOf(
            Arbitraries.integers().between(0, 80).map(q -> q * 250L * MILLI),
            Arbitraries.longs().between(0, 30_000 * MILLI),
            Arbitraries.longs().between(0, 180_000 * MILLI));
    Arbitrary<Control.Kind> kinds =
        Arbitraries.frequencyOf(
            Tuple.of(12, Arbitraries.of(often)),
            Tuple.of(1, Arbitraries.just(Control.Kind.FINISH)));
    Arbitrary<Guidance> guidance =
        Combinators.combine(
                Arbitraries.of(TestPlans.rhythms()),
                Arbitraries.of(TestPlans.usualLimits(), TestPlans.limits("20", "10")))
            .as(TestPlans::guidance);
    return Combinators.combine(steps, kinds, guidance)
        .as(Step::new)
        .list()
        .ofMaxSize(14)
        .map(ControlScripts::inOrder);
  }

  private static List<Control.Kind> withoutFinish() {
    List<Control.Kind> kinds = new ArrayList<>(List.of(Control.Kind.values()));
    kinds.remove(Control.Kind.FINISH);
    kinds.remove(Control.Kind.CHANGE);
    kinds.remove(Control.Kind.WATCH);
    kinds.remove(Control.Kind.NO_RATE);
    return kinds;
  }

  private static List<Control> inOrder(List<Step> steps) {
    List<Control> controls = new ArrayList<>();
    long at = 0;
    for (Step step : steps) {
      at += step.nanos();
      boolean change = step.kind() == Control.Kind.CHANGE;
      controls.add(
          new Control(at, step.kind(), change ? Optional.of(step.guidance()) : Optional.empty()));
    }
    return controls;
  }

  private record Step(long nanos, Control.Kind kind, Guidance guidance) {}
}
