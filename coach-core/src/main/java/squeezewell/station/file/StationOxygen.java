package squeezewell.station.file;

import squeezewell.equipment.Flow;
import squeezewell.equipment.OxygenSupply;

/**
 * The oxygen that is there.
 *
 * @param supply the cylinder, what its gauge shows and what is kept back
 * @param flow what is set once it is connected
 */
public record StationOxygen(OxygenSupply supply, Flow flow) {}
