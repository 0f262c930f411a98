package squeezewell.station.run;

import squeezewell.equipment.OxygenSupply;
import squeezewell.station.file.StationOxygen;

/**
 * Oxygen that flows in a running station.
 *
 * @param oxygen the supply and the flow
 * @param fromClockNanos since when, on the station's clock
 * @param sinceNanos since when, session time
 */
record OxygenFlow(StationOxygen oxygen, long fromClockNanos, long sinceNanos) {
  /** What is left when the station's clock shows a time. */
  StationState.OxygenLeft leftAt(long clockNanos) {
    OxygenSupply left = oxygen.supply().after(oxygen.flow(), clockNanos - fromClockNanos);
    return new StationState.OxygenLeft(
        sinceNanos, left.gauge(), left.nanosUntilReserve(oxygen.flow()));
  }
}
