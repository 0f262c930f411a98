package squeezewell.station.file;

import squeezewell.input.FileWord;

/** What a timed task holds the breaths up for. */
public enum TaskHold implements FileWord {
  PULSE_CHECK,
  SUCTION
}
