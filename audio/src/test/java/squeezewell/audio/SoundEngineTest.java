package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;
import squeezewell.session.ManualClock;

/** The live engine on a device in the test's own time. The bounds are our own choice. */
class SoundEngineTest {
  private static final long MILLI = 1_000_000L;

  /** From the instant of a cue to its leaving the fake device, whose steps are 10 ms. */
  private static final double STEP_MILLIS = 10;

  private final ManualClock clock = new ManualClock();
  private final List<SoundStatus> told = new ArrayList<>();
  private final PracticePlan plan =
      Plans.adult(
          "aha-2020",
          Situation.PULSE_NO_BREATHING,
          3 * Plans.SECOND,
          7_200 * Plans.SECOND,
          SoundOutput.LEAD_NANOS);
  private final CueSchedule schedule = CueSchedule.of(plan);
  private final SoundLevels levels = SoundLevels.defaults().withMuted(SoundKind.VOICE, true);
  private FakeDevice device = new FakeDevice(clock, 0);
  private SoundEngine engine;

  @Test
  void onADeviceThatKeepsTimeEveryIntervalIsExact() {
    start(device);
    runTo(60_000);
    List<Long> frames = device.onsetFrames();
    assertThat(frames).hasSizeGreaterThan(55);
    for (int i = 1; i < frames.size(); i++) {
      assertThat(frames.get(i) - frames.get(i - 1)).isEqualTo(FakeDevice.RATE);
    }
    assertThat(engine.feed().corrections()).isZero();
    assertThat(engine.feed().holes()).isZero();
    assertThat(worstMillis(0)).isLessThan(STEP_MILLIS);
  }

  @ParameterizedTest
  @ValueSource(doubles = {200, -200, 50, -50})
  void onADriftingDeviceTheErrorStaysBounded(double partsPerMillion) {
    device = new FakeDevice(clock, partsPerMillion);
    start(device);
    runTo(120_000);
    double[] errors = errorsMillis(0);
    assertThat(errors.length).as("each cue once").isBetween(117, 120);
    double spread =
        Arrays.stream(errors).max().getAsDouble() - Arrays.stream(errors).min().getAsDouble();
    // Left alone, 200 ppm would make 24 ms in two minutes.
    assertThat(spread).isLessThan(3.5);
    assertThat(engine.feed().corrections()).isPositive();
    assertThat(engine.feed().holes()).isZero();
  }

  @Test
  void afterRunningDryTheRhythmIsRejoined() {
    start(device);
    runTo(10_150);
    clock.moveTo(clock.nanos() + 300 * MILLI);
    runTo(30_000);
    assertThat(engine.feed().holes()).isEqualTo(1);
    double[] after = Arrays.stream(device.onsetMillis()).filter(m -> m > 10_990).toArray();
    assertThat(after).hasSize(19);
    assertThat(worstMillis(10_990)).isLessThan(2 * STEP_MILLIS);
    assertThat(last()).isEqualTo(SoundStatus.State.PLAYING);
  }

  @Test
  void aHiccupOfTheDeviceItselfIsMadeUpForWithinTwoSeconds() {
    start(device);
    runTo(10_150);
    double before = worstMillis(0);
    device.hiccup(FakeDevice.RATE / 50);
    runTo(30_000);
    assertThat(Arrays.stream(device.onsetMillis()).filter(m -> m > 10_500)).hasSize(19);
    assertThat(worstMillis(11_990)).isLessThan(before + 1.6);
  }

  @Test
  void aSleepOfAnHourGivesNoBurst() {
    start(device);
    runTo(10_150);
    clock.moveTo(clock.nanos() + 3_600 * Plans.SECOND);
    runTo(3_613_000);
    double[] after = Arrays.stream(device.onsetMillis()).filter(m -> m > 10_500).toArray();
    assertThat(after).hasSizeBetween(2, 3);
    assertThat(worstMillis(3_610_990)).isLessThan(2 * STEP_MILLIS);
  }

  @Test
  void aStalledDeviceIsLostAndComesBackInRhythm() {
    start(device);
    runTo(10_150);
    device.stalled(true);
    device.present(false);
    runTo(14_000);
    assertThat(last()).isEqualTo(SoundStatus.State.LOST);
    assertThat(told.get(told.size() - 1).text()).contains("screen goes on");
    device.stalled(false);
    device.present(true);
    runTo(30_000);
    assertThat(states())
        .containsExactly(
            SoundStatus.State.STARTING,
            SoundStatus.State.PLAYING,
            SoundStatus.State.LOST,
            SoundStatus.State.PLAYING);
    assertThat(worstMillis(17_500)).isLessThan(STEP_MILLIS);
  }

  @Test
  void aDeviceThatTakesNoMoreIsLostAtOnce() {
    start(device);
    runTo(10_150);
    device.present(false);
    runTo(10_200);
    assertThat(last()).isEqualTo(SoundStatus.State.LOST);
  }

  @Test
  void withoutADeviceItSaysSoAndKeepsTrying() {
    device.present(false);
    start(device);
    runTo(5_000);
    assertThat(last()).isEqualTo(SoundStatus.State.UNAVAILABLE);
    device.present(true);
    runTo(20_000);
    assertThat(last()).isEqualTo(SoundStatus.State.PLAYING);
    assertThat(device.onsetMillis().length).isGreaterThan(10);
    assertThat(worstMillis(0)).isLessThan(STEP_MILLIS);
  }

  @Test
  void aDeviceThatNeverBeginsToPlayIsUnavailable() {
    device.stalled(true);
    start(device);
    runTo(20_000);
    assertThat(states()).containsExactly(SoundStatus.State.STARTING, SoundStatus.State.UNAVAILABLE);
  }

  @Test
  void aMachineThatCannotKeepUpGetsALargerBuffer() {
    start(device);
    runTo(5_000);
    for (int i = 0; i < 5; i++) {
      clock.moveTo(clock.nanos() + 60 * MILLI);
      runTo(clock.nanos() / MILLI + 500);
    }
    assertThat(device.askedBufferNanos()).isEqualTo(2 * SoundEngine.LEAST_BUFFER_NANOS);
    runTo(20_000);
    assertThat(last()).isEqualTo(SoundStatus.State.PLAYING);
    assertThat(worstMillis(12_000)).isLessThan(STEP_MILLIS);
  }

  /** The lead covers what is already written when the command comes, at any moment. */
  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9})
  void withItsLeadTheFirstSqueezeAfterACommandIsOnTime(long phaseMillis) {
    start(device);
    runTo(10_150);
    CueSchedule held = schedule.with(new Control(clock.nanos(), Control.Kind.PAUSE));
    engine.publish(held);
    runTo(15_300 + phaseMillis);
    long commanded = clock.nanos();
    engine.publish(held.with(new Control(commanded, Control.Kind.RESUME)));
    runTo(15_700);
    double usual = errorsMillis(0)[0];
    double[] onsets = device.onsetMillis();
    double error = onsets[onsets.length - 1] - (commanded + SoundOutput.LEAD_NANOS) / 1e6 - usual;
    assertThat(Math.abs(error)).isLessThan(0.1);
  }

  private void start(SoundDevice on) {
    engine = new SoundEngine(on, clock, levels, told::add);
    engine.publish(schedule);
  }

  private void runTo(long millis) {
    while (clock.nanos() < millis * MILLI) {
      long wait = engine.step();
      clock.moveTo(Math.min(clock.nanos() + Math.max(1, wait), millis * MILLI));
    }
  }

  /** Cues of this schedule lie on whole seconds. */
  private double[] errorsMillis(double fromMillis) {
    return Arrays.stream(device.onsetMillis())
        .filter(m -> m >= fromMillis)
        .map(m -> m - 1_000 * Math.rint(m / 1_000))
        .toArray();
  }

  private double worstMillis(double fromMillis) {
    return Arrays.stream(errorsMillis(fromMillis)).map(Math::abs).max().orElseThrow();
  }

  private SoundStatus.State last() {
    return told.get(told.size() - 1).state();
  }

  private List<SoundStatus.State> states() {
    return told.stream().map(SoundStatus::state).collect(Collectors.toList());
  }
}
