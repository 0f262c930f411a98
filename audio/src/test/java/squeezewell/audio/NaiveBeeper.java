package squeezewell.audio;

import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.SourceDataLine;
import javax.swing.Timer;

/**
 * A metronome as one would write it at first: a timer fires each second and plays a click on a line
 * with a small buffer. Arguments: {@code swing} or {@code sleep}; seconds to play.
 */
public final class NaiveBeeper {
  private static final int RATE = 48_000;

  /** Without some silence behind it a click may be thrown away with the line's end. */
  private static final int TAIL_FRAMES = RATE / 10;

  private static final int BUFFER_BYTES = RATE / 25 * 2;

  private NaiveBeeper() {}

  public static void main(String[] arguments) throws Exception {
    int beats = Integer.parseInt(arguments[1]);
    AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
    SourceDataLine line = Objects.requireNonNull(AudioSystem.getSourceDataLine(format));
    line.open(format, BUFFER_BYTES);
    float[] tick = Tones.tick(RATE);
    byte[] click = new byte[(tick.length + TAIL_FRAMES) * 2];
    Pcm.encode(tick, tick.length, 1, click, 0);
    if (arguments[0].equals("swing")) {
      CountDownLatch left = new CountDownLatch(beats);
      Timer timer =
          new Timer(
              1_000,
              event -> {
                beep(line, click);
                left.countDown();
              });
      timer.start();
      left.await();
      timer.stop();
    } else {
      for (int beat = 0; beat < beats; beat++) {
        Thread.sleep(1_000);
        beep(line, click);
      }
    }
    Thread.sleep(500);
    line.close();
  }

  /** Started and stopped each time; a line left to run dry played nothing at all when tried. */
  private static void beep(SourceDataLine line, byte[] click) {
    line.start();
    line.write(click, 0, click.length);
    line.drain();
    line.stop();
    line.flush();
  }
}
