package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/**
 * The machine's default sound device, by Java Sound. Looks for it anew at each opening, so that a
 * device plugged in later is found.
 */
public final class JavaSoundDevice implements SoundDevice {
  private static final int[] RATES = {48_000, 44_100};
  private static final int[] CHANNELS = {1, 2};
  private static final int BITS = 8 * Pcm.BYTES_PER_SAMPLE;

  @Override
  public SoundLine open(long bufferNanos) throws SoundUnavailableException {
    List<Exception> refusals = new ArrayList<>();
    for (int rate : RATES) {
      for (int channels : CHANNELS) {
        AudioFormat format = new AudioFormat(rate, BITS, channels, true, false);
        try {
          return open(format, bufferNanos);
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
          // Without any device Java Sound throws IllegalArgumentException, not the checked one.
          refusals.add(e);
        }
      }
    }
    throw new SoundUnavailableException(
        "There is no sound device, or another program uses it.", refusals.get(0));
  }

  private static SoundLine open(AudioFormat format, long bufferNanos)
      throws LineUnavailableException {
    SourceDataLine line = AudioSystem.getSourceDataLine(format);
    int frames = (int) Frames.at(bufferNanos, (int) format.getFrameRate());
    try {
      line.open(format, frames * format.getFrameSize());
      line.start();
      return new JavaSoundLine(line, mixerName(line));
    } catch (LineUnavailableException | RuntimeException e) {
      line.close();
      throw e;
    }
  }

  /** Java Sound does not tell a line's mixer; the first that offers such lines is the default. */
  private static String mixerName(SourceDataLine line) {
    DataLine.Info wanted = new DataLine.Info(SourceDataLine.class, line.getFormat());
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (AudioSystem.getMixer(info).isLineSupported(wanted)) {
        return info.getName();
      }
    }
    return "default";
  }
}
