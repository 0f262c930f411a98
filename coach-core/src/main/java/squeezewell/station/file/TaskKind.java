package squeezewell.station.file;

import squeezewell.input.FileWord;

/** How a task is done. */
public enum TaskKind implements FileWord {
  /** At an instant. */
  TAP,
  /** It has a beginning and an end, and its length is judged. */
  TIMED,
  /** As timed, with breaths in rhythm meanwhile; the first squeeze begins it. */
  PACED
}
