package squeezewell.audio;

import java.util.Objects;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.Cue;

/** Something to be heard at an instant of the sound's own time. Immutable. */
public sealed interface Sounding {
  /** When it starts, nanoseconds of the sound's time. */
  long atNanos();

  /** Whether it is heard as the same sound as another one. */
  boolean soundsLike(Sounding other);

  /** Whether it sounds the same whatever its count: one rhythm may go on where another counts. */
  boolean uncounted();

  /** Whether its words are those of a spoken count, which can be left out. */
  default boolean spokenCount() {
    return false;
  }

  /**
   * A prompt.
   *
   * @param atNanos when it starts in the sound's time, which may run otherwise than the session's
   * @param cue what it tells
   * @param inForce what is in force when it is given
   * @param swellNanos how long the swell of a squeeze is in the sound's time
   * @param words whether spoken words may go with it
   */
  record Prompt(long atNanos, Cue cue, ActiveGuidance inForce, long swellNanos, boolean words)
      implements Sounding {
    public Prompt {
      Objects.requireNonNull(cue, "cue");
      Objects.requireNonNull(inForce, "inForce");
    }

    @Override
    public boolean soundsLike(Sounding other) {
      return other instanceof Prompt prompt
          && prompt.cue.kind() == cue.kind()
          && (uncounted() || prompt.cue.count() == cue.count());
    }

    @Override
    public boolean uncounted() {
      return switch (cue.kind()) {
        case SQUEEZE, RELEASE, COMPRESS -> true;
        default -> false;
      };
    }

    @Override
    public boolean spokenCount() {
      return switch (cue.kind()) {
        case SQUEEZE, COUNT, PULSE_CHECK_SECOND -> true;
        default -> false;
      };
    }
  }

  /**
   * Something that was done, in a replay.
   *
   * @param atNanos when it starts in the sound's time
   * @param act what was done
   */
  record Deed(long atNanos, Act act) implements Sounding {
    public Deed {
      Objects.requireNonNull(act, "act");
    }

    @Override
    public boolean soundsLike(Sounding other) {
      return other instanceof Deed deed && deed.act == act;
    }

    @Override
    public boolean uncounted() {
      return true;
    }
  }

  /**
   * A line that an examiner said, in a replay.
   *
   * @param atNanos when it starts in the sound's time
   * @param text what was said
   * @param words the same as sound
   */
  record Line(long atNanos, String text, SpokenLine words) implements Sounding {
    public Line {
      Objects.requireNonNull(text, "text");
      Objects.requireNonNull(words, "words");
    }

    @Override
    public boolean soundsLike(Sounding other) {
      return other instanceof Line line && line.text.equals(text);
    }

    @Override
    public boolean uncounted() {
      return false;
    }
  }

  /** What can have been done. */
  enum Act {
    SQUEEZED,
    LET_GO,
    COMPRESSED
  }
}
