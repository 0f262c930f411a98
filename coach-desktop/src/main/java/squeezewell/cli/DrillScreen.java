package squeezewell.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Supplier;
import squeezewell.coach.CoachState;
import squeezewell.coach.CueOutput;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Moment;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * Shows a live practice in a terminal: one line that is drawn again and again, and a line of its
 * own for each reminder. Where lines can't be drawn again, each squeeze has its line.
 */
final class DrillScreen implements CueOutput {
  private static final Wording WORDS = Wording.beside(DrillScreen.class);
  private static final int COLUMN = 12;
  private static final long MINUTE = 60_000_000_000L;
  private static final String CLEAR_LINE = "\r\u001B[K";

  private final CliContext around;
  private final boolean redraws;
  private final Supplier<String> trouble;
  private String troubleTold = "";
  private boolean silentTold;
  private volatile CueSchedule schedule;

  /**
   * A screen that has shown nothing yet.
   *
   * @param redraws whether a line can be drawn again
   * @param trouble what a person must know, such as a full disk; empty if all is well
   */
  DrillScreen(CliContext around, boolean redraws, Supplier<String> trouble) {
    this.around = around;
    this.redraws = redraws;
    this.trouble = trouble;
  }

  @Override
  public void scheduleChanged(CueSchedule changed) {
    boolean silent = silentInTheEnd(changed);
    schedule = changed;
    if (silent != silentTold) {
      silentTold = silent;
      line(WORDS.say(silent ? "drill.no-prompts" : "drill.prompts-back"));
    }
  }

  private static boolean silentInTheEnd(CueSchedule changed) {
    List<UnpromptedSpan> silences = changed.silences();
    long end = changed.endNanos().orElse(Segment.OPEN);
    return !silences.isEmpty() && silences.get(silences.size() - 1).endNanos() >= end;
  }

  @Override
  public void cue(Cue cue, long nowNanos) {
    String words = words(cue, nowNanos);
    if (!words.isEmpty()) {
      line(Quantities.clock(cue.atNanos() - schedule.plan().countInNanos()) + "  " + words);
    }
  }

  /** What a cue says in words that fit what is going on; empty if nothing. */
  private String words(Cue cue, long nowNanos) {
    ActiveGuidance inForce = schedule.inForceAt(nowNanos);
    String check = inForce.check().words();
    String key = "cue." + id(cue.kind());
    if (cue.kind() == CueKind.SUCTION_LIMIT && inForce.compressing()) {
      key += ".compressing";
    }
    boolean told = cue.kind() != CueKind.SQUEEZE || !redraws;
    return told && WORDS.has(key)
        ? WORDS.say(
            key,
            inForce.changesCompressors() ? WORDS.say("cue.change-hands", check) : check,
            WORDS.say("care." + id(inForce.care())),
            rhythm(inForce.guidance().rhythm()))
        : "";
  }

  private static String rhythm(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return WORDS.say("rhythm.cycle", cycle.perCycle(), cycle.breathsPerCycle());
    }
    double seconds = rhythm.steadyBreaths().get().interval().seconds();
    return WORDS.say(
        rhythm.compressions().isPresent() ? "rhythm.continuous" : "rhythm.breaths",
        Quantities.upTo(seconds, 1));
  }

  /** The part of a key that stands for a constant. */
  private static String id(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Writes a line that stays. */
  synchronized void line(String text) {
    if (redraws) {
      around.out().print(CLEAR_LINE);
    }
    around.print(text);
    around.out().flush();
  }

  /** Draws the present moment. */
  synchronized void draw(CoachState state, long nowNanos) {
    String now = trouble.get();
    if (!now.equals(troubleTold)) {
      troubleTold = now;
      line(now.isEmpty() ? WORDS.say("drill.saved-again") : now);
    }
    if (redraws && !state.finished()) {
      String line = status(state, nowNanos);
      around.out().print(CLEAR_LINE + line);
      around.out().flush();
    }
  }

  /** The line of the present moment; under 80 columns. */
  String status(CoachState state, long nowNanos) {
    Moment moment = schedule.momentAt(nowNanos);
    if (moment.act() == Moment.Act.KEEP_RHYTHM) {
      return silent(state, nowNanos);
    }
    StringBuilder line = new StringBuilder();
    String word = word(moment.act(), schedule.inForceAt(nowNanos).check());
    line.append(String.format(Locale.ROOT, "%-12s", word.toUpperCase(Locale.ROOT)));
    String count = moment.count() == 0 ? "" : Integer.toString(moment.count());
    line.append(String.format(Locale.ROOT, "%3s ", count));
    int full = (int) Math.round(moment.fill() * COLUMN);
    char sign = around.showsBlocks() ? '█' : '#';
    for (int i = 0; i < COLUMN; i++) {
      line.append(i < full ? sign : '.');
    }
    String left =
        Quantities.clock(
            Math.max(0, schedule.plan().lengthNanos() - schedule.practisedAt(nowNanos)));
    OptionalLong last = state.lastIntervalNanos();
    String shown;
    if (schedule.guidanceAt(nowNanos).rhythm().compressions().isPresent()) {
      shown = breaths("drill.breaths.compressed", line, state, left, state.compressionCount());
    } else if (last.isPresent()) {
      String seconds = Quantities.decimals(last.getAsLong() / 1e9, 1);
      shown = breaths("drill.breaths.after", line, state, left, seconds);
    } else {
      shown = breaths("drill.breaths", line, state, left, "");
    }
    return withSound(state, shown);
  }

  private static String breaths(
      String key, StringBuilder line, CoachState state, String left, Object more) {
    return WORDS.say(key, line, state.breaths().size(), left, more);
  }

  /** The level gives way where the line is full. */
  private static String withSound(CoachState state, String line) {
    String shown = state.soundLost() ? WORDS.say("drill.no-sound", line) : line;
    OptionalInt level = state.fadingLevel();
    String whole = level.isPresent() ? WORDS.say("drill.level", shown, level.getAsInt()) : shown;
    return whole.length() < 80 ? whole : shown;
  }

  /** Without anything that counts seconds, since that would give the beat away. */
  private String silent(CoachState state, long nowNanos) {
    long left = Math.max(0, schedule.plan().lengthNanos() - schedule.practisedAt(nowNanos));
    long minutes = (left + MINUTE - 1) / MINUTE;
    long without = state.withoutBreathNanos(nowNanos);
    if (without > schedule.guidanceAt(nowNanos).limits().gapLongest().nanos()) {
      return WORDS.say("drill.no-breath", Quantities.clock(without));
    }
    return withSound(state, WORDS.say("drill.silent", state.breaths().size(), minutes));
  }

  private static String word(Moment.Act act, CheckKind check) {
    String key = "act." + id(act);
    return WORDS.say(act == Moment.Act.CHECK_PULSE ? key + "." + id(check) : key);
  }
}
