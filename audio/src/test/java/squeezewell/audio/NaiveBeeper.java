package squeezewell.audio;

import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.SourceDataLine;
import javax.swing.Timer;

/**
 * A metronome as one would write it at first: a timer fires each second and writes a click to a
 * line with a small buffer. Arguments: {@code swing} or {@code sleep}; seconds to play.
 */
public final class NaiveBeeper {
  private static final int RATE = 48_000;
  private static final int BUFFER_BYTES = RATE / 25 * 2;

  private NaiveBeeper() {}

  public static void main(String[] arguments) throws Exception {
    int beats = Integer.parseInt(arguments[1]);
    AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
    SourceDataLine line = Objects.requireNonNull(AudioSystem.getSourceDataLine(format));
    line.open(format, BUFFER_BYTES);
    line.start();
    float[] tick = Tones.tick(RATE);
    byte[] click = new byte[tick.length * 2];
    Pcm.encode(tick, tick.length, 1, click, 0);
    if (arguments[0].equals("swing")) {
      CountDownLatch left = new CountDownLatch(beats);
      Timer timer =
          new Timer(
              1_000,
              event -> {
                line.write(click, 0, click.length);
                left.countDown();
              });
      timer.start();
      left.await();
      timer.stop();
    } else {
      for (int beat = 0; beat < beats; beat++) {
        Thread.sleep(1_000);
        line.write(click, 0, click.length);
      }
    }
    Thread.sleep(500);
    line.close();
  }
}
