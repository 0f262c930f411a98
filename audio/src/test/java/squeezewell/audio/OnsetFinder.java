package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds where sounds start, knowing nothing of the mixer: a jump from one sample to the next that
 * is larger than any body of a sound can make. Frames are counted from 0.
 */
final class OnsetFinder {
  private final double jump;
  private final int deafFrames;
  private final List<Long> onsets = new ArrayList<>();
  private long frame;
  private double last;

  /**
   * A finder at frame 0.
   *
   * @param jump least difference between two samples that counts, full scale is 1
   * @param deafFrames how long to hear nothing after an onset, frames
   */
  OnsetFinder(double jump, int deafFrames) {
    this.jump = jump;
    this.deafFrames = deafFrames;
  }

  void silence(long frames) {
    if (frames > 0) {
      sample(0);
      last = 0;
      frame += frames - 1;
    }
  }

  void samples(float[] samples, int frames) {
    for (int i = 0; i < frames; i++) {
      sample(samples[i]);
    }
  }

  void sample(double value) {
    if (Math.abs(value - last) > jump && hears()) {
      onsets.add(frame);
    }
    last = value;
    frame++;
  }

  private boolean hears() {
    return onsets.isEmpty() || frame - onsets.get(onsets.size() - 1) > deafFrames;
  }

  List<Long> onsets() {
    return onsets;
  }
}
