package squeezewell.audio;

import squeezewell.session.SessionClock;

/**
 * Feeds one open line: writes without pause, silence between cues, and keeps the mixer's frames in
 * step with session time. While the device keeps time nothing is ever corrected, so intervals are
 * exact to the frame; one that drifts is corrected between cues. Not thread-safe.
 */
final class SoundFeed {
  /** A filtered error above this is corrected (our own choice). */
  static final long TOLERATED_NANOS = 1_500_000L;

  /** One above this is no drift but a hole, and corrected at once even while a cue sounds. */
  static final long HOLE_NANOS = 20_000_000L;

  private static final long STALL_NANOS = 300_000_000L;
  private static final int STALL_LOOKS = 8;
  private static final long QUICK_LOOK_NANOS = 1_000_000L;
  private static final int BLOCK_FRAMES = 256;

  private final SoundLine line;
  private final CueMixer mixer;
  private final SessionClock clock;
  private final SoundGrant grant;
  private final DeviceTime deviceTime;
  private final Settling settling;
  private final float[] samples = new float[BLOCK_FRAMES];
  private final byte[] silence;
  private final byte[] pcm;
  private final int depthFrames;
  private final long openedNanos;
  private boolean playing;
  private long written;
  private long lastPlayed;
  private long lastProgressNanos;
  private int looksWithoutProgress;
  private long lastStepNanos;
  private long holdFrames;
  private int corrections;

  /**
   * A feed that has written nothing.
   *
   * @param line open and started
   * @param mixer at the line's rate
   * @param depthNanos how much to keep in the device at most
   * @param clock session time
   */
  SoundFeed(SoundLine line, CueMixer mixer, long depthNanos, SessionClock clock) {
    this.line = line;
    this.mixer = mixer;
    this.clock = clock;
    this.grant = line.grant();
    this.depthFrames = (int) Math.min(grant.bufferFrames(), Frames.at(depthNanos, grant.rate()));
    this.deviceTime = new DeviceTime(grant.rate());
    this.settling = new Settling(grant.rate());
    this.pcm = new byte[BLOCK_FRAMES * grant.channels() * Pcm.BYTES_PER_SAMPLE];
    this.silence = new byte[pcm.length];
    this.openedNanos = clock.nanos();
    this.lastStepNanos = openedNanos;
    this.lastProgressNanos = openedNanos;
  }

  /** Whether cues are mixed by now. */
  boolean playing() {
    return playing;
  }

  /** How often the mapping was corrected since it was first made. */
  int corrections() {
    return corrections;
  }

  /** How much is kept in the device at most, nanoseconds. */
  long depthNanos() {
    return Frames.nanosOf(depthFrames, grant.rate());
  }

  /**
   * Fills the device up. Never waits.
   *
   * @throws SoundLostException if the device has stopped
   */
  void step() throws SoundLostException {
    long before = clock.nanos();
    int buffered = grant.bufferFrames() - line.writableFrames();
    long now = clock.nanos();
    long played = written - buffered;
    boolean progress = played > lastPlayed;
    watchForStall(now, progress);
    if (playing) {
      keepTime(now, buffered, progress && now - before < QUICK_LOOK_NANOS, played);
    } else if (progress) {
      settle(now, played);
    }
    lastPlayed = Math.max(played, lastPlayed);
    lastStepNanos = now;
    fill(depthFrames - buffered);
  }

  private void watchForStall(long now, boolean progress) throws SoundLostException {
    if (progress) {
      lastProgressNanos = now;
      looksWithoutProgress = 0;
      return;
    }
    looksWithoutProgress++;
    long patience = playing ? Math.max(STALL_NANOS, 4 * depthNanos()) : Settling.LONGEST_NANOS;
    if (looksWithoutProgress >= STALL_LOOKS && now - lastProgressNanos > patience) {
      throw new SoundLostException("the device takes no more sound");
    }
  }

  private void settle(long now, long played) {
    deviceTime.add(now, played);
    Settling.Result result = settling.look(now, played);
    boolean tired = now - openedNanos > Settling.LONGEST_NANOS && deviceTime.known();
    if (result == Settling.Result.EVEN || tired) {
      playing = true;
      goTo(written + deviceTime.aheadFrames());
    } else if (result == Settling.Result.UNEVEN) {
      deviceTime.reset();
    }
  }

  private void keepTime(long now, int buffered, boolean informative, long played) {
    if (buffered == 0) {
      // The device has run dry: what is written next leaves it now.
      deviceTime.reset();
      goTo(Frames.at(now, grant.rate()));
      return;
    }
    if (now - lastStepNanos > 2 * depthNanos()) {
      deviceTime.reset();
    } else if (informative) {
      deviceTime.add(now, played);
    }
    if (deviceTime.known()) {
      correct(written + deviceTime.aheadFrames());
    }
  }

  private void correct(long wantedFrame) {
    long error = wantedFrame - (mixer.position() - holdFrames);
    long size = Math.abs(error);
    if (size <= Frames.at(TOLERATED_NANOS, grant.rate())) {
      return;
    }
    boolean hole = size > Frames.at(HOLE_NANOS, grant.rate());
    long needed = Math.max(1, error);
    if (hole || mixer.silentFrames(needed) >= needed) {
      corrections++;
      goTo(wantedFrame);
    }
  }

  /** Makes a frame of the session the next to be written. */
  private void goTo(long frame) {
    holdFrames = Math.max(0, mixer.position() - frame);
    if (frame > mixer.position()) {
      mixer.jumpTo(frame);
    }
  }

  private void fill(int frames) throws SoundLostException {
    int left = frames;
    while (left > 0) {
      boolean silent = !playing || holdFrames > 0;
      int count = Math.min(left, BLOCK_FRAMES);
      if (holdFrames > 0) {
        count = (int) Math.min(count, holdFrames);
        holdFrames -= count;
      }
      if (line.write(silent ? silence : mixed(count), count) < count) {
        throw new SoundLostException("the device is gone");
      }
      written += count;
      left -= count;
    }
  }

  private byte[] mixed(int count) {
    if (!mixer.mix(samples, count)) {
      return silence;
    }
    Pcm.encode(samples, count, grant.channels(), pcm);
    return pcm;
  }
}
