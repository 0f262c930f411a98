package squeezewell.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** Reads settings, format version 1. A field that is not there has its default. */
final class SettingsReader {
  static final String FORMAT = "squeezewell-settings";
  static final int VERSION = 1;

  private static final long LARGEST_FILE = 1_000_000;

  private SettingsReader() {}

  static Settings readFile(Path file) throws BadInputException {
    return read(Json.readFile(file, LARGEST_FILE));
  }

  static Settings read(JsonValue top) throws BadInputException {
    top.choice("format", List.of(FORMAT), f -> f);
    long version = top.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          top.source(),
          "version",
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
    Settings defaults = Settings.defaults();
    return new Settings(
        top.has("theme")
            ? top.choice("theme", List.of(Theme.values()), Theme::word)
            : defaults.theme(),
        top.has("textSizePercent") ? textSize(top) : defaults.textSizePercent(),
        top.has("pedalKeys") ? pedalKeys(top) : defaults.pedalKeys(),
        isGiven(top, "cautionSeenAt") ? Optional.of(instant(top)) : defaults.cautionSeenAt(),
        top.has("sounds") ? sounds(top.field("sounds", "an object")) : defaults.soundLevels(),
        top.has("countStyle")
            ? top.choice("countStyle", Settings.COUNT_STYLES, s -> s)
            : defaults.countStyle(),
        top.has("lastChoice")
            ? choice(top.field("lastChoice", "an object"))
            : defaults.lastChoice(),
        isGiven(top, "trainee") ? Settings.nameOf(top.text("trainee", Settings.LONGEST_NAME)) : "",
        top.has("comfort") ? comfort(top.field("comfort", "an object")) : defaults.comfort(),
        top.has("window") ? window(top.field("window", "an object")) : defaults.window());
  }

  private static Comfort comfort(JsonValue comfort) throws BadInputException {
    Comfort usual = Comfort.USUAL;
    return new Comfort(
        comfort.flagOr("reducedMotion", usual.reducedMotion()),
        comfort.flagOr("leftHanded", usual.leftHanded()),
        comfort.flagOr("touchSqueezes", usual.touchSqueezes()));
  }

  private static Optional<WindowPlace> window(JsonValue window) throws BadInputException {
    int most = WindowPlace.MOST;
    return Optional.of(
        new WindowPlace(
            (int) window.integer("x", -most, most),
            (int) window.integer("y", -most, most),
            (int) window.integer("width", WindowPlace.LEAST, most),
            (int) window.integer("height", WindowPlace.LEAST, most)));
  }

  private static int textSize(JsonValue top) throws BadInputException {
    int percent = (int) top.integer("textSizePercent", 1, 1_000);
    if (!Settings.TEXT_SIZES_PERCENT.contains(percent)) {
      throw top.field("textSizePercent", "").wrong("one of 100, 125, 150, 175, 200");
    }
    return percent;
  }

  private static List<Integer> pedalKeys(JsonValue top) throws BadInputException {
    List<Integer> keys = new ArrayList<>();
    String allowed = "a list of at most " + Settings.MOST_PEDAL_KEYS + " keys";
    List<JsonValue> entries = top.list("pedalKeys", 0, allowed);
    if (entries.size() > Settings.MOST_PEDAL_KEYS) {
      throw top.field("pedalKeys", allowed).wrong(allowed);
    }
    for (JsonValue entry : entries) {
      int keyCode = (int) entry.integer("keyCode", 1, Settings.LARGEST_KEY_CODE);
      if (keys.contains(keyCode)) {
        throw entry.field("keyCode", "").wrong("each key code once");
      }
      keys.add(keyCode);
    }
    return keys;
  }

  private static Map<String, SoundLevel> sounds(JsonValue sounds) throws BadInputException {
    Map<String, SoundLevel> levels = new LinkedHashMap<>();
    for (String kind : Settings.SOUND_KINDS) {
      if (sounds.has(kind)) {
        JsonValue level = sounds.field(kind, "an object with volume and muted");
        BigDecimal volume = level.number("volume", BigDecimal.ZERO, BigDecimal.ONE, "");
        levels.put(kind, new SoundLevel(volume.doubleValue(), level.flagOr("muted", false)));
      }
    }
    return levels;
  }

  private static LastChoice choice(JsonValue choice) throws BadInputException {
    String id = choice.text("protocol", 40);
    if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw choice.field("protocol", "").wrong("lower-case letters, digits and single hyphens");
    }
    return new LastChoice(
        id,
        choice.choice("patient", List.of(PatientGroup.values()), PatientGroup::id),
        choice.choice("situation", List.of(Situation.values()), Situation::id),
        choice.has("rescuers") ? (int) choice.integer("rescuers", 0, LastChoice.MOST_RESCUERS) : 0,
        (int) choice.integer("minutes", 1, LastChoice.LONGEST_MINUTES),
        choice.has("prompts")
            ? choice.choice("prompts", List.of(Prompting.values()), Prompting::word)
            : Prompting.THROUGHOUT);
  }

  private static boolean isGiven(JsonValue top, String name) throws BadInputException {
    return top.has(name) && !top.field(name, "a text").isText("");
  }

  private static Instant instant(JsonValue top) throws BadInputException {
    String text = top.text("cautionSeenAt", 40);
    try {
      return Instant.parse(text);
    } catch (DateTimeParseException e) {
      throw top.field("cautionSeenAt", "")
          .wrong("a time such as 2026-01-31T12:00:00Z, or an empty text");
    }
  }
}
