package squeezewell.audio;

import java.util.Arrays;
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

  /**
   * How long a device may take nothing before it counts as lost (our own choice). A sound server
   * that has prepared silence far ahead, as some do when another program joins in, was seen to take
   * nothing for just under two seconds and then to go on; opening anew would only start that again.
   */
  private static final long STALL_NANOS = 3_000_000_000L;

  /** Not having been woken for this long, the machine was asleep or the process stopped. */
  private static final long ASLEEP_NANOS = 1_000_000_000L;

  /** Between two corrections of a drift. */
  private static final long REST_NANOS = 1_000_000_000L;

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
  private final byte[] pcm;
  private final int frameBytes;
  private final int pieceFrames;
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
  private long lastCorrectionNanos = Long.MIN_VALUE / 2;
  private int holes;

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
    this.frameBytes = grant.channels() * Pcm.BYTES_PER_SAMPLE;
    this.pieceFrames = grant.rate() % 1_000 == 0 ? grant.rate() / 1_000 : 1;
    this.pcm = new byte[depthFrames * frameBytes];
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

  /** How often the device ran dry. */
  int holes() {
    return holes;
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
      deviceTime.reset(Long.MIN_VALUE / 2);
    }
  }

  private void keepTime(long now, int buffered, boolean informative, long played) {
    long dueFrame = Frames.at(now, grant.rate());
    if (buffered == 0 && dueFrame > mixer.position() - holdFrames) {
      // The device has run dry: what is written next leaves it now.
      holes++;
      deviceTime.reset(now);
      goTo(dueFrame);
      return;
    }
    if (now - lastStepNanos > ASLEEP_NANOS) {
      deviceTime.reset(now);
    } else if (informative) {
      deviceTime.add(now, played);
    }
    if (deviceTime.known()) {
      correct(written + deviceTime.aheadFrames(), now);
    }
  }

  private void correct(long wantedFrame, long now) {
    long error = wantedFrame - (mixer.position() - holdFrames);
    long size = Math.abs(error);
    if (size <= Frames.at(TOLERATED_NANOS, grant.rate())) {
      return;
    }
    boolean hole = size > Frames.at(HOLE_NANOS, grant.rate());
    boolean rested = now - lastCorrectionNanos > REST_NANOS;
    long needed = Math.max(1, error);
    if (hole || (rested && mixer.silentFrames(needed) >= needed)) {
      corrections++;
      lastCorrectionNanos = now;
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

  /**
   * Writes all there is room for, in one go and in whole milliseconds where the rate has such: some
   * sound servers reckon each piece in microseconds, rounded, and gain time with every odd one.
   */
  private void fill(int room) throws SoundLostException {
    int frames = room - Math.floorMod(room, pieceFrames);
    if (frames <= 0) {
      return;
    }
    Arrays.fill(pcm, 0, frames * frameBytes, (byte) 0);
    int done = 0;
    while (playing && done < frames) {
      int count = (int) Math.min(frames - done, holdFrames > 0 ? holdFrames : BLOCK_FRAMES);
      if (holdFrames > 0) {
        holdFrames -= count;
      } else if (mixer.mix(samples, count)) {
        Pcm.encode(samples, count, grant.channels(), pcm, done * frameBytes);
      }
      done += count;
    }
    if (line.write(pcm, frames) < frames) {
      throw new SoundLostException("the device is gone");
    }
    written += frames;
  }
}
