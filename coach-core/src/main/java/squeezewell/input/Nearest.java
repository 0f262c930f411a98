package squeezewell.input;

import java.util.Collection;

/** Finds the word that a misspelt one was probably meant to be. */
public final class Nearest {
  /** No word of a file is longer; a megabyte in its place is not looked at. */
  private static final int LONGEST = 60;

  private Nearest() {}

  /** A question to put behind a message; empty if nothing is close enough. */
  public static String question(String word, Collection<String> known) {
    if (word.length() > LONGEST) {
      return "";
    }
    String best = "";
    // Two letters in the wrong order are two changes; short words lie too close together for that.
    int least = 1 + (word.length() < 5 ? 1 : Math.max(2, word.length() / 4));
    for (String each : known) {
      int distance = distance(word, each);
      if (distance < least) {
        least = distance;
        best = each;
      }
    }
    return best.isEmpty() ? "" : "; did you mean " + best + "?";
  }

  /** How many letters must be put in, taken out or changed (Levenshtein 1966). */
  static int distance(String from, String to) {
    int[] row = new int[to.length() + 1];
    for (int j = 0; j <= to.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      int corner = row[0];
      row[0] = i;
      for (int j = 1; j <= to.length(); j++) {
        int changed = corner + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        corner = row[j];
        row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[to.length()];
  }
}
