package squeezewell.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * A picture of a practice in text: one line of prompts and one of breaths for each minute, one
 * column a second. Shape tells in range, fast and slow apart. At most 66 columns wide.
 */
final class TextRibbon {
  private static final Wording WORDS = Wording.beside(TextRibbon.class);
  private static final long SECOND = 1_000_000_000L;
  private static final int COLUMNS = 60;
  private static final int MOST_ROWS = 12;
  private static final int STEP_COLUMNS = 3;
  private static final long PLAY_MILLIS = 4_000;

  /** Two lines up: a control sequence of ECMA-48, which every common terminal knows. */
  private static final String UP_TWO = "\u001B[2A\r";

  private final Review review;
  private final Signs signs;

  /**
   * One minute.
   *
   * @param label its start, such as {@code 2:00}
   * @param prompts the prompts, {@value #COLUMNS} columns
   * @param breaths the breaths, likewise
   */
  private record Row(String label, String prompts, String breaths) {}

  /** The signs of the picture. */
  private record Signs(char prompt, char missed, char inRange, char fast, char slow) {
    static final Signs BLOCKS = new Signs('▾', '×', '█', '▲', '▼');
    static final Signs PLAIN = new Signs('|', 'x', '#', '^', 'v');
  }

  TextRibbon(Review review, boolean blocks) {
    this.review = review;
    this.signs = blocks ? Signs.BLOCKS : Signs.PLAIN;
  }

  /** What the signs mean. */
  private String legend() {
    return "      "
        + WORDS.say(
            review.silences().isEmpty() ? "ribbon.legend" : "ribbon.legend.silent",
            signs.prompt,
            signs.missed,
            signs.inRange,
            signs.fast,
            signs.slow);
  }

  /** The whole picture; the middle of a long practice is left out. */
  String text() {
    StringBuilder text = new StringBuilder();
    List<Row> rows = rows();
    for (int i = 0; i < rows.size(); i++) {
      if (rows.size() > MOST_ROWS && i == MOST_ROWS / 2) {
        int left = rows.size() - MOST_ROWS;
        text.append("      ").append(WORDS.say("ribbon.between", left)).append('\n');
        i += left - 1;
        continue;
      }
      text.append(upper(rows.get(i))).append('\n').append(lower(rows.get(i))).append('\n');
    }
    return text.append(legend()).toString();
  }

  /** Draws it bit by bit on a terminal in about four seconds; a long one at once. */
  void play(CliContext around) {
    List<Row> rows = rows();
    if (rows.size() > MOST_ROWS) {
      around.print(text());
      return;
    }
    int steps = rows.stream().mapToInt(row -> upper(row).length() / STEP_COLUMNS + 1).sum();
    long pauseMillis = Math.max(1, PLAY_MILLIS / Math.max(1, steps));
    for (Row row : rows) {
      String upper = upper(row);
      String lower = lower(row);
      for (int shown = STEP_COLUMNS; ; shown += STEP_COLUMNS) {
        around.out().println(upper.substring(0, Math.min(shown, upper.length())));
        around.out().println(lower.substring(0, Math.min(shown, lower.length())));
        around.out().flush();
        if (shown >= Math.max(upper.length(), lower.length())) {
          break;
        }
        try {
          TimeUnit.MILLISECONDS.sleep(pauseMillis);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          return;
        }
        around.out().print(UP_TWO);
      }
    }
    around.print(legend());
  }

  /** The line of prompts, with the label. */
  private static String upper(Row row) {
    return (padded(row.label()) + row.prompts()).stripTrailing();
  }

  /** The line of breaths. */
  private static String lower(Row row) {
    return (" ".repeat(padded(row.label()).length()) + row.breaths()).stripTrailing();
  }

  private static String padded(String label) {
    return String.format("%5s ", label);
  }

  /** All minutes. */
  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (long from = 0; from < review.endNanos(); from += COLUMNS * SECOND) {
      rows.add(row(from));
    }
    return rows;
  }

  private Row row(long from) {
    char[] upper = new char[COLUMNS];
    char[] lower = new char[COLUMNS];
    Arrays.fill(upper, ' ');
    Arrays.fill(lower, ' ');
    for (Interruption hold : review.holds()) {
      hold(upper, lower, hold, from);
    }
    for (UnpromptedSpan silence : review.silences()) {
      silence(upper, silence, from);
    }
    for (PromptMark prompt : review.prompts()) {
      put(
          upper,
          prompt.atNanos() - from,
          prompt.outcome() == PromptMark.Outcome.MISSED ? signs.missed : signs.prompt);
    }
    for (BreathMark breath : review.breaths()) {
      put(lower, breath.startNanos() - from, sign(breath.judgement()));
    }
    return new Row(Quantities.clock(from), new String(upper), new String(lower));
  }

  private static void hold(char[] upper, char[] lower, Interruption hold, long from) {
    String word = WORDS.say("hold." + hold.kind().word());
    long first = (hold.startNanos() - from + SECOND - 1) / SECOND;
    long last = (hold.endNanos() - from) / SECOND;
    for (int at = (int) Math.max(0, first); at < Math.min(COLUMNS, last); at++) {
      long letter = at - first;
      upper[at] = letter < word.length() ? word.charAt((int) letter) : '.';
      lower[at] = '.';
    }
  }

  private static void silence(char[] upper, UnpromptedSpan silence, long from) {
    long first = (silence.startNanos() - from + SECOND - 1) / SECOND;
    long last = (silence.endNanos() - from) / SECOND;
    for (int at = (int) Math.max(0, first); at < Math.min(COLUMNS, last); at++) {
      if (upper[at] == ' ') {
        upper[at] = '-';
      }
    }
  }

  private char sign(Judgement judgement) {
    return switch (judgement) {
      case FAST -> signs.fast;
      case SLOW -> signs.slow;
      case IN_RANGE, UNJUDGED -> signs.inRange;
    };
  }

  /** Puts a sign; where breaths crowd a column, one that is out of range stays. */
  private void put(char[] lane, long offset, char sign) {
    if (offset < 0 || offset >= COLUMNS * SECOND) {
      return;
    }
    int at = (int) (offset / SECOND);
    if (lane[at] == ' ' || lane[at] == '.' || lane[at] == '-' || lane[at] == signs.inRange) {
      lane[at] = sign;
    }
  }
}
