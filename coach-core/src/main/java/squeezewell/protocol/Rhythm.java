package squeezewell.protocol;

import java.util.Objects;
import java.util.Optional;

/** The pattern that the rescuer keeps. */
public sealed interface Rhythm {
  /** The breaths given at an interval of their own, if the rhythm has such. */
  Optional<BreathPlan> steadyBreaths();

  /** The compressions, if the rhythm has any. */
  Optional<CompressionPlan> compressions();

  /** How many compressions a minute one of the plan's tempo stands for, 1 but for events. */
  default double compressionShare() {
    return 1;
  }

  /** Breaths only. */
  record SteadyBreaths(BreathPlan breaths) implements Rhythm {
    public SteadyBreaths {
      Objects.requireNonNull(breaths, "breaths");
    }

    @Override
    public Optional<BreathPlan> steadyBreaths() {
      return Optional.of(breaths);
    }

    @Override
    public Optional<CompressionPlan> compressions() {
      return Optional.empty();
    }
  }

  /** Compressions without a break, and breaths that do not wait for them. */
  record ContinuousCompressions(CompressionPlan compressing, BreathPlan breaths) implements Rhythm {
    public ContinuousCompressions {
      Objects.requireNonNull(compressing, "compressing");
      Objects.requireNonNull(breaths, "breaths");
    }

    @Override
    public Optional<BreathPlan> steadyBreaths() {
      return Optional.of(breaths);
    }

    @Override
    public Optional<CompressionPlan> compressions() {
      return Optional.of(compressing);
    }
  }

  /**
   * So many compressions, then a pause for so many breaths, spread evenly over the pause.
   *
   * @param compressing rate of the compressions
   * @param perCycle compressions in a cycle
   * @param breathsPerCycle breaths in the pause
   * @param pauseNanos planned length of the pause, in nanoseconds
   * @param pauseLimitNanos longest accepted pause, in nanoseconds
   * @param inspirationNanos length of a squeeze, in nanoseconds
   * @param cycleSource where the numbers of the cycle come from
   * @param pauseSource where the planned pause comes from
   * @param pauseLimitSource where the longest pause comes from
   * @param inspirationSource where the length of the squeeze comes from
   */
  record CompressionCycle(
      CompressionPlan compressing,
      int perCycle,
      int breathsPerCycle,
      long pauseNanos,
      long pauseLimitNanos,
      long inspirationNanos,
      Citation cycleSource,
      Citation pauseSource,
      Citation pauseLimitSource,
      Citation inspirationSource)
      implements Rhythm {
    public CompressionCycle {
      Objects.requireNonNull(compressing, "compressing");
      Objects.requireNonNull(cycleSource, "cycleSource");
      Objects.requireNonNull(pauseSource, "pauseSource");
      Objects.requireNonNull(pauseLimitSource, "pauseLimitSource");
      Objects.requireNonNull(inspirationSource, "inspirationSource");
      if (perCycle < 1 || breathsPerCycle < 1) {
        throw new IllegalArgumentException("a cycle needs compressions and breaths");
      }
      if (inspirationNanos <= 0 || inspirationNanos > pauseNanos / breathsPerCycle) {
        throw new IllegalArgumentException("the squeezes do not fit into the pause");
      }
      if (pauseNanos > pauseLimitNanos) {
        throw new IllegalArgumentException("the planned pause is longer than its limit");
      }
    }

    /**
     * Whether a breath takes the place of a compression in the beat, as in a newborn's 3:1: what is
     * paced are then events, 120 a minute, of which 90 are compressions (newborn programme).
     */
    public boolean byEvents() {
      return pauseNanos <= compressing.tempo().nanosAt(breathsPerCycle);
    }

    @Override
    public double compressionShare() {
      return byEvents() ? (double) perCycle / (perCycle + breathsPerCycle) : 1;
    }

    /** The tempo of whole cycles. */
    public Tempo cycle() {
      return compressing.tempo().cycleOf(perCycle, pauseNanos);
    }

    @Override
    public Optional<BreathPlan> steadyBreaths() {
      return Optional.empty();
    }

    @Override
    public Optional<CompressionPlan> compressions() {
      return Optional.of(compressing);
    }
  }
}
