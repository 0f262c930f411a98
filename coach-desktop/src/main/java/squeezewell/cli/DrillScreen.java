package squeezewell.cli;

import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import squeezewell.coach.CoachState;
import squeezewell.coach.CueOutput;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.InForce;
import squeezewell.cue.Moment;
import squeezewell.cue.Silence;
import squeezewell.cue.Stretch;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;

/**
 * Shows a live practice in a terminal: one line that is drawn again and again, and a line of its
 * own for each reminder. Where lines can't be drawn again, each squeeze has its line.
 */
final class DrillScreen implements CueOutput {
  private static final int COLUMN = 12;
  private static final long MINUTE = 60_000_000_000L;
  private static final String CLEAR_LINE = "\r\u001B[K";

  private final Surroundings around;
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
  DrillScreen(Surroundings around, boolean redraws, Supplier<String> trouble) {
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
      line(silent ? "No prompts from now on: keep the rhythm." : "The prompts are back.");
    }
  }

  private static boolean silentInTheEnd(CueSchedule changed) {
    List<Silence> silences = changed.silences();
    long end = changed.endNanos().orElse(Stretch.OPEN);
    return !silences.isEmpty() && silences.get(silences.size() - 1).endNanos() >= end;
  }

  @Override
  public void cue(Cue cue, long nowNanos) {
    String words = words(cue, nowNanos);
    if (!words.isEmpty()) {
      line(Quantities.clock(cue.atNanos()) + "  " + words);
    }
  }

  /** What a cue says in words that fit what is going on; empty if nothing. */
  private String words(Cue cue, long nowNanos) {
    InForce inForce = schedule.inForceAt(nowNanos);
    String check = inForce.check().words();
    String changing = inForce.changesCompressors() ? check + " and change of hands" : check;
    String goOn =
        switch (inForce.care()) {
          case BREATHE, BREATHE_NO_RATE -> "breathe";
          case COMPRESS -> "compress";
          case WATCH -> "watch";
        };
    return switch (cue.kind()) {
      case SQUEEZE -> redraws ? "" : "squeeze";
      case PULSE_CHECK_SOON -> changing + " soon";
      case PULSE_CHECK_DUE -> changing + " due: p starts it, p ends it";
      case PULSE_CHECK_ENOUGH -> "long enough to tell";
      case PULSE_CHECK_LIMIT -> "end the check and " + goOn + ": p";
      case SUCTION_SOON -> "suction: nearly at its limit";
      case SUCTION_LIMIT ->
          inForce.compressing()
              ? "end suction, breathe, compress on: s"
              : "end suction and " + goOn + ": s";
      case LAST_MINUTE -> "one minute left";
      case SESSION_END -> "the practice is over";
      case RHYTHM_CHANGED -> "now " + rhythm(inForce.guidance().rhythm());
      case WATCH -> "nothing is prompted now: watch the breathing";
      case NO_RATE -> "nothing is prompted now: breaths only, no rate here";
      case RELEASE, COUNT, COMPRESS, PULSE_CHECK_SECOND -> "";
    };
  }

  private static String rhythm(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return Quantities.count(cycle.perCycle(), "compression")
          + ", then "
          + Quantities.count(cycle.breathsPerCycle(), "breath");
    }
    double seconds = rhythm.steadyBreaths().get().interval().seconds();
    String breaths = "a breath every " + Quantities.upTo(seconds, 1) + " s";
    return rhythm.compressions().isPresent()
        ? "compress without a pause, " + breaths
        : "breaths only, " + breaths;
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
      line(now.isEmpty() ? "This practice is being saved again." : now);
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
    line.append("  breaths ").append(state.breaths().size());
    if (schedule.guidanceAt(nowNanos).rhythm().compressions().isPresent()) {
      line.append(", compressed ").append(state.compressionCount());
    } else if (state.lastIntervalNanos().isPresent()) {
      double seconds = state.lastIntervalNanos().getAsLong() / 1e9;
      line.append(", last after ").append(Quantities.decimals(seconds, 1)).append(" s");
    }
    long left = schedule.plan().lengthNanos() - schedule.practisedAt(nowNanos);
    line.append("  left ").append(Quantities.clock(Math.max(0, left)));
    if (state.soundLost()) {
      line.append("  no sound");
    }
    return line.toString();
  }

  /** Without anything that counts seconds, since that would give the beat away. */
  private String silent(CoachState state, long nowNanos) {
    long left = Math.max(0, schedule.plan().lengthNanos() - schedule.practisedAt(nowNanos));
    long minutes = (left + MINUTE - 1) / MINUTE;
    long without = state.withoutBreathNanos(nowNanos);
    if (without > schedule.guidanceAt(nowNanos).limits().gapLongest().nanos()) {
      return "NO BREATH FOR " + Quantities.clock(without) + ": squeeze";
    }
    return "NO PROMPTS NOW: keep the rhythm  breaths "
        + state.breaths().size()
        + "  under "
        + minutes
        + (minutes == 1 ? " minute left" : " minutes left")
        + (state.soundLost() ? "  no sound" : "");
  }

  private static String word(Moment.Act act, CheckKind check) {
    return switch (act) {
      case GET_READY -> "get ready";
      case SQUEEZE -> "squeeze";
      case RELEASE -> "release";
      case READY -> "ready";
      case COMPRESS -> "compress";
      case CHECK_PULSE ->
          switch (check) {
            case PULSE -> "check pulse";
            case RHYTHM -> "check rhythm";
            case HEART_RATE -> "check heart";
          };
      case SUCTION -> "suction";
      case WATCH -> "watch";
      case BREATHE_NO_RATE -> "breaths only";
      case PAUSED -> "paused";
      case FINISHED -> "finished";
      case KEEP_RHYTHM -> "no prompts";
    };
  }
}
