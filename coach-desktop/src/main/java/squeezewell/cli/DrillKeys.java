package squeezewell.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.util.function.LongSupplier;

/**
 * Reads keys and says what they mean. With single keys, space bar and Enter are a breath. Without,
 * the terminal hands over whole lines: an empty line is a breath, a letter and Enter is its action.
 */
final class DrillKeys {
  private static final int ESCAPE = 27;

  private final PushbackInputStream in;
  private final boolean singleKeys;
  private final LongSupplier nanoTime;

  DrillKeys(InputStream in, boolean singleKeys, LongSupplier nanoTime) {
    this.in = new PushbackInputStream(in);
    this.singleKeys = singleKeys;
    this.nanoTime = nanoTime;
  }

  /** What a key means. */
  enum Action {
    BREATH,
    COMPRESSION,
    PULSE_CHECK,
    SUCTION,
    PAUSE,
    /** What may be found now is asked for. */
    FINDINGS,
    UNDO_FINDING,
    FINISH
  }

  /** Told of each key. */
  interface Listener {
    /**
     * A key was pressed.
     *
     * @param action what it means
     * @param nanoTime when, a reading of the clock that was given
     */
    void pressed(Action action, long nanoTime);

    /** A digit from 1 to 9 was pressed: it chooses among what was offered. */
    void digit(int digit, long nanoTime);
  }

  /**
   * Reads until the input ends, which counts as {@link Action#FINISH}.
   *
   * @throws IOException if it can't be read
   */
  void read(Listener listener) throws IOException {
    boolean lineEmpty = true;
    for (int key = in.read(); key >= 0; key = in.read()) {
      long at = nanoTime.getAsLong();
      if (key == '\n' || key == '\r') {
        if (singleKeys || (lineEmpty && key == '\n')) {
          listener.pressed(Action.BREATH, at);
        }
        lineEmpty = key == '\n' || lineEmpty;
        continue;
      }
      lineEmpty = false;
      press(key, at, listener);
    }
    listener.pressed(Action.FINISH, nanoTime.getAsLong());
  }

  private void press(int key, long at, Listener listener) throws IOException {
    switch (key) {
      case ' ' -> {
        if (singleKeys) {
          listener.pressed(Action.BREATH, at);
        }
      }
      case 'c', 'C' -> listener.pressed(Action.COMPRESSION, at);
      case 'p', 'P' -> listener.pressed(Action.PULSE_CHECK, at);
      case 's', 'S' -> listener.pressed(Action.SUCTION, at);
      case 'f', 'F' -> listener.pressed(Action.FINDINGS, at);
      case 'u', 'U' -> listener.pressed(Action.UNDO_FINDING, at);
      case '1', '2', '3', '4', '5', '6', '7', '8', '9' -> listener.digit(key - '0', at);
      case 'z', 'Z' -> listener.pressed(Action.PAUSE, at);
      case 'q', 'Q' -> listener.pressed(Action.FINISH, at);
      case ESCAPE -> {
        if (!isSequence()) {
          listener.pressed(Action.PAUSE, at);
        }
      }
      default -> {
        // Other keys mean nothing.
      }
    }
  }

  /**
   * Whether the sign that was read begins an arrow or function key, which is then skipped: its rest
   * comes at once, from a bracket or an O up to a letter or a tilde (ECMA-48).
   */
  private boolean isSequence() throws IOException {
    if (in.available() == 0) {
      return false;
    }
    int next = in.read();
    if (next != '[' && next != 'O') {
      in.unread(next);
      return false;
    }
    int sign = next;
    while (in.available() > 0 && (sign == next || !(Character.isLetter(sign) || sign == '~'))) {
      sign = in.read();
    }
    return true;
  }
}
