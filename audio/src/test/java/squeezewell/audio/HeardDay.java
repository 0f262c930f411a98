package squeezewell.audio;

import java.util.List;
import java.util.stream.StreamSupport;

/**
 * What is heard of a day. Its first and last 40 minutes are listened to, since what is a nanosecond
 * off at each cue is frames off at the end; all of it in the long form.
 */
final class HeardDay {
  static final long SECONDS = 86_400;
  private static final long EDGE_SECONDS = Tries.orLong(2_400, (int) SECONDS);
  private static final int BLOCK_FRAMES = 4_096;

  private HeardDay() {}

  /** Where sounds start in the parts that are listened to. */
  static List<Long> onsets(CueMixer mixer, OnsetFinder finder) {
    int rate = mixer.rate();
    float[] block = new float[BLOCK_FRAMES];
    while (mixer.position() < SECONDS * rate) {
      long silent = mixer.silentFrames(rate);
      if (!listened(mixer.position(), rate)) {
        silent = (SECONDS - EDGE_SECONDS) * rate - mixer.position();
      }
      if (silent > 0) {
        mixer.jumpTo(mixer.position() + silent);
        finder.silence(silent);
      } else {
        int frames = (int) Math.min(BLOCK_FRAMES, SECONDS * rate - mixer.position());
        mixer.mix(block, frames);
        finder.samples(block, frames);
      }
    }
    return kept(finder.onsets(), rate);
  }

  /** Those of the frames that lie where it is listened, a second after each start of it. */
  static List<Long> kept(Iterable<Long> frames, int rate) {
    return StreamSupport.stream(frames.spliterator(), false)
        .filter(f -> listened(f, rate) && f < SECONDS * rate)
        .filter(f -> f < EDGE_SECONDS * rate || listened(f - rate, rate))
        .toList();
  }

  private static boolean listened(long frame, int rate) {
    return frame < EDGE_SECONDS * rate || frame >= (SECONDS - EDGE_SECONDS) * rate;
  }
}
