package squeezewell.live;

import java.util.Objects;
import java.util.concurrent.Future;
import squeezewell.audio.JavaSoundSpeech;
import squeezewell.audio.LineStore;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.ExaminerLines;
import squeezewell.station.run.StationState;

/**
 * Speaks what the examiner of a running station says, as it is shown. Lines are prepared in the
 * background from the start on; one that is not there is text only. While the clock stands nothing
 * is said, since then people talk. {@link #changed} comes from one thread, the rest from any.
 */
public final class ExaminerVoice implements AutoCloseable {
  /** For so long the screen tells that lines are text only (our own choice). */
  static final long NOTICE_NANOS = 10_000_000_000L;

  private final LineStore lines;
  private final Mouth mouth;
  private StationState before;
  private long noticeSinceNanos;
  private boolean noticed;

  ExaminerVoice(Station station, LineStore lines, Mouth mouth) {
    this.lines = Objects.requireNonNull(lines, "lines");
    this.mouth = Objects.requireNonNull(mouth, "mouth");
    lines.prepare(ExaminerLines.all(station));
  }

  /** A voice for a station that is about to begin. Returns at once. */
  public static ExaminerVoice start(Station station, PracticeSound sound) {
    return new ExaminerVoice(station, new LineStore(JavaSoundSpeech::new), sound);
  }

  /** Done when all lines that can be spoken are there. */
  Future<?> prepared() {
    return lines.prepared();
  }

  /** Takes the next state of the station. Never waits. */
  public void changed(StationState now) {
    StationState last = before;
    before = now;
    boolean silent = now.clockStopped() || now.phase() == StationPhase.ENDED;
    if (silent) {
      boolean already = last != null && (last.clockStopped() || last.phase() == StationPhase.ENDED);
      if (!already) {
        mouth.hush();
      }
      return;
    }
    if (last != null) {
      for (ExaminerLines.Shown shown : ExaminerLines.between(last, now)) {
        lines.find(shown.text()).ifPresent(line -> mouth.say(line, shown.urgent()));
      }
    }
  }

  /**
   * What a person must know: once, for ten seconds from the first look on, that lines are text
   * only; else empty.
   *
   * @param nanoTime a reading of {@link System#nanoTime()}
   */
  public synchronized String notice(long nanoTime) {
    int unspoken = lines.unspoken();
    if (unspoken == 0) {
      return "";
    }
    if (!noticed) {
      noticed = true;
      noticeSinceNanos = nanoTime;
    }
    if (nanoTime - noticeSinceNanos > NOTICE_NANOS) {
      return "";
    }
    return unspoken == 1
        ? "One of the examiner's lines can't be spoken. Read it."
        : unspoken + " of the examiner's lines can't be spoken. Read them.";
  }

  /** Forgets the lines; one that sounds goes on. */
  @Override
  public void close() {
    lines.close();
  }
}
