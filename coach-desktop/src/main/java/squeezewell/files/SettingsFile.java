package squeezewell.files;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import squeezewell.input.BadInputException;
import squeezewell.storage.WholeFile;
import squeezewell.words.Wording;

/**
 * Keeps {@link Settings} in a file, as docs/formats.md describes it. A file that this version can't
 * use locks nobody out: the defaults hold, and it is put aside, never written over. Used by one
 * thread.
 */
public final class SettingsFile {
  private static final Gson PRETTY =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().serializeNulls().create();

  private static final Wording WORDS = Wording.beside(SettingsFile.class);

  private final Path file;

  /** What was last read or written here; another copy of the program may have changed the file. */
  private Settings last;

  public SettingsFile(Path file) {
    this(file, Settings.defaults());
  }

  /**
   * A file that was read before.
   *
   * @param last what was read
   */
  public SettingsFile(Path file, Settings last) {
    this.file = file;
    this.last = last;
  }

  /**
   * Settings, and what a person must know about them.
   *
   * @param problem why the file can't be used; empty if it can
   */
  public record Loaded(Settings settings, String problem) {}

  /** Reads the settings; the defaults if there is no file that can be used. */
  public Loaded load() {
    try {
      last = Files.notExists(file) ? Settings.defaults() : SettingsReader.readFile(file);
      return new Loaded(last, "");
    } catch (BadInputException e) {
      last = Settings.defaults();
      return new Loaded(last, WORDS.say("settings-not-used", e.getMessage()));
    }
  }

  /** As {@link #load}, for whoever need not tell of a problem. */
  public Settings read() {
    return load().settings();
  }

  /**
   * Writes the settings that changed here since they were read; the others stay as the file has
   * them, and so do fields that this version does not know. The file is replaced as a whole, so
   * that a reader sees the old or the new one and never a part. One that can't be used is put aside
   * first.
   *
   * @throws IOException if it can't be written; the old file is left as it is
   */
  public void write(Settings settings) throws IOException {
    JsonObject top = new JsonObject();
    Settings merged = settings;
    if (!Files.notExists(file)) {
      try {
        merged = settings.changedFrom(last, SettingsReader.readFile(file));
        top = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
      } catch (BadInputException e) {
        WholeFile.putAside(file);
      }
    }
    put(top, merged);
    Files.createDirectories(file.toAbsolutePath().getParent());
    WholeFile.writeOwn(file, PRETTY.toJson(top) + "\n");
    last = settings;
  }

  private static void put(JsonObject top, Settings settings) {
    top.addProperty("format", SettingsReader.FORMAT);
    top.addProperty("version", SettingsReader.VERSION);
    top.addProperty("theme", settings.theme().word());
    top.addProperty("textSizePercent", settings.textSizePercent());
    JsonArray keys = new JsonArray();
    for (int keyCode : settings.pedalKeys()) {
      JsonObject key = new JsonObject();
      key.addProperty("keyCode", keyCode);
      keys.add(key);
    }
    top.add("pedalKeys", keys);
    top.addProperty("cautionSeenAt", settings.cautionSeenAt().map(Object::toString).orElse(""));
    JsonObject sounds = object(top, "sounds");
    for (Map.Entry<String, SoundLevel> entry : settings.soundLevels().entrySet()) {
      JsonObject level = object(sounds, entry.getKey());
      level.addProperty("volume", entry.getValue().volume());
      level.addProperty("muted", entry.getValue().muted());
    }
    top.addProperty("countStyle", settings.countStyle());
    JsonObject choice = object(top, "lastChoice");
    choice.addProperty("protocol", settings.lastChoice().protocolId());
    choice.addProperty("patient", settings.lastChoice().patient().id());
    choice.addProperty("situation", settings.lastChoice().situation().id());
    choice.addProperty("rescuers", settings.lastChoice().rescuers());
    choice.addProperty("minutes", settings.lastChoice().minutes());
    choice.addProperty("prompts", settings.lastChoice().prompting().word());
    top.addProperty("trainee", settings.trainee());
  }

  /** The object of that name, made if it is not there. */
  private static JsonObject object(JsonObject in, String name) {
    JsonElement there = in.get(name);
    if (there != null && there.isJsonObject()) {
      return there.getAsJsonObject();
    }
    JsonObject made = new JsonObject();
    in.add(name, made);
    return made;
  }
}
