package squeezewell.desktop.screens.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Consumer;
import squeezewell.coach.Coach;
import squeezewell.coach.CoachState;
import squeezewell.coach.Command;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.gallery.Scene;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.screens.Practices;
import squeezewell.desktop.screens.SoundLine;
import squeezewell.files.Comfort;
import squeezewell.live.Steered;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

/** Practices that stand still at an instant worth looking at. */
public final class LiveScenes {
  private static final double SECOND = 1e9;
  private static final Protocol EDITION = Practices.protocol("aha-2025");

  private LiveScenes() {}

  /** A practice at an instant, and what is given to it. */
  static final class Still implements Steered {
    private final Coach coach;
    private long now;
    final List<Object> posted = new ArrayList<>();

    Still(PracticePlan plan) {
      coach = new Coach(plan, Journal.none(), List.of());
    }

    Still until(double seconds) {
      long until = Math.round(seconds * SECOND);
      OptionalLong due = coach.nextDueNanos();
      while (due.isPresent() && due.getAsLong() <= until) {
        coach.advance(due.getAsLong());
        due = coach.nextDueNanos();
      }
      now = until;
      coach.advance(until);
      return this;
    }

    Still at(double seconds, Command command) {
      until(seconds);
      coach.command(command, now);
      return this;
    }

    Still at(double seconds, PatientChange change) {
      until(seconds);
      coach.find(change, now);
      return this;
    }

    /** Breaths of a length at those seconds. */
    Still breaths(double length, double... starts) {
      for (double start : starts) {
        at(start, Command.SQUEEZE).at(start + length, Command.SQUEEZE_END);
      }
      return this;
    }

    @Override
    public CoachState state() {
      return coach.state();
    }

    @Override
    public long nowNanos() {
      return now;
    }

    @Override
    public void post(Command command, long nanoTime) {
      posted.add(command);
    }

    @Override
    public void post(PatientChange finding, long nanoTime) {
      posted.add(finding);
    }

    @Override
    public void post(CheckAnswer answer, long nanoTime) {
      posted.add(answer);
    }
  }

  private static PracticePlan plan(PatientGroup patient, Situation situation, int minutes) {
    return Practices.plan(EDITION, patient, situation, 0, minutes);
  }

  static Still adult() {
    return new Still(plan(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 5));
  }

  private static double[] every(double interval, double from, double to) {
    List<Double> starts = new ArrayList<>();
    for (double at = from; at < to; at += interval) {
      starts.add(at);
    }
    return starts.stream().mapToDouble(v -> v).toArray();
  }

  /** Compressions at 110 a minute and two breaths, over and over. */
  private static Still cycles(double until) {
    Still still = new Still(plan(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 5));
    double at = 0;
    while (at < until) {
      for (int i = 0; i < 30 && at < until; i++, at += 60 / 110.0) {
        still.at(at, Command.COMPRESS);
      }
      for (int i = 0; i < 2 && at < until; i++, at += 1.9) {
        still.breaths(1, at + 0.4);
      }
    }
    return still.until(until);
  }

  /** A practice for each scene. */
  static Map<String, Still> all() {
    Map<String, Still> scenes = new LinkedHashMap<>();
    scenes.put(
        "squeeze", adult().breaths(1, every(6, 0.1, 30)).at(30.05, Command.SQUEEZE).until(30.65));
    scenes.put("release-late", adult().breaths(1, 0.1, 6.1, 12.1, 18.2, 25.5).until(27.2));
    scenes.put("release-early", adult().breaths(1, 0.1, 6.1, 12.1, 18.2, 22.4).until(25.2));
    scenes.put(
        "check", adult().breaths(1, every(6, 0.1, 30)).at(31.5, Command.PULSE_CHECK).until(38.2));
    scenes.put(
        "decide", adult().breaths(1, every(6, 0.1, 30)).at(31.5, Command.PULSE_CHECK).until(43.2));
    scenes.put("missing", adult().breaths(1, 0.1, 6.1, 12.1).until(25.4));
    scenes.put("compress", cycles(30));
    scenes.put("cycle-breath", cycles(17.6));
    scenes.put(
        "suction", adult().breaths(1, every(6, 0.1, 30)).at(31.5, Command.SUCTION).until(38.8));
    scenes.put("suction-over", adult().breaths(1, 0.1).at(2, Command.SUCTION).until(19.8));
    scenes.put("cpr-suction", cycles(20).at(20.1, Command.SUCTION).until(24));
    scenes.put(
        "test",
        new Still(plan(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2).with(Prompting.NONE))
            .breaths(1, every(6, 0.4, 40))
            .until(42));
    scenes.put(
        "fading",
        new Still(
                plan(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 5)
                    .with(Prompting.FADING)
                    .withStartLevel(3))
            .breaths(1, every(6, 0.1, 40))
            .until(41));
    scenes.put(
        "newborn",
        new Still(plan(PatientGroup.NEWBORN, Situation.NEWBORN_VENTILATION, 2))
            .breaths(0.5, every(1.3, 0.1, 20))
            .until(20.4));
    scenes.put(
        "child-check",
        new Still(plan(PatientGroup.CHILD, Situation.PULSE_NO_BREATHING, 5))
            .breaths(1, every(2.5, 0.1, 10))
            .at(11.5, Command.PULSE_CHECK)
            .until(15.2));
    scenes.put("rhythm-check", cycles(20).at(20.1, Command.PULSE_CHECK).until(24.5));
    scenes.put("paused", adult().breaths(1, every(6, 0.1, 30)).at(31.5, Command.PAUSE).until(38.8));
    scenes.put(
        "changed",
        adult().breaths(1, every(6, 0.1, 30)).at(31.5, PatientChange.NO_CHEST_RISE).until(34.5));
    scenes.put(
        "watch",
        adult().breaths(1, every(6, 0.1, 30)).at(31.5, PatientChange.BREATHING_BACK).until(48.5));
    scenes.put(
        "airway",
        new Still(plan(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY, 5))
            .breaths(1, every(6, 0.1, 30))
            .until(32));
    scenes.put(
        "count-in",
        new Still(Practices.plan(EDITION, PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 3, 5))
            .until(1.2));
    return scenes;
  }

  /** All of them, and what opens over them, for the gallery. */
  public static List<Scene> scenes() {
    List<Scene> scenes = new ArrayList<>();
    for (String name : all().keySet()) {
      scenes.add(scene("live-" + name, name, "", LiveScreen::frame));
    }
    scenes.add(scene("live-changes", "release-late", "", LiveScreen::toggleChanges));
    scenes.add(scene("live-changes-cpr", "compress", "", LiveScreen::toggleChanges));
    scenes.add(scene("live-more", "release-late", "", LiveScreen::toggleMore));
    scenes.add(scene("live-no-sound", "release-late", "No sound. Follow the screen.", s -> {}));
    return scenes;
  }

  private static Scene scene(String name, String state, String notice, Consumer<LiveScreen> does) {
    return new Scene(
        name,
        look -> screen(look, all().get(state), notice),
        built -> {
          LiveScreen screen = (LiveScreen) built;
          screen.frame();
          does.accept(screen);
          screen.frame();
        });
  }

  /** The screen of a practice. */
  static LiveScreen screen(Look look, Steered practice, String notice) {
    return new LiveScreen(
        look,
        practice,
        EDITION,
        keys(),
        new SoundLine(() -> notice, () -> false, () -> {}),
        Comfort.USUAL,
        () -> {});
  }

  private static PracticeKeys keys() {
    PracticeKeys.Listener nobody =
        (PracticeKeys.Listener)
            java.lang.reflect.Proxy.newProxyInstance(
                PracticeKeys.class.getClassLoader(),
                new Class<?>[] {PracticeKeys.Listener.class},
                (proxy, method, words) -> null);
    return new PracticeKeys(new EventTime(), List.of(), true, nobody);
  }
}
