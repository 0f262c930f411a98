package squeezewell.input;

import java.util.Locale;

/**
 * A constant that stands in files as a word: its name in lower case, with hyphens. So a constant
 * that is renamed changes the format of a file.
 */
public interface FileWord {
  /** The constant's name. */
  String name();

  /** The word used in files. */
  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
