package squeezewell.audio;

import java.util.Objects;
import java.util.Optional;

/**
 * How sound is doing.
 *
 * @param state in one word
 * @param text a sentence for people
 * @param granted the device in use; empty if there is none
 */
public record SoundStatus(State state, String text, Optional<SoundGrant> granted) {
  public SoundStatus {
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(granted, "granted");
  }

  /** The states of sound. */
  public enum State {
    /** A device is being opened or has not yet begun to play. */
    STARTING,
    /** Cues are heard. */
    PLAYING,
    /** The device stopped; it is tried again about every second. */
    LOST,
    /** There is no device that plays; it is tried again about every second. */
    UNAVAILABLE,
    /** Sound was ended by the program. */
    CLOSED
  }

  /** Whether cues are heard now. */
  public boolean playing() {
    return state == State.PLAYING;
  }
}
