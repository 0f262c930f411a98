package squeezewell.audio;

import squeezewell.session.SessionClock;

/**
 * A sound device in a test's own time. It plays in steps, as sound servers do, at a rate that may
 * differ from the nominal one, and plays silence when it has nothing.
 */
final class FakeDevice implements SoundDevice {
  static final int RATE = 48_000;
  private static final int STEP_FRAMES = 480;

  private final SessionClock clock;
  private final double framesPerNano;
  private final OnsetFinder finder = new OnsetFinder(0.1, RATE / 50);
  private Line line;
  private boolean present = true;
  private boolean stalled;
  private long askedBufferNanos;
  private long zeroNanos = Long.MIN_VALUE;
  private long heardFrames;
  private int hiccupFrames;

  FakeDevice(SessionClock clock, double partsPerMillion) {
    this.clock = clock;
    this.framesPerNano = RATE / 1e9 * (1 + partsPerMillion / 1e6);
  }

  void present(boolean now) {
    present = now;
  }

  void stalled(boolean now) {
    stalled = now;
  }

  /** Lets it play silence of its own although it has sound. */
  void hiccup(int frames) {
    hiccupFrames = frames;
  }

  long askedBufferNanos() {
    return askedBufferNanos;
  }

  /** When each sound left the device, session time in milliseconds. */
  double[] onsetMillis() {
    return finder.onsets().stream()
        .mapToDouble(frame -> (zeroNanos + frame / framesPerNano) / 1e6)
        .toArray();
  }

  /** Where each sound left the device, in its own frames. */
  java.util.List<Long> onsetFrames() {
    return finder.onsets();
  }

  @Override
  public SoundLine open(long bufferNanos) throws SoundUnavailableException {
    if (!present) {
      throw new SoundUnavailableException("There is no sound device.", null);
    }
    if (zeroNanos == Long.MIN_VALUE) {
      zeroNanos = clock.nanos();
    }
    askedBufferNanos = bufferNanos;
    play();
    line = new Line((int) (bufferNanos * RATE / 1_000_000_000L));
    return line;
  }

  /** Lets the device play up to now, with or without a line. */
  void play() {
    long target = (long) ((clock.nanos() - zeroNanos) * framesPerNano) / STEP_FRAMES * STEP_FRAMES;
    while (heardFrames < target) {
      boolean silent = line == null || stalled || hiccupFrames > 0;
      finder.sample(silent ? 0 : line.take());
      hiccupFrames = Math.max(0, hiccupFrames - 1);
      heardFrames++;
    }
  }

  private final class Line implements SoundLine {
    private final short[] ring;
    private int from;
    private int held;
    private boolean closed;

    Line(int bufferFrames) {
      ring = new short[bufferFrames];
    }

    double take() {
      if (held == 0 || closed) {
        return 0;
      }
      short sample = ring[from];
      from = (from + 1) % ring.length;
      held--;
      return sample / 32_768.0;
    }

    @Override
    public SoundGrant grant() {
      return new SoundGrant(RATE, 1, ring.length, "fake");
    }

    @Override
    public int writableFrames() {
      play();
      return ring.length - held;
    }

    @Override
    public int write(byte[] pcm, int frames) {
      if (!present || closed) {
        return 0;
      }
      for (int i = 0; i < frames; i++) {
        ring[(from + held) % ring.length] = (short) ((pcm[2 * i] & 0xFF) | (pcm[2 * i + 1] << 8));
        held++;
      }
      return frames;
    }

    @Override
    public void close() {
      closed = true;
    }
  }
}
