package squeezewell.live;

import java.util.function.Consumer;
import squeezewell.coach.CueOutput;
import squeezewell.cue.CueSchedule;
import squeezewell.files.Settings;
import squeezewell.session.MonotonicClock;

public final class PracticeSound implements CueOutput, AutoCloseable {
  public PracticeSound(MonotonicClock clock, Settings settings) {}

  public static long leadNanos() {
    return 50_000_000L;
  }

  public static void preview(String kind, Settings settings) {}

  @Override
  public void scheduleChanged(CueSchedule schedule) {}

  public void onLost(Consumer<Boolean> lost) {}

  public void apply(Settings settings) {}

  public String notice() {
    return "";
  }

  public void toggleMute() {}

  public void closeAfterRinging() {}

  @Override
  public void close() {}
}
