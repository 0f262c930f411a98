package squeezewell.files;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/**
 * How a person wants the program to be. Immutable.
 *
 * @param theme which colours
 * @param textSizePercent one of {@link #TEXT_SIZES_PERCENT}
 * @param pedalKeys key codes that count as a squeeze besides the usual keys, at most {@value
 *     #MOST_PEDAL_KEYS}, none twice
 * @param cautionSeenAt when the caution was read; empty if it has not been
 * @param soundLevels how loud each of {@link #SOUND_KINDS} is; one that is left out has its usual
 *     level
 * @param countStyle one of {@link #COUNT_STYLES}
 * @param lastChoice what was practised last
 * @param trainee who practises, as {@link #nameOf} makes it; empty if not said
 * @param comfort what suits a person's eyes and hands
 * @param window where the window stood last; empty if it never did
 */
public record Settings(
    Theme theme,
    int textSizePercent,
    List<Integer> pedalKeys,
    Optional<Instant> cautionSeenAt,
    Map<String, SoundLevel> soundLevels,
    String countStyle,
    LastChoice lastChoice,
    String trainee,
    Comfort comfort,
    Optional<WindowPlace> window) {
  public static final List<Integer> TEXT_SIZES_PERCENT = List.of(100, 125, 150, 175, 200);
  public static final List<String> SOUND_KINDS =
      List.of(
          "squeeze", "release", "count", "compression", "reminder", "voice", "examiner", "done");

  /** Counts are soft, so that the squeeze stands out (our own choice). */
  private static final Map<String, Double> USUAL_VOLUMES =
      Map.of(
          "squeeze", 0.8,
          "release", 0.6,
          "count", 0.72,
          "compression", 0.6,
          "reminder", 0.6,
          "voice", 0.8,
          "examiner", 0.8,
          "done", 0.7);

  public static final List<String> COUNT_STYLES = List.of("sound", "spoken", "silent");
  public static final int MOST_PEDAL_KEYS = 8;

  /** The largest key code of a keyboard event, ordinary or extended. */
  public static final int LARGEST_KEY_CODE = 0x1FFFFFF;

  /** The longest name of a trainee, in characters. */
  public static final int LONGEST_NAME = 200;

  public Settings {
    require(TEXT_SIZES_PERCENT.contains(textSizePercent), "textSizePercent", textSizePercent);
    require(COUNT_STYLES.contains(countStyle), "countStyle", countStyle);
    require(trainee.equals(nameOf(trainee)), "trainee", trainee);
    pedalKeys = List.copyOf(pedalKeys);
    boolean keysFit =
        pedalKeys.size() <= MOST_PEDAL_KEYS
            && pedalKeys.stream().distinct().count() == pedalKeys.size()
            && pedalKeys.stream().allMatch(k -> k >= 1 && k <= LARGEST_KEY_CODE);
    require(keysFit, "pedalKeys", pedalKeys);
    require(SOUND_KINDS.containsAll(soundLevels.keySet()), "soundLevels", soundLevels.keySet());
    Map<String, SoundLevel> levels = new LinkedHashMap<>();
    for (String kind : SOUND_KINDS) {
      SoundLevel usual = new SoundLevel(USUAL_VOLUMES.get(kind), false);
      levels.put(kind, soundLevels.getOrDefault(kind, usual));
    }
    soundLevels = Collections.unmodifiableMap(levels);
  }

  /** What holds until a person chooses. */
  public static Settings defaults() {
    return new Settings(
        Theme.LIGHT,
        100,
        List.of(),
        Optional.empty(),
        Map.of(),
        "sound",
        new LastChoice("aha-2025", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0, 5),
        "",
        Comfort.USUAL,
        Optional.empty());
  }

  /** Some settings with one of them changed. */
  private static final class Draft {
    private Theme theme;
    private int textSizePercent;
    private List<Integer> pedalKeys;
    private Optional<Instant> cautionSeenAt;
    private Map<String, SoundLevel> soundLevels;
    private String countStyle;
    private LastChoice lastChoice;
    private String trainee;
    private Comfort comfort;
    private Optional<WindowPlace> window;
  }

  private Settings with(Consumer<Draft> change) {
    Draft draft = new Draft();
    draft.theme = theme;
    draft.textSizePercent = textSizePercent;
    draft.pedalKeys = pedalKeys;
    draft.cautionSeenAt = cautionSeenAt;
    draft.soundLevels = soundLevels;
    draft.countStyle = countStyle;
    draft.lastChoice = lastChoice;
    draft.trainee = trainee;
    draft.comfort = comfort;
    draft.window = window;
    change.accept(draft);
    return new Settings(
        draft.theme,
        draft.textSizePercent,
        draft.pedalKeys,
        draft.cautionSeenAt,
        draft.soundLevels,
        draft.countStyle,
        draft.lastChoice,
        draft.trainee,
        draft.comfort,
        draft.window);
  }

  public Settings withTheme(Theme chosen) {
    return with(draft -> draft.theme = chosen);
  }

  public Settings withTextSizePercent(int percent) {
    return with(draft -> draft.textSizePercent = percent);
  }

  public Settings withPedalKeys(List<Integer> keyCodes) {
    return with(draft -> draft.pedalKeys = keyCodes);
  }

  public Settings withCautionSeenAt(Instant seenAt) {
    return with(draft -> draft.cautionSeenAt = Optional.of(seenAt));
  }

  /** These settings with another level for one of {@link #SOUND_KINDS}. */
  public Settings withSoundLevel(String kind, SoundLevel level) {
    Map<String, SoundLevel> levels = new LinkedHashMap<>(soundLevels);
    levels.put(kind, level);
    return with(draft -> draft.soundLevels = levels);
  }

  public Settings withCountStyle(String style) {
    return with(draft -> draft.countStyle = style);
  }

  public Settings withLastChoice(LastChoice choice) {
    return with(draft -> draft.lastChoice = choice);
  }

  public Settings withTrainee(String name) {
    return with(draft -> draft.trainee = name);
  }

  public Settings withComfort(Comfort chosen) {
    return with(draft -> draft.comfort = chosen);
  }

  public Settings withWindow(WindowPlace place) {
    return with(draft -> draft.window = Optional.of(place));
  }

  /**
   * What is kept of a name that was typed or pasted: control characters become spaces, since a file
   * with them would not be read again, and what is too long is cut off.
   */
  public static String nameOf(String typed) {
    StringBuilder name = new StringBuilder();
    typed
        .codePoints()
        .map(
            c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? ' ' : c)
        .takeWhile(c -> name.length() + Character.charCount(c) <= LONGEST_NAME)
        .forEachOrdered(name::appendCodePoint);
    return name.toString().trim();
  }

  /**
   * What another copy of the program has, with what was changed here.
   *
   * @param before what these settings were made from
   * @param there what the other has now
   */
  Settings changedFrom(Settings before, Settings there) {
    return new Settings(
        changed(theme, before.theme, there.theme),
        changed(textSizePercent, before.textSizePercent, there.textSizePercent),
        changed(pedalKeys, before.pedalKeys, there.pedalKeys),
        changed(cautionSeenAt, before.cautionSeenAt, there.cautionSeenAt),
        changed(soundLevels, before.soundLevels, there.soundLevels),
        changed(countStyle, before.countStyle, there.countStyle),
        changed(lastChoice, before.lastChoice, there.lastChoice),
        changed(trainee, before.trainee, there.trainee),
        changed(comfort, before.comfort, there.comfort),
        changed(window, before.window, there.window));
  }

  private static <T> T changed(T here, T before, T there) {
    return here.equals(before) ? there : here;
  }

  private static void require(boolean fits, String name, Object value) {
    if (!fits) {
      throw new IllegalArgumentException(name + " can't be " + value);
    }
  }
}
