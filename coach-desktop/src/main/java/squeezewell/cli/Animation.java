package squeezewell.cli;

import java.util.concurrent.TimeUnit;

/**
 * Draws a ribbon bit by bit on a terminal. It moves the cursor with the control sequences of
 * ECMA-48 (cursor up), which every common terminal knows.
 */
final class Animation {
  private static final int STEP_COLUMNS = 3;
  private static final long LENGTH_MILLIS = 4_000;
  private static final int MOST_ROWS = 12;
  private static final String UP_TWO = "\u001B[2A\r";

  private Animation() {}

  /** Draws the ribbon in about four seconds; a long one at once. */
  static void play(CliContext around, TextRibbon ribbon) {
    if (ribbon.rows().size() > MOST_ROWS) {
      around.print(ribbon.text());
      return;
    }
    int steps = 0;
    for (TextRibbon.Row row : ribbon.rows()) {
      steps += TextRibbon.upper(row).length() / STEP_COLUMNS + 1;
    }
    long pauseMillis = Math.max(1, LENGTH_MILLIS / Math.max(1, steps));
    for (TextRibbon.Row row : ribbon.rows()) {
      String upper = TextRibbon.upper(row);
      String lower = TextRibbon.lower(row);
      for (int shown = STEP_COLUMNS; ; shown += STEP_COLUMNS) {
        around.out().println(head(upper, shown));
        around.out().println(head(lower, shown));
        around.out().flush();
        if (shown >= Math.max(upper.length(), lower.length())) {
          break;
        }
        if (!pause(pauseMillis)) {
          return;
        }
        around.out().print(UP_TWO);
      }
    }
    around.print(ribbon.legend());
  }

  private static boolean pause(long millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static String head(String line, int columns) {
    return line.substring(0, Math.min(columns, line.length()));
  }
}
