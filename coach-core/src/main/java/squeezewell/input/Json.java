package squeezewell.input;

import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.MalformedJsonException;
import java.io.EOFException;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads JSON strictly into {@link JsonValue}s that know their own place: duplicate keys, comments,
 * numbers such as NaN, deep nesting and trailing text are errors.
 */
public final class Json {
  /** No file of ours nests deeper than six levels. */
  private static final int DEEPEST = 24;

  private static final Pattern LOCATION = Pattern.compile(" at line (\\d+) column (\\d+)");

  private Json() {}

  /**
   * Reads a whole file.
   *
   * @param file the file, not null
   * @param largestBytes size above which the file is refused unread
   * @throws BadInputException if the file can't be read or is not well-formed
   */
  public static JsonValue readFile(Path file, long largestBytes) throws BadInputException {
    String source = file.toString();
    try {
      InputFile.require(file, largestBytes);
      try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
        return read(source, reader, true);
      }
    } catch (CharacterCodingException e) {
      throw BadInputException.fault(source, "", "the text is not UTF-8");
    } catch (IOException e) {
      throw BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")");
    }
  }

  /** Reads a text; {@code source} names it in messages. */
  public static JsonValue readText(String source, String text) throws BadInputException {
    try {
      return read(source, new StringReader(text), text.indexOf('\n') >= 0);
    } catch (IOException e) {
      throw BadInputException.fault(source, "", e.getMessage());
    }
  }

  /** A text of one line is most often a line of a file, whose number the source names already. */
  private static JsonValue read(String source, Reader reader, boolean hasLines)
      throws IOException, BadInputException {
    JsonReader json = new JsonReader(reader);
    json.setStrictness(Strictness.STRICT);
    json.setNestingLimit(DEEPEST);
    try {
      JsonValue value = value(source, JsonPlace.TOP, json);
      if (json.peek() != JsonToken.END_DOCUMENT) {
        throw BadInputException.fault(source, "", "text after the end of the JSON value");
      }
      return value;
    } catch (CharacterCodingException e) {
      throw e;
    } catch (MalformedJsonException | EOFException e) {
      throw malformed(source, e, hasLines);
    } catch (IllegalStateException | NumberFormatException e) {
      throw malformed(source, e, hasLines);
    }
  }

  /** The parser's own words are for programmers, and its path may hold anything. */
  private static BadInputException malformed(String source, Exception e, boolean hasLines) {
    String text = String.valueOf(e.getMessage());
    Matcher location = LOCATION.matcher(text);
    String where =
        location.find()
            ? (hasLines ? " at line " + location.group(1) : " at") + " column " + location.group(2)
            : "";
    String what =
        text.startsWith("Nesting limit")
            ? "nested more deeply than " + DEEPEST + " levels"
            : "not well-formed JSON";
    return BadInputException.fault(
        source,
        "",
        what + where + "; allowed: one JSON value, at most " + DEEPEST + " levels deep");
  }

  private static JsonValue value(String source, JsonPlace place, JsonReader json)
      throws IOException, BadInputException {
    switch (json.peek()) {
      case BEGIN_OBJECT:
        return new JsonValue(source, place, members(source, place, json));
      case BEGIN_ARRAY:
        return new JsonValue(source, place, elements(source, place, json));
      case STRING:
        return new JsonValue(source, place, json.nextString());
      case NUMBER:
        return new JsonValue(source, place, number(source, place, json.nextString()));
      case BOOLEAN:
        return new JsonValue(source, place, json.nextBoolean());
      case NULL:
        json.nextNull();
        return new JsonValue(source, place, null);
      default:
        throw BadInputException.fault(source, place.path(), "the text ends too early");
    }
  }

  private static Map<String, JsonValue> members(String source, JsonPlace place, JsonReader json)
      throws IOException, BadInputException {
    Map<String, JsonValue> members = new LinkedHashMap<>();
    json.beginObject();
    while (json.hasNext()) {
      String name = json.nextName();
      JsonPlace member = place.member(name);
      if (members.put(name, value(source, member, json)) != null) {
        throw BadInputException.fault(
            source, member.path(), "the field stands there twice; allowed: once");
      }
    }
    json.endObject();
    return members;
  }

  private static List<JsonValue> elements(String source, JsonPlace place, JsonReader json)
      throws IOException, BadInputException {
    List<JsonValue> elements = new ArrayList<>();
    json.beginArray();
    while (json.hasNext()) {
      elements.add(value(source, place.element(elements.size()), json));
    }
    json.endArray();
    return elements;
  }

  private static BigDecimal number(String source, JsonPlace place, String text)
      throws BadInputException {
    // An exponent such as 1e999999999 would make every later operation on it run for ever.
    int exponentAt = Math.max(text.indexOf('e'), text.indexOf('E'));
    if (text.length() > 40 || (exponentAt >= 0 && text.length() - exponentAt > 5)) {
      throw BadInputException.notAllowed(
          source, place.path(), text, "a number of at most 40 characters and no large exponent");
    }
    return new BigDecimal(text);
  }
}
