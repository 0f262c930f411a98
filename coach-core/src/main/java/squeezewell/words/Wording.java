package squeezewell.words;

import java.text.FieldPosition;
import java.text.Format;
import java.text.MessageFormat;
import java.text.ParsePosition;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * The words of one room, from the bundle {@code words.properties} beside its classes. A pattern is
 * a whole sentence in the syntax of {@link MessageFormat}, with two differences: an apostrophe is
 * an apostrophe and quotes nothing, and a number is printed without grouping. A plural is a choice
 * without a place in it: {@code {0} {0,choice,1#breath|1<breaths}}.
 */
public final class Wording {
  private final ResourceBundle bundle;

  private Wording(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /**
   * The words that stand beside a class.
   *
   * @throws MissingResourceException if its package has no {@code words.properties}
   */
  public static Wording beside(Class<?> type) {
    String room = type.getName().substring(0, type.getName().lastIndexOf('.'));
    return new Wording(
        ResourceBundle.getBundle(room + ".words", Locale.ROOT, type.getClassLoader()));
  }

  /** Whether there is something to say under a key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /**
   * What stands under a key, with its places filled.
   *
   * @param values for {@code {0}}, {@code {1}} and so on
   * @throws MissingResourceException if nothing stands there
   */
  public String say(String key, Object... values) {
    String pattern = bundle.getString(key);
    if (values.length == 0 && pattern.indexOf('{') < 0) {
      return pattern;
    }
    MessageFormat message = new MessageFormat(pattern.replace("'", "''"), Locale.ROOT);
    Format[] formats = message.getFormatsByArgumentIndex();
    if (formats.length > values.length) {
      throw new IllegalArgumentException(
          key + " has " + formats.length + " places, and got " + values.length + " values");
    }
    Format[] inOrder = message.getFormats();
    for (int i = 0; i < inOrder.length; i++) {
      if (inOrder[i] == null) {
        message.setFormat(i, new Plain());
      }
    }
    return message.format(values);
  }

  /** Prints a value as it is: whole numbers without grouping, text unchanged. */
  private static final class Plain extends Format {
    @Override
    public StringBuffer format(Object value, StringBuffer to, FieldPosition at) {
      return to.append(value);
    }

    @Override
    public Object parseObject(String text, ParsePosition at) {
      throw new UnsupportedOperationException("Words are only written.");
    }
  }
}
