package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.audio.HandRhythm.Kind;
import squeezewell.audio.HandRhythm.Running;
import squeezewell.audio.HandRhythm.Sound;
import squeezewell.cue.Control;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * The rhythm changes in the middle of a practice, as sound. Where each rhythm starts is worked by
 * hand, case by case, in nanoseconds; the rest is {@link HandRhythm}. Rates are those of AHA 2020
 * and our own paces inside its ranges: adult a breath every 6 s, child every 2.5 s, 110
 * compressions a minute. What was mixed ahead when the command comes can't be called back.
 */
class SwitchingTest {
  private static final Set<CueKind> CHANGES =
      Set.of(CueKind.RHYTHM_CHANGED, CueKind.WATCH, CueKind.NO_RATE);

  private static final int RATE = 48_000;
  private static final long MILLI = 1_000_000L;
  private static final long SECOND = HandRhythm.SECOND;
  private static final long LEAD = SoundOutput.LEAD_NANOS;

  /** Up to 40 ms is usual; a machine that can't keep up gets more, up to 120 ms. */
  private static final long[] LOOK_AHEADS = {
    0, 25 * MILLI, 35 * MILLI, 40 * MILLI, 60 * MILLI, 120 * MILLI
  };

  /** 30 compressions at 110 a minute: 16.36363... s. */
  private static final long PAUSE = 16_363_636_364L;

  /** How long to listen after the last command: more than the longest interval. */
  private static final long TAIL = 8 * SECOND;

  /** More than the bodies of three sounds and a fade can make from one sample to the next. */
  private static final double BODY_STEP = 0.08;

  private static final SoundLevels NO_VOICE =
      SoundLevels.defaults().withMuted(SoundKind.VOICE, true);

  /** Shared, since it takes longer to make than a case takes to run. */
  private static final SoundBank BANK = new SoundBank(RATE);

  private static final Guidance ADULT = adult(Situation.PULSE_NO_BREATHING);
  private static final Guidance SLOW = adult(Situation.PULSE_SLOW_BREATHING);
  private static final Guidance ARREST = adult(Situation.ARREST_NO_ADVANCED_AIRWAY);
  private static final Guidance AIRWAY = adult(Situation.ARREST_ADVANCED_AIRWAY);
  private static final Guidance CHILD = child(Situation.PULSE_NO_BREATHING);
  private static final Guidance CHILD_ARREST = child(Situation.ARREST_NO_ADVANCED_AIRWAY);

  /**
   * One command and what is asked for from it on.
   *
   * @param control the command
   * @param then what runs, also where it was counted on from before
   */
  record Step(Control control, Running then) {}

  /**
   * A practice.
   *
   * @param start what it starts with
   * @param before that, by hand
   * @param steps commands in order
   */
  record Case(Guidance start, Running before, List<Step> steps) {
    @Override
    public String toString() {
      StringBuilder text = new StringBuilder(start.patient().id());
      text.append(' ').append(start.situation().id());
      for (Step step : steps) {
        text.append(", ").append(step.control().atNanos() / 1e9).append(" s ");
        text.append(
            step.control()
                .guidance()
                .map(g -> g.situation().id())
                .orElse(step.control().kind().name()));
      }
      return text.toString();
    }
  }

  static Stream<Case> cases() {
    List<Case> cases = new ArrayList<>();
    // Breaths every 6 s, squeezes at 0, 6, 12, 18 s: compressions start the lead after the command.
    for (long at :
        new long[] {
          12_400, 13_000, 13_001, 12_990, 14_200, 17_990, 17_970, 17_961, 18_000, 18_001
        }) {
      cases.add(sixSeconds(to(ARREST, at * MILLI, HandRhythm.cycles(at * MILLI + 35 * MILLI, 30))));
      cases.add(
          sixSeconds(
              to(
                  AIRWAY,
                  at * MILLI,
                  HandRhythm.continuous(
                      at * MILLI + 35 * MILLI,
                      // The breaths go on in step, as before.
                      HandRhythm.everySixSeconds(0)))));
      cases.add(sixSeconds(to(SLOW, at * MILLI, HandRhythm.everySixSeconds(0))));
    }
    // 30:2 to breaths: at once while no breath was given, else 6 s after the last squeeze; a
    // squeeze that comes within the lead stays where it is.
    for (long[] row :
        new long[][] {
          {5_700 * MILLI, 5_735 * MILLI},
          {5_990 * MILLI, 6_025 * MILLI},
          {5_455_545_455L, 5_490_545_455L},
          {16_310 * MILLI, 16_345 * MILLI},
          {16_325 * MILLI, 16_360 * MILLI},
          {16_340 * MILLI, PAUSE},
          {16_363 * MILLI, PAUSE},
          {16_364 * MILLI, PAUSE},
          {16_700 * MILLI, PAUSE},
          {17_350 * MILLI, PAUSE},
          {17_363 * MILLI, PAUSE},
          {17_365 * MILLI, PAUSE},
          {18_350 * MILLI, PAUSE},
          {18_370 * MILLI, PAUSE + 2 * SECOND},
          {19_000 * MILLI, PAUSE + 2 * SECOND},
          {20_350 * MILLI, PAUSE + 2 * SECOND},
          {20_370 * MILLI, PAUSE + 2 * SECOND},
        }) {
      cases.add(cycles(to(ADULT, row[0], HandRhythm.everySixSeconds(row[1]))));
    }
    // 30:2 to continuous: compressions in step with those that ran (the twelfth stands at 6 s),
    // breaths as above. Command, first compression, squeeze to count from.
    for (long[] row :
        new long[][] {
          {5_700 * MILLI, 6 * SECOND, 5_735 * MILLI},
          {5_955 * MILLI, 6 * SECOND, 5_990 * MILLI},
          {5_962 * MILLI, 6 * SECOND, 5_997 * MILLI},
          {5_970 * MILLI, 6 * SECOND, 6_005 * MILLI},
          {5_999 * MILLI, 6 * SECOND, 6_034 * MILLI},
          {6_000 * MILLI, 6 * SECOND, 6_035 * MILLI},
          {5_455_545_455L, 6 * SECOND, 5_490_545_455L},
          {16_350 * MILLI, 16_385 * MILLI, PAUSE},
          {16_700 * MILLI, 16_735 * MILLI, PAUSE},
          {18_350 * MILLI, 18_385 * MILLI, PAUSE},
          {19_000 * MILLI, 19_035 * MILLI, PAUSE + 2 * SECOND},
          {20_325 * MILLI, 20_360 * MILLI, PAUSE + 2 * SECOND},
          {20_350 * MILLI, PAUSE + 4 * SECOND, PAUSE + 2 * SECOND},
        }) {
      cases.add(
          cycles(
              to(
                  AIRWAY,
                  row[0],
                  HandRhythm.continuous(row[1], HandRhythm.everySixSeconds(row[2])))));
    }
    // A child's breaths every 2.5 s: squeezes at 10 and 12.5 s, counts at 11 and 11.75 s.
    for (long at : new long[] {10_400, 10_990, 11_740, 11_751, 12_480, 12_499, 12_501}) {
      cases.add(
          new Case(
              CHILD,
              HandRhythm.everyTwoAndAHalfSeconds(0),
              List.of(
                  to(CHILD_ARREST, at * MILLI, HandRhythm.cycles(at * MILLI + 35 * MILLI, 15)))));
    }
    // Only watched, and back: counted on from 12 s, unless 18 s is nearer than the lead or gone.
    for (long[] row :
        new long[][] {
          {12_400, 15_200, 12_000},
          {13_500, 15_000, 12_000},
          {13_990, 17_980, 18_015},
          {17_990, 18_500, 18_535},
          {18_200, 80_000, 80_035},
        }) {
      Control watch = new Control(row[0] * MILLI, Control.Kind.WATCH);
      cases.add(
          sixSeconds(
              new Step(watch, HandRhythm.silence()),
              to(ADULT, row[1] * MILLI, HandRhythm.everySixSeconds(row[2] * MILLI))));
    }
    // A slip, taken back within 5 s.
    for (long[] row :
        new long[][] {
          {14_200, 16_000, 12_000},
          {14_200, 14_700, 12_000},
          {12_300, 17_200, 12_000},
          {17_000, 21_900, 21_935},
          {17_990, 19_200, 19_235},
        }) {
      cases.add(
          sixSeconds(
              to(ARREST, row[0] * MILLI, HandRhythm.cycles((row[0] + 35) * MILLI, 30)),
              to(ADULT, row[1] * MILLI, HandRhythm.everySixSeconds(row[2] * MILLI))));
    }
    // In suction: a lost pulse can't wait, another rhythm of breaths does.
    Step suction =
        new Step(new Control(13_010 * MILLI, Control.Kind.SUCTION), HandRhythm.silence());
    cases.add(sixSeconds(suction, to(ARREST, 16 * SECOND, HandRhythm.cycles(16_035 * MILLI, 30))));
    cases.add(
        sixSeconds(
            suction,
            to(SLOW, 16 * SECOND, HandRhythm.silence()),
            new Step(
                new Control(20 * SECOND, Control.Kind.SUCTION_END),
                HandRhythm.everySixSeconds(20_035 * MILLI))));
    return cases.stream();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void aChangeIsHeardOnTimeOnceAndWithoutAClick(Case chosen) {
    long at = chosen.steps().get(0).control().atNanos();
    float[] unchanged = planned(chosen, List.of(), at + 120 * MILLI);
    upToTheCommandEverySampleIsAsIfItHadNotCome(chosen, unchanged, at);
    for (long ahead : LOOK_AHEADS) {
      Live live = new Live(chosen, ahead);
      String name = chosen + ", " + ahead / MILLI + " ms ahead";
      int position = (int) Frames.at(at + ahead, RATE);
      assertThat(Arrays.equals(live.samples, 0, position, unchanged, 0, position))
          .as("%s: what was mixed before", name)
          .isTrue();
      eachSoundIsOnItsFrameAndThereIsNoOther(live, name);
      noCompressionAndNoSqueezeIsDoubled(live, name, ahead);
      if (ahead <= 40 * MILLI) {
        whatStartsAtOnceComesWithinFiftyMilliseconds(chosen, live, name);
      }
    }
  }

  /** As in a file, where the change is known from the start. */
  private static void upToTheCommandEverySampleIsAsIfItHadNotCome(
      Case chosen, float[] unchanged, long at) {
    float[] changed = planned(chosen, controls(chosen), at);
    assertThat(Arrays.equals(changed, Arrays.copyOf(unchanged, changed.length)))
        .as("%s: the file up to the command", chosen)
        .isTrue();
  }

  /** No click, nothing missing, nothing added. */
  private static void eachSoundIsOnItsFrameAndThereIsNoOther(Live live, String name) {
    Map<Long, Double> heard = onsets(live.samples);
    assertThat(heard.keySet()).as(name).isEqualTo(live.due.keySet());
    heard.forEach(
        (frame, step) ->
            assertThat(step)
                .as("%s, step at frame %d", name, frame)
                .isLessThan(live.due.get(frame) + BODY_STEP));
  }

  /** Never closer to the one before than in the quicker rhythm. */
  private static void noCompressionAndNoSqueezeIsDoubled(Live live, String name, long ahead) {
    // A cue that can't be mixed in time any more is given late, by what look-ahead exceeds lead.
    long late = Frames.at(Math.max(0, ahead - LEAD), RATE) + 1;
    assertThat(closest(live, Kind.COMPRESS))
        .as(name)
        .isGreaterThanOrEqualTo(Frames.at(HandRhythm.compression(1), RATE) - late);
    // The two breaths of a pause stand 2 s apart, all others farther.
    assertThat(closest(live, Kind.SQUEEZE))
        .as(name)
        .isGreaterThanOrEqualTo(Frames.at(2 * SECOND, RATE) - late);
  }

  private static void whatStartsAtOnceComesWithinFiftyMilliseconds(
      Case chosen, Live live, String name) {
    for (Step step : chosen.steps()) {
      long at = step.control().atNanos();
      if (step.then().sounds(at + SECOND).stream().anyMatch(s -> s.nanos() == at + LEAD)) {
        assertThat(live.due.keySet())
            .as(name)
            .anyMatch(f -> f >= Frames.at(at, RATE) && f <= Frames.at(at + 50 * MILLI, RATE));
      }
    }
  }

  @Test
  void anotherRhythmOfTheSameStepsChangesNoSample() {
    cases()
        .filter(c -> c.steps().get(0).control().guidance().equals(Optional.of(SLOW)))
        .forEach(
            c -> {
              long end = c.steps().get(0).control().atNanos() + TAIL;
              float[] unchanged = planned(c, List.of(), end);
              assertThat(Arrays.equals(unchanged, planned(c, controls(c), end))).isTrue();
              for (long ahead : LOOK_AHEADS) {
                float[] live = new Live(c, ahead).samples;
                assertThat(Arrays.equals(unchanged, live)).as("%s, %d", c, ahead).isTrue();
              }
            });
  }

  /** The first squeeze of the pause is 16.36 to 17.36 s; the next sound was to be at 18.36 s. */
  @Test
  void aSqueezeInProgressGoesOnIntoBreathsWithoutABreak() {
    for (long at : new long[] {16_364, 16_500, 16_700, 17_300}) {
      Case chosen = cycles(to(ADULT, at * MILLI, HandRhythm.everySixSeconds(PAUSE)));
      float[] unchanged = planned(chosen, List.of(), 18_363 * MILLI);
      for (long ahead : LOOK_AHEADS) {
        float[] live = Arrays.copyOf(new Live(chosen, ahead).samples, unchanged.length);
        assertThat(Arrays.equals(unchanged, live)).as("%d ms, %d", at, ahead).isTrue();
      }
    }
  }

  /**
   * The words of a change wait until the first sound of the new rhythm is over: with the voice on,
   * every sample up to then is as without. A tick lasts 0.07 s; a breath 1 s, its release 0.4 s.
   */
  @Test
  void theWordsOfAChangeNeitherDelayNorCoverItsFirstSound() {
    long at = 14_200 * MILLI;
    Case lost = sixSeconds(to(ARREST, at, HandRhythm.silence()));
    Case back = cycles(to(ADULT, 5_700 * MILLI, HandRhythm.silence()));
    Case watch = sixSeconds(new Step(new Control(at, Control.Kind.WATCH), HandRhythm.silence()));
    assertWords(lost, at + LEAD + 70 * MILLI, Phrase.COMPRESS_NOW, at + 150 * MILLI);
    assertWords(
        back, 5_735 * MILLI + 1_400 * MILLI, Phrase.BREATHS_ONLY, 5_700 * MILLI + 1_550 * MILLI);
    assertWords(watch, at, Phrase.WATCH_BREATHING, at + 150 * MILLI);
    Case slow = sixSeconds(to(SLOW, at, HandRhythm.silence()));
    assertThat(planned(slow, controls(slow), 25 * SECOND, SoundLevels.defaults()))
        .isEqualTo(planned(slow, controls(slow), 25 * SECOND, NO_VOICE));
  }

  /** "Compress now" is said from 14.35 s on, for 0.8 s; "breaths only" from 1.55 s on. */
  @Test
  void theWordsOfAChangeThatIsTakenBackEndWithIt() {
    for (long undone : new long[] {14_300, 14_700}) {
      Case slip =
          sixSeconds(
              to(ARREST, 14_200 * MILLI, HandRhythm.silence()),
              to(ADULT, undone * MILLI, HandRhythm.silence()));
      long end = undone * MILLI + 1_550 * MILLI;
      float[] spoken = planned(slip, controls(slip), end, SoundLevels.defaults());
      float[] without = planned(slip, controls(slip), end, NO_VOICE);
      // A fade takes 10 ms.
      int from = (int) Frames.at(undone * MILLI + 10 * MILLI, RATE);
      assertThat(Arrays.equals(spoken, from, spoken.length, without, from, spoken.length)).isTrue();
      boolean begun = undone > 14_350;
      assertThat(Arrays.equals(spoken, without)).isEqualTo(!begun);
    }
  }

  private static void assertWords(Case chosen, long freeUntil, Phrase phrase, long from) {
    long end = chosen.steps().get(0).control().atNanos() + 4 * SECOND;
    float[] spoken = planned(chosen, controls(chosen), end, SoundLevels.defaults());
    float[] without = planned(chosen, controls(chosen), end, NO_VOICE);
    int free = (int) Frames.at(freeUntil, RATE);
    assertThat(Arrays.equals(spoken, 0, free, without, 0, free)).as("%s", chosen).isTrue();
    int first = (int) Frames.at(from, RATE);
    float[] words = phrase.samples(RATE);
    for (int i = 0; i < spoken.length; i++) {
      boolean said = i >= first && i < first + words.length;
      // Volume of the voice by default; nowhere near the limiter's knee.
      double wanted = without[i] + (said ? 0.8 * words[i - first] : 0);
      if (Math.abs(wanted) < 0.7) {
        assertThat(spoken[i] - wanted).as("%s, frame %d", chosen, i).isBetween(-1e-5, 1e-5);
      }
    }
  }

  /** A cue track that knows of the change beforehand names the same frames. */
  @ParameterizedTest
  @MethodSource("cases")
  void theListOfATrackNamesTheFramesWorkedByHand(Case chosen) {
    CueTrack track = new CueTrack(schedule(chosen, controls(chosen)), RATE, NO_VOICE);
    long until = chosen.steps().get(chosen.steps().size() - 1).control().atNanos() + 20 * SECOND;
    List<Long> named =
        track.cues().stream()
            .filter(c -> c.atNanos() < until)
            .filter(c -> !CHANGES.contains(c.kind()))
            .map(CueTrack.Expected::frame)
            .sorted()
            .toList();
    List<Long> byHand =
        asked(chosen, until).stream().map(s -> Frames.at(s.nanos(), RATE)).sorted().toList();
    assertThat(named).hasSameSizeAs(byHand);
    for (int i = 0; i < named.size(); i++) {
      assertThat(Math.abs(named.get(i) - byHand.get(i)))
          .as("%s, %d", chosen, i)
          .isLessThanOrEqualTo(0);
    }
  }

  /** What is asked for in the end, by hand. */
  private static List<Sound> asked(Case chosen, long until) {
    List<Sound> asked = chosen.before().sounds(until);
    for (Step step : chosen.steps()) {
      asked = after(asked, step, until);
    }
    return asked;
  }

  /** What came before the command stays, what comes after is the new rhythm. */
  private static List<Sound> after(List<Sound> before, Step step, long until) {
    long at = step.control().atNanos();
    List<Sound> asked = new ArrayList<>(before);
    asked.removeIf(s -> s.nanos() >= at);
    step.then().sounds(until).stream().filter(s -> s.nanos() >= at).forEach(asked::add);
    return asked;
  }

  /** A run in which the commands come when more was mixed already, and what must be heard. */
  private static final class Live {
    final float[] samples;

    /** Frames of onsets, with the sum of the first samples that belong there. */
    final TreeMap<Long, Double> due = new TreeMap<>();

    /** What was heard, but for squeezes that a command took back at once; with its real frame. */
    final List<Heard> heard = new ArrayList<>();

    private final CueMixer mixer = new CueMixer(BANK, NO_VOICE);
    private int mixed;

    Live(Case chosen, long ahead) {
      Step last = chosen.steps().get(chosen.steps().size() - 1);
      long end = last.control().atNanos() + TAIL;
      samples = new float[(int) Frames.at(end, RATE)];
      List<Sound> asked = chosen.before().sounds(end);
      List<Control> so = new ArrayList<>();
      mixer.publish(schedule(chosen, so));
      for (Step step : chosen.steps()) {
        long from = mixed;
        mixTo(Frames.at(step.control().atNanos() + ahead, RATE));
        hear(asked, from, mixed);
        List<Sound> next = after(asked, step, end);
        hearLate(asked, next, step.control().atNanos());
        heard.removeIf(
            h ->
                h.kind() == Kind.SQUEEZE
                    && h.frame() >= Frames.at(step.control().atNanos(), RATE)
                    && next.stream().noneMatch(h::isAbout));
        asked = next;
        so.add(step.control());
        mixer.publish(schedule(chosen, so));
      }
      long from = mixed;
      mixTo(samples.length);
      hear(asked, from, mixed);
    }

    private void hear(List<Sound> asked, long from, long to) {
      for (Sound sound : asked) {
        long frame = Frames.at(sound.nanos(), RATE);
        if (frame >= from && frame < to) {
          put(sound, frame);
        }
      }
    }

    /** What should have begun by now does so at once, unless the same sound just began. */
    private void hearLate(List<Sound> before, List<Sound> now, long commandNanos) {
      for (Sound sound : now) {
        long lateFrames = mixed - Frames.at(sound.nanos(), RATE);
        // A tenth of a second is the most by which a cue is given late rather than dropped.
        boolean late = sound.nanos() >= commandNanos && lateFrames > 0 && lateFrames <= RATE / 10;
        boolean began =
            before.stream()
                .filter(b -> b.kind() == sound.kind() && b.nanos() >= commandNanos)
                .anyMatch(b -> Frames.at(b.nanos(), RATE) < mixed);
        if (late && !began) {
          put(sound, mixed);
        }
      }
    }

    private void put(Sound sound, long frame) {
      due.merge(frame, sound.kind().firstSample, Double::sum);
      heard.add(new Heard(sound.kind(), frame));
    }

    private void mixTo(long frame) {
      float[] block = new float[256];
      while (mixed < frame) {
        int count = (int) Math.min(block.length, frame - mixed);
        mixer.mix(block, count);
        System.arraycopy(block, 0, samples, mixed, count);
        mixed += count;
      }
    }
  }

  /**
   * A sound that was heard.
   *
   * @param kind what
   * @param frame where it started
   */
  record Heard(Kind kind, long frame) {
    /** Whether it stands for that sound, on time or a moment late. */
    boolean isAbout(Sound sound) {
      return sound.kind() == kind && Math.abs(Frames.at(sound.nanos(), RATE) - frame) < RATE / 20;
    }
  }

  private static long closest(Live live, Kind kind) {
    List<Long> frames =
        live.heard.stream().filter(h -> h.kind() == kind).map(Heard::frame).sorted().toList();
    long closest = Long.MAX_VALUE;
    for (int i = 1; i < frames.size(); i++) {
      closest = Math.min(closest, frames.get(i) - frames.get(i - 1));
    }
    return closest;
  }

  /** Every step from one sample to the next that no body of a sound can make. */
  private static Map<Long, Double> onsets(float[] samples) {
    Map<Long, Double> found = new TreeMap<>();
    float last = 0;
    for (int i = 0; i < samples.length; i++) {
      double step = Math.abs(samples[i] - last);
      if (step > BODY_STEP) {
        found.put((long) i, step);
      }
      last = samples[i];
    }
    return found;
  }

  private static float[] planned(Case chosen, List<Control> controls, long until) {
    return planned(chosen, controls, until, NO_VOICE);
  }

  private static float[] planned(
      Case chosen, List<Control> controls, long until, SoundLevels levels) {
    CueMixer mixer = new CueMixer(BANK, levels);
    mixer.publish(schedule(chosen, controls));
    float[] samples = new float[(int) Frames.at(until, RATE)];
    mixer.mix(samples, samples.length);
    return samples;
  }

  private static CueSchedule schedule(Case chosen, List<Control> controls) {
    return CueSchedule.of(new PracticePlan(chosen.start(), 0, 600 * SECOND, LEAD), controls);
  }

  private static List<Control> controls(Case chosen) {
    return chosen.steps().stream().map(Step::control).toList();
  }

  private static Case sixSeconds(Step... steps) {
    return new Case(ADULT, HandRhythm.everySixSeconds(0), List.of(steps));
  }

  private static Case cycles(Step... steps) {
    return new Case(ARREST, HandRhythm.cycles(0, 30), List.of(steps));
  }

  private static Step to(Guidance guidance, long at, Running then) {
    return new Step(Control.change(at, guidance), then);
  }

  private static Guidance adult(Situation situation) {
    return Plans.guidance("aha-2020", PatientGroup.ADULT, situation);
  }

  private static Guidance child(Situation situation) {
    return Plans.guidance("aha-2020", PatientGroup.CHILD, situation);
  }
}
