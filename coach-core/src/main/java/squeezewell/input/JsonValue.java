package squeezewell.input;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * A JSON value that knows which file it came from and where it stands there. Every accessor either
 * returns a checked value or throws a {@link BadInputException} that names the place. The content
 * never changes; an object remembers which of its fields were asked for, so that {@link #unknown}
 * names the others.
 */
public final class JsonValue {
  private final String source;
  private final JsonPlace place;
  private final Object content;
  private final Set<String> asked;

  JsonValue(String source, JsonPlace place, Object content) {
    this.source = source;
    this.place = place;
    this.content = content;
    this.asked = content instanceof Map ? new HashSet<>() : Set.of();
  }

  /** The file it came from. */
  public String source() {
    return source;
  }

  /** Where it stands, such as {@code patients[0].rhythms[1].situation}. */
  public String path() {
    return place.path();
  }

  /** Whether the object has the field and the field is not null. */
  public boolean has(String name) throws BadInputException {
    return contentOf(name) != null;
  }

  /** The field of that name. */
  public JsonValue field(String name, String allowed) throws BadInputException {
    JsonValue value = member(name);
    if (value == null || value.content == null) {
      throw BadInputException.missing(source, place.member(name).path(), allowed);
    }
    return value;
  }

  /** Counts fields as asked for that a reader knows but has no use for in this very object. */
  public void allow(Collection<String> names) {
    if (content instanceof Map) {
      asked.addAll(names);
    }
  }

  /**
   * The fields of this value and of all that it holds that nobody asked for, in the file's order
   * but those of an object before those below it; at most {@link Faults#MOST}. What lies under such
   * a field, or in an object of which no field was asked for, is not looked at.
   */
  public List<UnknownField> unknown() {
    List<UnknownField> unknown = new ArrayList<>();
    addUnknown(unknown);
    return unknown;
  }

  private void addUnknown(List<UnknownField> unknown) {
    for (JsonValue element : elements()) {
      element.addUnknown(unknown);
    }
    if (asked.isEmpty()) {
      return;
    }
    List<String> known = new ArrayList<>(new TreeSet<>(asked));
    fields()
        .forEach(
            (name, value) -> {
              if (!asked.contains(name) && unknown.size() < Faults.MOST) {
                unknown.add(new UnknownField(this, name, value, known));
              }
            });
    fields()
        .forEach(
            (name, value) -> {
              if (asked.contains(name)) {
                value.addUnknown(unknown);
              }
            });
  }

  /** The names of all fields, in the file's order. */
  public Set<String> names() throws BadInputException {
    return members().keySet();
  }

  /** The elements of the list in field {@code name}; at least {@code fewest}. */
  public List<JsonValue> list(String name, int fewest, String allowed) throws BadInputException {
    JsonValue value = field(name, allowed);
    if (!(value.content instanceof List)) {
      throw value.wrong(allowed);
    }
    List<JsonValue> elements = value.elements();
    if (elements.size() < fewest) {
      throw BadInputException.notAllowed(
          source, value.path(), elements.size() + " entries", allowed);
    }
    return elements;
  }

  /**
   * The text in field {@code name}: not blank, at most {@code longest} characters, none of them a
   * control character, since the text may be shown on a terminal.
   */
  public String text(String name, int longest) throws BadInputException {
    if (contentOf(name) instanceof String text && isText(text, longest)) {
      return text;
    }
    throw unfit(name, allowedText(longest));
  }

  /** Null if the field is not there, or is null. */
  private Object contentOf(String name) throws BadInputException {
    JsonValue value = member(name);
    return value == null ? null : value.content;
  }

  /** A file has thousands of values, so what is allowed is put into words for a fault only. */
  private BadInputException unfit(String name, String allowed) throws BadInputException {
    return field(name, allowed).wrong(allowed);
  }

  /** Whether {@link #text} would take that text. */
  public static boolean isText(String text, int longest) {
    return !text.trim().isEmpty()
        && text.length() <= longest
        && text.chars().noneMatch(Character::isISOControl);
  }

  /** What {@link #text} takes, in words. */
  public static String allowedText(int longest) {
    return "a text of 1 to " + longest + " characters, without control characters";
  }

  /** The text in field {@code name}, or {@code otherwise} if the field is not there. */
  public String textOr(String name, int longest, String otherwise) throws BadInputException {
    return has(name) ? text(name, longest) : otherwise;
  }

  /** Any text in field {@code name}, even a blank one; empty if the field is not there. */
  public String freeText(String name, int longest) throws BadInputException {
    if (!has(name)) {
      return "";
    }
    if (contentOf(name) instanceof String text && text.length() <= longest) {
      return text;
    }
    throw unfit(name, "a text of at most " + longest + " characters");
  }

  /** The number in field {@code name}, within the given limits, both included. */
  public BigDecimal number(String name, BigDecimal least, BigDecimal most, String unit)
      throws BadInputException {
    if (contentOf(name) instanceof BigDecimal number
        && number.compareTo(least) >= 0
        && number.compareTo(most) <= 0) {
      return number;
    }
    throw unfit(
        name,
        "a number from " + least.toPlainString() + " to " + most.toPlainString() + unitOf(unit));
  }

  /** The whole number in field {@code name}, within the given limits, both included. */
  public long integer(String name, long least, long most) throws BadInputException {
    BigDecimal number = number(name, BigDecimal.valueOf(least), BigDecimal.valueOf(most), "");
    try {
      return number.longValueExact();
    } catch (ArithmeticException e) {
      throw unfit(name, "a whole number from " + least + " to " + most);
    }
  }

  /** The truth value in field {@code name}, or {@code otherwise} if the field is not there. */
  public boolean flagOr(String name, boolean otherwise) throws BadInputException {
    if (!has(name)) {
      return otherwise;
    }
    if (contentOf(name) instanceof Boolean flag) {
      return flag;
    }
    throw unfit(name, "true or false");
  }

  /** One of a fixed set of words in field {@code name}. */
  public <T> T choice(String name, List<T> choices, Function<T, String> wordOf)
      throws BadInputException {
    Object content = contentOf(name);
    for (T choice : choices) {
      if (wordOf.apply(choice).equals(content)) {
        return choice;
      }
    }
    Set<String> words = new TreeSet<>();
    for (T choice : choices) {
      words.add(wordOf.apply(choice));
    }
    throw unfit(name, "one of " + String.join(", ", words));
  }

  /** Whether this is exactly that text. */
  public boolean isText(String text) {
    return text.equals(content);
  }

  /** A fault at this value. */
  public BadInputException wrong(String allowed) {
    return BadInputException.notAllowed(
        source, path().isEmpty() ? "top" : path(), describe(), allowed);
  }

  private JsonValue member(String name) throws BadInputException {
    JsonValue value = members().get(name);
    asked.add(name);
    return value;
  }

  private Map<String, JsonValue> members() throws BadInputException {
    if (!(content instanceof Map)) {
      throw wrong("an object, in braces");
    }
    return fields();
  }

  /** Empty if this is no object. */
  @SuppressWarnings("unchecked") // only Json makes these, and only of String to JsonValue
  private Map<String, JsonValue> fields() {
    return content instanceof Map
        ? Collections.unmodifiableMap((Map<String, JsonValue>) content)
        : Map.of();
  }

  /** Empty if this is no list. */
  @SuppressWarnings("unchecked") // only Json makes these, and only of JsonValue
  private List<JsonValue> elements() {
    return content instanceof List
        ? Collections.unmodifiableList((List<JsonValue>) content)
        : List.of();
  }

  /** What stands there, for a message; texts in quotation marks. */
  public String describe() {
    if (content == null) {
      return "null";
    }
    if (content instanceof Map) {
      return "an object";
    }
    if (content instanceof List) {
      return "a list";
    }
    if (content instanceof String) {
      return "\"" + content + "\"";
    }
    return content.toString();
  }

  /** The same as JSON text, without needless space. */
  public String compact() {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.setHtmlSafe(false);
      write(json);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return text.toString();
  }

  @SuppressWarnings("unchecked") // only Json makes these, and only of JsonValue
  private void write(JsonWriter json) throws IOException {
    if (content instanceof Map) {
      json.beginObject();
      for (Map.Entry<String, JsonValue> member : ((Map<String, JsonValue>) content).entrySet()) {
        json.name(member.getKey());
        member.getValue().write(json);
      }
      json.endObject();
    } else if (content instanceof List) {
      json.beginArray();
      for (JsonValue element : (List<JsonValue>) content) {
        element.write(json);
      }
      json.endArray();
    } else if (content instanceof BigDecimal number) {
      json.value(number);
    } else if (content instanceof Boolean flag) {
      json.value(flag);
    } else if (content instanceof String text) {
      json.value(text);
    } else {
      json.nullValue();
    }
  }

  private static String unitOf(String unit) {
    return unit.isEmpty() ? "" : " " + unit;
  }
}
