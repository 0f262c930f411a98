package squeezewell.desktop.screens;

import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Protocol;
import squeezewell.station.file.Station;
import squeezewell.station.run.StationSetup;

/**
 * A station that is ready to start.
 *
 * @param station what to run
 * @param setup what was settled for it
 * @param protocol the edition that is followed
 * @param plan what to breathe
 */
public record StationChoice(
    Station station, StationSetup setup, Protocol protocol, PracticePlan plan) {}
