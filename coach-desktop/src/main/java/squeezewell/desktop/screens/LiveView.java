package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.coach.CoachState;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Cue;
import squeezewell.cue.CueFader;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Moment;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Limits;
import squeezewell.protocol.Rhythm;
import squeezewell.session.Breath;
import squeezewell.words.Quantities;

/**
 * What the live screen says at one instant. Pure: the same state and instant give the same view.
 *
 * @param elapsed time practised
 * @param total length of the practice, and the level of fading where prompts fade
 * @param bar about the pulse check or what holds breathing up
 * @param word the one thing to do
 * @param count the large count; empty for none
 * @param countNote what the count is of
 * @param interval the last interval and its judgement in words; empty for none
 * @param judgement how that interval was
 * @param fill how full the tide column is, 0 to 1
 * @param notch the notch to mark; 0 for none
 * @param notches how many notches
 */
public record LiveView(
    String elapsed,
    String total,
    BarLine bar,
    String word,
    String count,
    String countNote,
    String interval,
    Judgement judgement,
    double fill,
    int notch,
    int notches) {
  static final long RIBBON_PAST_NANOS = 24_000_000_000L;
  static final long RIBBON_AHEAD_NANOS = 6_000_000_000L;
  private static final long MINUTE = 60_000_000_000L;

  /** The view of a state at an instant of session time. */
  static LiveView of(CoachState state, long nowNanos) {
    CueSchedule schedule = state.schedule();
    Moment moment = schedule.momentAt(nowNanos);
    Guidance guidance = moment.segment().guidance();
    boolean paced = moment.segment().kind() == Segment.Kind.PACED;
    boolean silent = moment.act() == Moment.Act.KEEP_RHYTHM;
    Judgement judgement =
        state.lastIntervalNanos().isPresent() && !silent
            ? judge(guidance, state.lastIntervalNanos().getAsLong())
            : Judgement.UNJUDGED;
    String interval =
        judgement == Judgement.UNJUDGED || !paced
            ? ""
            : Quantities.decimals(state.lastIntervalNanos().getAsLong() / 1e9, 1)
                + " s  "
                + judgement.label();
    return new LiveView(
        silent
            ? wholeMinutes(schedule.practisedAt(nowNanos))
            : Quantities.clock(schedule.practisedAt(nowNanos)),
        "of " + Quantities.clock(schedule.plan().lengthNanos()) + level(state),
        PracticeBar.of(state, moment, nowNanos),
        word(moment.act()),
        moment.count() > 0 ? Integer.toString(moment.count()) : "",
        note(moment, guidance),
        interval,
        judgement,
        moment.fill(),
        paced ? moment.count() : 0,
        paced ? moment.of() : 0);
  }

  private static String level(CoachState state) {
    return state.fadingLevel().isPresent()
        ? ", level " + state.fadingLevel().getAsInt() + " of " + CueFader.HIGHEST
        : "";
  }

  /** Seconds that run would give the beat away. */
  private static String wholeMinutes(long nanos) {
    return nanos / MINUTE + " min";
  }

  /**
   * What stands on the ribbon around an instant. While breaths are not prompted that is the silence
   * alone: anything that moves along would tell the beat.
   */
  static List<RibbonMark> ribbon(CoachState state, long nowNanos) {
    long from = nowNanos - RIBBON_PAST_NANOS;
    long to = nowNanos + RIBBON_AHEAD_NANOS;
    List<RibbonMark> marks = new ArrayList<>();
    CueSchedule schedule = state.schedule();
    if (schedule.momentAt(nowNanos).act() == Moment.Act.KEEP_RHYTHM) {
      return List.of(new RibbonMark(RibbonMark.Kind.SILENCE, from, to, Judgement.UNJUDGED));
    }
    for (UnpromptedSpan silence : schedule.silences()) {
      if (silence.startNanos() < nowNanos && silence.endNanos() > from) {
        long end = Math.min(silence.endNanos(), nowNanos);
        marks.add(
            new RibbonMark(RibbonMark.Kind.SILENCE, silence.startNanos(), end, Judgement.UNJUDGED));
      }
    }
    for (Segment segment : schedule.segments()) {
      Optional<RibbonMark.Kind> kind = holdKind(segment.kind());
      if (kind.isPresent() && segment.startNanos() < to && segment.endNanos() > from) {
        long end = Math.min(segment.endNanos(), nowNanos);
        marks.add(new RibbonMark(kind.get(), segment.startNanos(), end, Judgement.UNJUDGED));
      }
    }
    for (Cue cue : schedule.between(from, to)) {
      if (cue.kind() == CueKind.SQUEEZE) {
        marks.add(
            new RibbonMark(
                RibbonMark.Kind.PROMPT, cue.atNanos(), cue.atNanos(), Judgement.UNJUDGED));
      }
    }
    for (long at : state.recentCompressions()) {
      if (at > from) {
        marks.add(new RibbonMark(RibbonMark.Kind.COMPRESSION, at, at, Judgement.UNJUDGED));
      }
    }
    List<Breath> breaths = state.breaths();
    for (int i = breaths.size() - 1; i >= 0 && breaths.get(i).startNanos() > from; i--) {
      Breath breath = breaths.get(i);
      boolean open = state.squeezing() && i == breaths.size() - 1;
      // The end of a squeeze that was noted as one instant is not known.
      long end =
          breath
              .endNanos()
              .orElse(open ? Math.max(nowNanos, breath.startNanos()) : breath.startNanos());
      marks.add(
          new RibbonMark(
              RibbonMark.Kind.BREATH, breath.startNanos(), end, judgeBreath(schedule, breaths, i)));
    }
    return marks;
  }

  private static Judgement judgeBreath(CueSchedule schedule, List<Breath> breaths, int index) {
    if (index == 0) {
      return Judgement.UNJUDGED;
    }
    long before = breaths.get(index - 1).startNanos();
    long at = breaths.get(index).startNanos();
    return schedule.unbroken(before, at)
        ? judge(schedule.guidanceAt(at), at - before)
        : Judgement.UNJUDGED;
  }

  private static Judgement judge(Guidance guidance, long intervalNanos) {
    return guidance
        .rhythm()
        .steadyBreaths()
        .map(plan -> plan.judge(intervalNanos))
        .orElse(Judgement.UNJUDGED);
  }

  private static Optional<RibbonMark.Kind> holdKind(Segment.Kind kind) {
    return switch (kind) {
      case PULSE_CHECK -> Optional.of(RibbonMark.Kind.PULSE_CHECK);
      case SUCTION -> Optional.of(RibbonMark.Kind.SUCTION);
      case PAUSED -> Optional.of(RibbonMark.Kind.PAUSE);
      default -> Optional.empty();
    };
  }

  /** The word on the button that begins a check. */
  static String checkButton(CheckKind check) {
    return switch (check) {
      case PULSE -> "Pulse check";
      case RHYTHM -> "Rhythm check";
      case HEART_RATE -> "Heart rate";
    };
  }

  /** What the breath pad says during a check or suction. */
  static String goOn(Segment.Kind kind, ActiveGuidance inForce) {
    if (kind == Segment.Kind.PULSE_CHECK) {
      return inForce.check() == CheckKind.RHYTHM ? "Rhythm check" : "Ends the check";
    }
    return switch (inForce.care()) {
      case BREATHE, BREATHE_NO_RATE -> "Squeeze to go on";
      // Compressions that go on do not end suction.
      case COMPRESS -> inForce.compressing() ? "Squeeze to go on" : "Compress to go on";
      case WATCH -> "Then watch";
    };
  }

  private static String word(Moment.Act act) {
    return switch (act) {
      case GET_READY -> "Get ready";
      case SQUEEZE -> "Squeeze";
      case RELEASE -> "Release";
      case READY -> "Ready";
      case COMPRESS -> "Compress";
      case CHECK_PULSE -> "Check";
      case SUCTION -> "Suction";
      case WATCH -> "Watch";
      case BREATHE_NO_RATE -> "Breaths only";
      case PAUSED -> "Paused";
      case FINISHED -> "Done";
      case KEEP_RHYTHM -> "No prompts now";
    };
  }

  private static String note(Moment moment, Guidance guidance) {
    Limits limits = guidance.limits();
    boolean cycle = guidance.rhythm() instanceof Rhythm.CompressionCycle;
    return switch (moment.segment().kind()) {
      case COUNT_IN -> cycle ? "first compression" : "first breath";
      case PACED ->
          moment.act() == Moment.Act.KEEP_RHYTHM
              ? "keep the rhythm"
              : moment.of() == 0 ? "" : cycle ? inCycle(moment) : "count of " + moment.of();
      case WATCHING -> "breathing well";
      case NO_RATE -> "no rate here";
      case PULSE_CHECK ->
          guidance.checksRhythm()
              ? "of " + Phrases.seconds(limits.pulseCheckLongest().nanos()) + " s max"
              : "seconds of " + Phrases.seconds(limits.pulseCheckLongest().nanos());
      case SUCTION -> "seconds of " + Phrases.seconds(limits.suctionLongest().nanos());
      default -> "";
    };
  }

  private static String inCycle(Moment moment) {
    return moment.act() == Moment.Act.COMPRESS
        ? "of " + Quantities.count(moment.of(), "compression")
        : "of " + Quantities.count(moment.of(), "breath");
  }
}
