package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.coach.Playback;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * A replay as sound, frame by frame. An adult is breathed for every 6 s (AHA 2020) for 60 s; the
 * trainee squeezes 2.6 s after each prompt and for 1.1 s. The frames asked for are worked out here
 * from these numbers; the frames heard are found in the samples.
 */
class ReplaySoundTest {
  private static final int RATE = 48_000;
  private static final long SECOND = Plans.SECOND;
  private static final long MILLI = 1_000_000L;
  private static final int BREATHS = 10;
  private static final double JUMP = 0.1;

  /** Over 0.08 within one sample is more than the body of any two sounds and a fade can make. */
  private static final double BODY_STEP = 0.08;

  private static final SoundLevels NO_VOICE =
      SoundLevels.defaults().withMuted(SoundKind.VOICE, true);

  private static final SoundLevels ONLY_DONE = only(SoundKind.DONE);
  private static final SoundBank BANK = new SoundBank(RATE);

  @TempDir Path folder;

  static SoundLevels only(SoundKind kept) {
    SoundLevels levels = SoundLevels.defaults();
    for (SoundKind kind : SoundKind.values()) {
      levels = levels.withMuted(kind, kind != kept);
    }
    return levels;
  }

  private static Session session() {
    return session(List.of());
  }

  /** The same with lines of an examiner, at their own times. */
  private static Session session(List<ReplaySource.Said> said) {
    PracticePlan plan = Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 60 * SECOND);
    List<SessionEvent> events = new ArrayList<>();
    for (long k = 0; k < BREATHS; k++) {
      long at = 6 * k * SECOND + 2_600 * MILLI;
      events.add(SessionEvent.of(events.size() + 1, at, EventType.BREATH, ""));
      events.add(SessionEvent.of(events.size() + 1, at + 1_100 * MILLI, EventType.BREATH_END, ""));
    }
    for (ReplaySource.Said each : said) {
      events.add(
          SessionEvent.of(events.size() + 1, each.atNanos(), EventType.EXAMINER, each.text()));
    }
    events.sort(Comparator.comparingLong(SessionEvent::atNanos));
    events.replaceAll(
        e -> SessionEvent.of(events.indexOf(e) + 1, e.atNanos(), e.what(), e.detail()));
    events.add(SessionEvent.of(events.size() + 1, 60 * SECOND, EventType.FINISH, ""));
    return new Session(
        new SessionHeader(
            Instant.EPOCH,
            SessionHeader.Origin.LIVE,
            "",
            GuidelineLibrary.editions().stream()
                .filter(p -> p.id().equals("aha-2020"))
                .findFirst()
                .orElseThrow(),
            plan),
        events,
        List.of());
  }

  static ReplaySource source(Playback playback) {
    return new ReplaySource(ReplaySource.Track.of(session()), playback, text -> Optional.empty());
  }

  static Playback from(double position, int speed, long sinceNanos) {
    return Playback.atStart(60 * SECOND)
        .at(speed, 0)
        .seek(Math.round(position * 1e9), 0)
        .play(sinceNanos);
  }

  /** In milliseconds of the session: each second a prompt, and what was done. */
  static SortedSet<Long> done() {
    SortedSet<Long> asked = new TreeSet<>();
    for (long k = 0; k < BREATHS; k++) {
      asked.add(6_000 * k + 2_600);
      asked.add(6_000 * k + 3_700);
    }
    return asked;
  }

  /** One line is built in, the other of somebody's own station. */
  @Test
  void whatTheExaminerSaidIsHeardAtItsTimeInTheFile() throws Exception {
    List<ReplaySource.Said> said =
        List.of(
            new ReplaySource.Said(10 * SECOND, "There is a pulse. The chest does not move."),
            new ReplaySource.Said(30 * SECOND, "The lorry stands still."));
    Path file = folder.resolve("said.wav");
    CueTrack.replay(session(said), RATE, only(SoundKind.EXAMINER)).write(file, false, p -> {});
    short[] samples = samples(file);
    for (int second = 0; second < 60; second++) {
      // Each line lasts between one and four seconds.
      boolean sure = second == 10 || second == 30;
      boolean may = (second > 10 && second < 14) || (second > 30 && second < 34);
      double level = level(samples, second * RATE, RATE);
      if (sure) {
        assertThat(level).as("second " + second).isGreaterThan(0.02);
      } else if (!may) {
        assertThat(level).as("second " + second).isZero();
      }
    }
    assertThat(level(samples, 10 * RATE - 100, 100)).isZero();
    assertThat(level(samples, 10 * RATE, RATE / 10)).isGreaterThan(0.005);
  }

  @Test
  void aboveItsOwnSpeedTheExaminerIsSilent() {
    ReplaySource.Track track =
        ReplaySource.Track.of(session(List.of(new ReplaySource.Said(10 * SECOND, "Words."))));
    SpokenLine line = new SpokenLine(new short[1_000], 12_000);
    for (int speed : new int[] {1, 2, 4, 8}) {
      Playback playback = from(0, speed, 0);
      List<Sounding> all =
          new ReplaySource(track, playback, text -> Optional.of(line)).between(0, 60 * SECOND);
      assertThat(all.stream().filter(s -> s instanceof Sounding.Line).toList())
          .hasSize(speed == 1 ? 1 : 0);
    }
  }

  private static short[] samples(Path wav) throws Exception {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(wav)).order(ByteOrder.LITTLE_ENDIAN);
    bytes.position(WavHeader.LENGTH);
    short[] samples = new short[bytes.remaining() / 2];
    bytes.asShortBuffer().get(samples);
    return samples;
  }

  private static double level(short[] samples, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += samples[i] / 32_768.0 * (samples[i] / 32_768.0);
    }
    return Math.sqrt(sum / count);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4, 8})
  void whatWasDoneIsHeardOnItsExactFrameAtEverySpeed(int speed) {
    List<Long> asked = new ArrayList<>();
    for (long millis : done()) {
      // 48 frames a millisecond, fewer by the speed.
      asked.add(millis * 48 / speed);
    }
    assertThat(heard(speed, ONLY_DONE)).isEqualTo(asked);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4})
  void promptsAndWhatWasDoneAreHeardTogetherEachOnItsFrame(int speed) {
    SortedSet<Long> millis = done();
    for (long second = 0; second < 60; second++) {
      millis.add(second * 1_000);
    }
    List<Long> asked = new ArrayList<>();
    for (long at : millis) {
      asked.add(at * 48 / speed);
    }
    List<Long> found = heard(speed, NO_VOICE.withMuted(SoundKind.REMINDER, true));
    assertThat(found).isEqualTo(asked);
  }

  private static List<Long> heard(int speed, SoundLevels levels) {
    CueMixer mixer = new CueMixer(BANK, levels);
    mixer.publish(source(from(0, speed, 0)));
    // At eight times the speed the nearest two are 12.5 ms apart and a knock is louder than them.
    return onsets(mixer, 61 * RATE / speed, JUMP, RATE / 100);
  }

  private static List<Long> onsets(CueMixer mixer, long until, double jump, int deaf) {
    OnsetFinder finder = new OnsetFinder(jump, deaf);
    float[] block = new float[480];
    while (mixer.position() < until) {
      mixer.mix(block, block.length);
      finder.samples(block, block.length);
    }
    return finder.onsets();
  }

  /** At 0.9 s of a squeeze the swell is still loud; a cut would be a jump. */
  @Test
  void aChangeOfSpeedAndAScrubFadeAndGiveNothingTwice() {
    CueMixer mixer = new CueMixer(BANK, NO_VOICE.withMuted(SoundKind.REMINDER, true));
    OnsetFinder clicks = new OnsetFinder(BODY_STEP, 0);
    SoundSource played = source(from(0, 1, 0));
    mixer.publish(played);
    mix(mixer, 900 * MILLI, clicks);
    // The command comes at 0.9 s, and takes effect 35 ms later, at eight times the speed.
    played = played.until(935 * MILLI, source(from(0.935, 8, 935 * MILLI)));
    mixer.publish(played);
    mix(mixer, 1_000 * MILLI, clicks);
    // Scrubbed to 30.5 s, in a squeeze, at the speed of the session.
    played = played.until(1_035 * MILLI, source(from(30.5, 1, 1_035 * MILLI)));
    mixer.publish(played);
    mix(mixer, 2_000 * MILLI, clicks);
    // By hand, in frames: squeeze at 0; release of 1.0 s at 935 + 65/8 = 943.125 ms; scrubbed at
    // 1035 ms to 30.5 s, whose release of 31.0 s comes at 1535 ms. From 0.935 s on eight times
    // 100 ms end at 1.735 s, before the count of 2 s.
    assertThat(clicks.onsets()).containsExactly(0L, 45_270L, 73_680L);
  }

  @Test
  void aPauseFallsSilentWithoutAClickAndNothingComesAfter() {
    CueMixer mixer = new CueMixer(BANK, NO_VOICE);
    OnsetFinder clicks = new OnsetFinder(BODY_STEP, 0);
    SoundSource played = source(from(0, 1, 0));
    mixer.publish(played);
    mix(mixer, 500 * MILLI, clicks);
    mixer.publish(played.until(535 * MILLI, source(from(0.535, 1, 535 * MILLI).pause(0))));
    mix(mixer, 600 * MILLI, clicks);
    assertThat(mixer.silentFrames(RATE)).isEqualTo(RATE);
    assertThat(clicks.onsets()).containsExactly(0L);
  }

  @Test
  void wordsAreLeftOutAboveTheSessionsOwnSpeed() {
    SoundLevels words = only(SoundKind.VOICE).withCountStyle(CountStyle.SPOKEN);
    assertThat(anySound(from(0, 1, 0), words)).isTrue();
    assertThat(anySound(from(0, 2, 0), words)).isFalse();
  }

  private static boolean anySound(Playback playback, SoundLevels levels) {
    CueMixer mixer = new CueMixer(BANK, levels);
    mixer.publish(source(playback));
    float[] block = new float[480];
    boolean any = false;
    while (mixer.position() < 7 * RATE) {
      mixer.mix(block, block.length);
      for (float sample : block) {
        any |= sample != 0;
      }
    }
    return any;
  }

  @Test
  void aReplayAsAFileHoldsPromptsAndWhatWasDone() throws Exception {
    Path file = folder.resolve("replay.wav");
    CueTrack track = CueTrack.replay(session(), RATE, ONLY_DONE);
    track.write(file, false, p -> {});
    byte[] bytes = Files.readAllBytes(file);
    assertThat(bytes.length).isEqualTo(44 + 63 * RATE * 2);
    OnsetFinder finder = new OnsetFinder(JUMP, RATE / 100);
    for (int i = 44; i < bytes.length; i += 2) {
      finder.sample((short) ((bytes[i] & 0xFF) | (bytes[i + 1] << 8)) / 32_768.0);
    }
    List<Long> asked = new ArrayList<>();
    done().forEach(millis -> asked.add(millis * 48));
    assertThat(finder.onsets()).isEqualTo(asked);
    assertThat(track.cues()).hasSizeGreaterThan(60);
  }

  private static void mix(CueMixer mixer, long untilNanos, OnsetFinder finder) {
    float[] block = new float[48];
    while (mixer.position() < Frames.at(untilNanos, RATE)) {
      mixer.mix(block, block.length);
      finder.samples(block, block.length);
    }
  }
}
