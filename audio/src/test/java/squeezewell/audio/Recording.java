package squeezewell.audio;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What was heard: raw mono samples of 16 bits, little-endian. */
final class Recording {
  private static final double FULL_SCALE = 32_768;

  private Recording() {}

  /** Where sounds start in a recording, frames from its beginning. */
  static List<Long> onsets(Path raw, double jump) throws IOException {
    return jumps(raw, new OnsetFinder(jump, PulseSandbox.RATE / 20));
  }

  /** The same without a deaf time after each, so that a click or a double is found too. */
  static List<Long> everyJump(Path raw, double jump) throws IOException {
    return jumps(raw, new OnsetFinder(jump, 0));
  }

  private static List<Long> jumps(Path raw, OnsetFinder finder) throws IOException {
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(Files.newInputStream(raw), 1 << 16))) {
      while (true) {
        int low = in.readUnsignedByte();
        finder.sample((short) (low | (in.readUnsignedByte() << 8)) / FULL_SCALE);
      }
    } catch (EOFException e) {
      return finder.onsets();
    }
  }
}
