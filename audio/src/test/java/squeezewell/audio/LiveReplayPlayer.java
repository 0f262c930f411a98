package squeezewell.audio;

import squeezewell.session.MonotonicClock;

/**
 * Plays what was done in a minute at four times its speed on the machine's sound device, for {@link
 * LiveReplayTest}, in a JVM of its own.
 */
public final class LiveReplayPlayer {
  static final int SPEED = 4;

  /** By then a device has begun to play evenly. */
  private static final long BEGIN_NANOS = 6 * Plans.SECOND;

  /** The same in frames of the recording. */
  static final long BEGIN_FRAMES = 6L * PulseSandbox.RATE;

  private LiveReplayPlayer() {}

  public static void main(String[] arguments) throws InterruptedException {
    MonotonicClock clock = MonotonicClock.startNow();
    SoundLevels levels = ReplaySoundTest.only(SoundKind.DONE);
    try (SoundOutput output =
        new SoundOutput(clock, levels, new JavaSoundDevice(), s -> System.out.println(s))) {
      DryWatch watch = DryWatch.start(output, clock);
      output.play(ReplaySoundTest.source(ReplaySoundTest.from(0, SPEED, BEGIN_NANOS)));
      Thread.sleep((BEGIN_NANOS + 60 * Plans.SECOND / SPEED) / 1_000_000 + DryWatch.TAIL_MILLIS);
      SoundFeed feed = output.engine().feed();
      System.out.println("HOLES " + (feed == null ? -1 : feed.holes()));
      watch.end().forEach(System.out::println);
    }
    System.out.println("END");
  }
}
