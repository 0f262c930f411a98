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

/**
 * Keeps {@link Settings} in a file, as docs/formats.md describes it. A file that this version can't
 * read is never written over.
 */
public final class SettingsFile {
  static final String FORMAT = "squeezewell-settings";
  static final int VERSION = 1;

  private static final Gson PRETTY =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().serializeNulls().create();

  private final Path file;

  public SettingsFile(Path file) {
    this.file = file;
  }

  /**
   * Reads the settings; the defaults if there is no file yet, or for a field that is not there.
   *
   * @throws BadInputException if the file is not one that this version can use
   */
  public Settings read() throws BadInputException {
    return Files.exists(file) ? SettingsReader.readFile(file) : Settings.defaults();
  }

  /**
   * Writes the settings. The file is replaced as a whole, so that a reader sees the old or the new
   * one and never a part. Fields that this version does not know stay as they are.
   *
   * @throws BadInputException if the file that is there is not one that this version can use; it is
   *     left as it is
   * @throws IOException if it can't be written; the old file is left as it is
   */
  public void write(Settings settings) throws BadInputException, IOException {
    JsonObject top = new JsonObject();
    if (Files.exists(file)) {
      SettingsReader.readFile(file);
      top = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
    }
    put(top, settings);
    Files.createDirectories(file.toAbsolutePath().getParent());
    WholeFile.write(file, PRETTY.toJson(top) + "\n", true);
  }

  private static void put(JsonObject top, Settings settings) {
    top.addProperty("format", FORMAT);
    top.addProperty("version", VERSION);
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
