package squeezewell.audio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.DoubleConsumer;
import squeezewell.coach.Playback;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.session.Session;

/**
 * A whole practice as a WAV file: mono, 16 bits, with every cue on its exact frame. Frame 0 is the
 * start of the session. Written as a stream, so its length costs no memory. Immutable.
 */
public final class CueTrack {
  /** Room after the end for the closing notes and words. */
  private static final long TAIL_NANOS = 3_000_000_000L;

  private static final int BLOCK_FRAMES = 4_096;
  private static final int SILENCE_FRAMES = 48_000;

  private final SoundSource source;
  private final int rate;
  private final SoundLevels levels;
  private final long endNanos;

  /**
   * One cue of the track.
   *
   * @param frame where it starts, from 0
   * @param atNanos its instant, nanoseconds since the session began
   * @param kind what it tells
   * @param count as in {@link Cue#count()}
   */
  public record Expected(long frame, long atNanos, CueKind kind, int count) {
    public Expected {
      Objects.requireNonNull(kind, "kind");
    }
  }

  /**
   * The track of a schedule.
   *
   * @param schedule what to prompt; must have an end
   * @param rate frames a second: 44,100 or 48,000
   * @param levels how loud
   * @throws IllegalArgumentException if the schedule has no end, the rate is another, or the track
   *     is longer than a WAV file can be (12 h 25 min at 48,000, 13 h 31 min at 44,100)
   */
  public CueTrack(CueSchedule schedule, int rate, SoundLevels levels) {
    this(
        SoundSource.of(schedule),
        schedule
            .endNanos()
            .orElseThrow(
                () -> new IllegalArgumentException("a paused session has no end to write to")),
        rate,
        levels);
  }

  private CueTrack(SoundSource source, long endNanos, int rate, SoundLevels levels) {
    this.source = source;
    this.levels = Objects.requireNonNull(levels, "levels");
    if (rate != 44_100 && rate != 48_000) {
      throw new IllegalArgumentException("a rate is 44100 or 48000, not " + rate);
    }
    this.rate = rate;
    this.endNanos = endNanos;
    if (frames() > WavHeader.MOST_FRAMES) {
      throw new IllegalArgumentException(
          "this practice is too long for a WAV file, which holds "
              + WavHeader.MOST_FRAMES / rate / 60
              + " minutes at "
              + rate
              + " frames a second");
    }
  }

  /**
   * The track of a session that is over: its prompts, what was done and what an examiner said, at
   * its own speed. Waits until words of own stations are synthesised. It ends where the session
   * ended.
   *
   * @param session what to play
   * @param rate frames a second: 44,100 or 48,000
   * @param levels how loud
   * @throws IllegalArgumentException if the rate is another, or the track is longer than a WAV file
   *     can be
   */
  public static CueTrack replay(Session session, int rate, SoundLevels levels) {
    long end = session.endNanos();
    Playback playback = Playback.atStart(end).play(0);
    ReplaySource.Track track = ReplaySource.Track.of(session);
    Map<String, SpokenLine> lines = LineStore.all(track.texts());
    return new CueTrack(
        new ReplaySource(track, playback, text -> Optional.ofNullable(lines.get(text))),
        end,
        rate,
        levels);
  }

  public int rate() {
    return rate;
  }

  /** Length of the track in frames, with the closing words. */
  public long frames() {
    return Frames.at(endNanos + TAIL_NANOS, rate);
  }

  /** The prompts of the track, in order, those that are muted included. */
  public List<Expected> cues() {
    List<Expected> expected = new ArrayList<>();
    for (Sounding sounding : source.between(0, endNanos + 1)) {
      if (sounding instanceof Sounding.Prompt prompt) {
        long frame = Frames.at(prompt.atNanos(), rate);
        Cue cue = prompt.cue();
        expected.add(new Expected(frame, cue.atNanos(), cue.kind(), cue.count()));
      }
    }
    return List.copyOf(expected);
  }

  /**
   * Writes the track. The file appears only when it is complete.
   *
   * @param file where to
   * @param overwrite whether a file of that name may be replaced
   * @param progress told how much is done, 0 to 1, about once a second of sound; may throw to stop
   * @throws FileAlreadyExistsException if there is such a file and it may not be replaced
   * @throws IOException if the file can't be written
   */
  public void write(Path file, boolean overwrite, DoubleConsumer progress) throws IOException {
    if (!overwrite && Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    // Not a temporary file of the system's: that would be hidden from other users for good.
    Path part = file.resolveSibling("." + file.getFileName() + "-" + UUID.randomUUID() + ".part");
    try {
      try (OutputStream out =
          new BufferedOutputStream(
              Files.newOutputStream(part, StandardOpenOption.CREATE_NEW), 1 << 16)) {
        stream(out, progress);
      }
      if (overwrite) {
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
      } else {
        Files.move(part, file);
      }
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private void stream(OutputStream out, DoubleConsumer progress) throws IOException {
    CueMixer mixer = new CueMixer(rate, levels);
    mixer.publish(source);
    float[] samples = new float[BLOCK_FRAMES];
    byte[] bytes = new byte[BLOCK_FRAMES * Pcm.BYTES_PER_SAMPLE];
    byte[] silence = new byte[SILENCE_FRAMES * Pcm.BYTES_PER_SAMPLE];
    long total = frames();
    long told = 0;
    out.write(WavHeader.of(rate, total));
    while (mixer.position() < total) {
      long left = total - mixer.position();
      int silent = (int) mixer.silentFrames(Math.min(left, SILENCE_FRAMES));
      if (silent > 0) {
        mixer.jumpTo(mixer.position() + silent);
        out.write(silence, 0, silent * Pcm.BYTES_PER_SAMPLE);
      } else {
        int count = (int) Math.min(left, BLOCK_FRAMES);
        mixer.mix(samples, count);
        Pcm.encode(samples, count, 1, bytes, 0);
        out.write(bytes, 0, count * Pcm.BYTES_PER_SAMPLE);
      }
      if (mixer.position() - told >= rate) {
        told = mixer.position();
        progress.accept((double) told / total);
      }
    }
    progress.accept(1);
  }
}
