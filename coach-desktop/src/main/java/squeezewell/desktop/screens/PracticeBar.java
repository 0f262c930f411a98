package squeezewell.desktop.screens;

import java.util.Locale;
import java.util.OptionalLong;
import squeezewell.coach.CoachState;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Moment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.words.Quantities;

/**
 * Picks the one time of a practice that presses most: a check, a hold, the wait for a breath. Pure.
 */
final class PracticeBar {
  private PracticeBar() {}

  /** The bar of a practice at a moment of its schedule. */
  static BarLine of(CoachState state, Moment moment, long now) {
    CueSchedule schedule = state.schedule();
    Guidance guidance = moment.segment().guidance();
    Limits limits = guidance.limits();
    ActiveGuidance inForce = schedule.inForceAt(now);
    String next =
        switch (inForce.care()) {
          case BREATHE, BREATHE_NO_RATE -> "squeeze";
          case COMPRESS -> "compress";
          case WATCH -> "watch";
        };
    long since = now - moment.segment().startNanos();
    switch (moment.segment().kind()) {
      case PULSE_CHECK:
        long most = limits.pulseCheckLongest().nanos();
        return since >= most
            ? new BarLine(checkOver(inForce, most, next), 1, true)
            : new BarLine(checking(inForce, limits), (double) since / most, false);
      case SUCTION:
        long longest = limits.suctionLongest().nanos();
        boolean compressing = moment.segment().compressing();
        String then = compressing ? "end it" : next;
        return since >= longest
            ? new BarLine("Suction over " + Phrases.seconds(longest) + " s: " + then, 1, true)
            : new BarLine(
                "Suction, at most "
                    + Phrases.seconds(longest)
                    + (compressing ? " s; compress on" : " s"),
                (double) since / longest,
                longest - since <= limits.suctionNotice().nanos());
      case PAUSED:
        return new BarLine("Paused for " + Quantities.clock(since), 0, false);
      case ENDED:
        return new BarLine("Practice over", 1, false);
      default:
        long without = state.withoutBreathNanos(now);
        if (without > limits.gapLongest().nanos()) {
          return new BarLine("Squeeze now: no breath for " + Quantities.clock(without), 1, true);
        }
        BarLine check = checkBar(schedule, moment, now);
        return moment.act() == Moment.Act.KEEP_RHYTHM
            ? withoutSeconds(schedule, moment, check, now)
            : check;
    }
  }

  private static String checkOver(ActiveGuidance inForce, long most, String next) {
    return inForce.check() == CheckKind.PULSE
        ? "Decide now. Not sure? No pulse: start CPR"
        : "Check over " + Phrases.seconds(most) + " s: " + next;
  }

  private static String checking(ActiveGuidance inForce, Limits limits) {
    String most = Phrases.seconds(limits.pulseCheckLongest().nanos());
    return switch (inForce.check()) {
      case RHYTHM ->
          "Rhythm check, " + most + " s max" + (inForce.changesCompressors() ? ": switch" : "");
      case HEART_RATE -> "Heart rate?";
      case PULSE -> {
        String range = Phrases.seconds(limits.pulseCheckShortest().nanos()) + " to " + most + " s";
        yield switch (inForce.guidance().patient()) {
          case ADULT -> "Carotid pulse, " + range;
          case CHILD -> "Carotid or femoral pulse, " + range;
          case INFANT -> "Brachial pulse, " + range;
          default -> "Feel the pulse, " + range;
        };
      }
    };
  }

  /** The same without seconds that run: only what is due, or nearly. */
  private static BarLine withoutSeconds(
      CueSchedule schedule, Moment moment, BarLine bar, long now) {
    OptionalLong due = schedule.nextPulseCheckAt(now);
    if (!due.isPresent() || !bar.urgent()) {
      return new BarLine("Keep the rhythm on your own", 0, false);
    }
    String check = Phrases.capital(schedule.inForceAt(now).check().words());
    long notice = moment.segment().guidance().limits().pulseCheckNotice().nanos();
    long left = due.getAsLong() - now;
    if (left > 0) {
      return new BarLine(left <= notice ? check + " soon" : "Keep the rhythm on your own", 0, true);
    }
    return new BarLine(check + " now", 1, true);
  }

  /** While the chest is compressed, the check comes with a change of hands. */
  private static BarLine checkBar(CueSchedule schedule, Moment moment, long now) {
    Guidance guidance = moment.segment().guidance();
    ActiveGuidance inForce = schedule.inForceAt(now);
    String check = Phrases.capital(inForce.check().words());
    OptionalLong due = schedule.nextPulseCheckAt(now);
    if (!due.isPresent()) {
      OptionalLong end = schedule.endNanos();
      String left = end.isPresent() ? Phrases.clockLeft(end.getAsLong() - now) : "";
      return new BarLine(
          left.isEmpty()
              ? "No more " + check.toLowerCase(Locale.ROOT) + "s"
              : "Practice ends in " + left,
          0,
          false);
    }
    long left = due.getAsLong() - now;
    if (left <= 0) {
      String late = Quantities.clock(-left);
      String atOnce = inForce.changesCompressors() ? "Check rhythm, change hands" : check + " now";
      return new BarLine(-left < 2_000_000_000L ? atOnce : check + " overdue by " + late, 1, true);
    }
    Limits limits = guidance.limits();
    double used = 1 - (double) left / limits.pulseCheckEvery().nanos();
    return new BarLine(
        check + " in " + Phrases.clockLeft(left),
        Math.max(0, used),
        left <= limits.pulseCheckNotice().nanos());
  }
}
