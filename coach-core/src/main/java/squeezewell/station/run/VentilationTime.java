package squeezewell.station.run;

import java.util.Objects;
import squeezewell.station.file.Adjunct;

/**
 * For how long breaths went on with one adjunct in one mode, all stretches added up, on the
 * station's clock. They go on from the first paced task; pulse checks, suction, findings that stop
 * breaths, a patient who breathes well, and the time until a paced task that a finding calls for is
 * begun do not count. Once squeezes or compressions are recorded, neither does the time more than
 * 10 s after the last one, or 30 s where breaths and compressions take turns.
 *
 * @param adjunct what held the airway open
 * @param mode how breaths were given
 * @param nanos for how long, nanoseconds, positive
 */
public record VentilationTime(Adjunct adjunct, VentilationMode mode, long nanos) {
  public VentilationTime {
    Objects.requireNonNull(adjunct, "adjunct");
    Objects.requireNonNull(mode, "mode");
  }
}
