package squeezewell.files;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
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
    merge(top, PRETTY.toJsonTree(tree(merged)).getAsJsonObject());
    Files.createDirectories(file.toAbsolutePath().getParent());
    WholeFile.writeOwn(file, PRETTY.toJson(top) + "\n");
    last = settings;
  }

  private static Map<String, Object> tree(Settings settings) {
    Map<String, Object> choice = new LinkedHashMap<>();
    choice.put("protocol", settings.lastChoice().protocolId());
    choice.put("patient", settings.lastChoice().patient().id());
    choice.put("situation", settings.lastChoice().situation().id());
    choice.put("rescuers", settings.lastChoice().rescuers());
    choice.put("minutes", settings.lastChoice().minutes());
    choice.put("prompts", settings.lastChoice().prompting().word());
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("format", SettingsReader.FORMAT);
    tree.put("version", SettingsReader.VERSION);
    tree.put("theme", settings.theme().word());
    tree.put("textSizePercent", settings.textSizePercent());
    tree.put(
        "pedalKeys", settings.pedalKeys().stream().map(code -> Map.of("keyCode", code)).toList());
    tree.put("cautionSeenAt", settings.cautionSeenAt().map(Object::toString).orElse(""));
    tree.put("sounds", settings.soundLevels());
    tree.put("countStyle", settings.countStyle());
    tree.put("lastChoice", choice);
    tree.put("trainee", settings.trainee());
    return tree;
  }

  /** Puts each field in, and into the objects that are there. */
  private static void merge(JsonObject into, JsonObject from) {
    from.entrySet()
        .forEach(
            field -> {
              JsonElement there = into.get(field.getKey());
              if (there instanceof JsonObject old && field.getValue() instanceof JsonObject fresh) {
                merge(old, fresh);
              } else {
                into.add(field.getKey(), field.getValue());
              }
            });
  }
}
