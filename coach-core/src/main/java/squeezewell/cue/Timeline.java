package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Rhythm;

/** Lays a session out into stretches, from its plan and its controls. Pure. */
final class Timeline {
  /** The longest interval between breaths that a protocol may ask for. */
  private static final long LOOK_BACK = 60_000_000_000L;

  private static final long NONE = Long.MIN_VALUE;

  private final PracticePlan plan;
  private final List<Segment> done = new ArrayList<>();
  private final List<UnpromptedSpan> silences = new ArrayList<>();
  private final List<Turn> turns = new ArrayList<>();
  private Segment open;
  private Guidance inForce;
  private CareKind care;
  private long pausedNanos;
  private long lastSqueeze = NONE;
  private long lastCompression = NONE;

  /** From when on breaths are not prompted; {@link #NONE} while they are. */
  private long silentFrom = NONE;

  /**
   * A session laid out.
   *
   * @param segments in order, the last one open
   * @param silences when breaths were not prompted, in order, the last one perhaps open
   * @param turns what came into force when, in order, whether or not a hold was finished first
   */
  record Laid(List<Segment> segments, List<UnpromptedSpan> silences, List<Turn> turns) {}

  /**
   * Something else came into force.
   *
   * @param atNanos when, nanoseconds since the session began
   * @param guidance the rhythm, or the last one before nothing was prompted
   * @param care what is done from then on
   */
  record Turn(long atNanos, Guidance guidance, CareKind care) {}

  private Timeline(PracticePlan plan) {
    this.plan = plan;
    this.inForce = plan.guidance();
    this.care = CareKind.of(inForce);
  }

  /** The stretches of a session and its silences. */
  static Laid of(PracticePlan plan, List<Control> controls) {
    return new Timeline(plan).lay(controls);
  }

  private Laid lay(List<Control> controls) {
    long origin = plan.countInNanos();
    open = Segment.paced(origin, origin, origin, inForce);
    if (origin > 0) {
      done.add(Segment.holding(Segment.Kind.COUNT_IN, 0, inForce).endingAt(origin));
    }
    for (Control control : controls) {
      endIfOverBefore(control.atNanos());
      if (open.kind() == Segment.Kind.ENDED) {
        break;
      }
      apply(control);
    }
    endIfOverBefore(Long.MAX_VALUE);
    endSilence(open.kind() == Segment.Kind.ENDED ? open.startNanos() : Segment.OPEN);
    done.add(open);
    return new Laid(List.copyOf(done), List.copyOf(silences), List.copyOf(turns));
  }

  private void apply(Control control) {
    long at = Math.max(control.atNanos(), 0);
    switch (control.kind()) {
      case PULSE_CHECK -> hold(Segment.Kind.PULSE_CHECK, at);
      case SUCTION -> hold(Segment.Kind.SUCTION, at);
      case SUCTION_COMPRESSING -> suctionWhileCompressing(at);
      case PAUSE -> hold(Segment.Kind.PAUSED, at);
      case PULSE_CHECK_END -> goOnAfter(Segment.Kind.PULSE_CHECK, at, false);
      case SUCTION_END -> goOnAfter(Segment.Kind.SUCTION, at, true);
      case SUCTION_UNDONE -> goOnAfter(Segment.Kind.SUCTION, at, false);
      case RESUME -> goOnAfter(Segment.Kind.PAUSED, at, false);
      case CHANGE -> change(control.guidance().get(), CareKind.of(control.guidance().get()), at);
      case WATCH -> change(control.guidance().orElse(inForce), CareKind.WATCH, at);
      case NO_RATE -> change(control.guidance().orElse(inForce), CareKind.BREATHE_NO_RATE, at);
      case PROMPTS_OFF -> fallSilent(at);
      case PROMPTS_ON -> soundAgain(at, false);
      case PROMPTS_AT_ONCE -> soundAgain(at, true);
      case FINISH -> hold(Segment.Kind.ENDED, at);
    }
  }

  private void fallSilent(long at) {
    if (silentFrom == NONE && care.prompted() && Prompting.mayFallSilent(inForce)) {
      boolean paced = open.kind() == Segment.Kind.PACED && open.startNanos() <= at;
      silentFrom = paced ? RhythmCues.afterBreathAt(open, at) : at;
    }
  }

  /**
   * @param atOnce whether the first squeeze is prompted now; else the rhythm is counted on from a
   *     breath that was given now
   */
  private void soundAgain(long at, boolean atOnce) {
    boolean silent = silentFrom != NONE && silentFrom <= at;
    if (silent && open.kind() == Segment.Kind.PACED && open.startNanos() <= at) {
      long origin = atOnce ? at + plan.leadNanos() : at;
      // Before the silence ends, so that no squeeze that nobody was told of is counted on from.
      turn(Segment.paced(at, origin, origin, inForce));
      lastSqueeze = atOnce ? lastSqueeze : at;
    }
    // What is counted on from a breath at this very instant does not ask for that breath.
    endSilence(atOnce ? at : at + 1);
  }

  private void endSilence(long at) {
    if (silentFrom != NONE && silentFrom < at) {
      silences.add(new UnpromptedSpan(silentFrom, at));
    }
    silentFrom = NONE;
  }

  /** Up to when what the rhythm asked for was prompted. */
  private long promptedUntil(long at) {
    return silentFrom == NONE ? at : Math.min(at, silentFrom);
  }

  private void hold(Segment.Kind kind, long at) {
    if (kind != open.kind()) {
      turn(Segment.holding(kind, at, inForce));
    }
  }

  private void suctionWhileCompressing(long at) {
    if (!compresses()) {
      hold(Segment.Kind.SUCTION, at);
    } else if (open.kind() != Segment.Kind.SUCTION) {
      turn(Segment.suctionWhileCompressing(at, compressionOrigin(at), inForce));
    }
  }

  private boolean compresses() {
    return care == CareKind.COMPRESS;
  }

  /**
   * After a hold compressions come at once, or in step if they went on. So does the first breath
   * after suction, which takes oxygen away; after a check or a pause, breaths are counted on from
   * the last squeeze while its interval has not passed.
   */
  private void goOnAfter(Segment.Kind kind, long at, boolean breatheAtOnce) {
    if (open.kind() != kind) {
      return;
    }
    long atOnce = at + plan.leadNanos();
    long breaths = breatheAtOnce ? atOnce : breathOrigin(at);
    if (!care.prompted()) {
      turn(Segment.unprompted(care, at, inForce));
    } else if (!open.compressing()) {
      turn(Segment.paced(at, atOnce, breaths, inForce));
    } else if (breatheAtOnce && inForce.rhythm() instanceof Rhythm.CompressionCycle cycle) {
      // The breaths that waited come first, as if the compressions of a cycle had just been given.
      long cycleAgo = cycle.compressing().tempo().nanosAt(cycle.perCycle());
      turn(Segment.paced(at, atOnce - cycleAgo, atOnce, inForce));
    } else {
      turn(Segment.paced(at, compressionOrigin(at), breaths, inForce));
    }
  }

  private void change(Guidance guidance, CareKind needed, long at) {
    if (guidance.equals(inForce) && needed == care) {
      return;
    }
    inForce = guidance;
    care = needed;
    turns.add(new Turn(at, guidance, needed));
    if (mustGoOn()) {
      endSilence(at);
      if (open.compressing()) {
        turn(Segment.holding(Segment.Kind.SUCTION, at, inForce));
      }
      return;
    }
    if (open.startNanos() > at) {
      endSilence(at);
      // The count-in leads to the new rhythm instead.
      long start = open.startNanos();
      open =
          care.prompted()
              ? Segment.paced(start, start, start, inForce)
              : Segment.unprompted(care, start, inForce);
    } else {
      Segment next =
          care.prompted()
              ? Segment.paced(at, compressionOrigin(at), breathOrigin(at), inForce)
              : Segment.unprompted(care, at, inForce);
      turn(next);
      // Another rhythm starts with its prompts.
      endSilence(at);
    }
  }

  /** A pause, and suction unless the chest must be compressed, are finished first. */
  private boolean mustGoOn() {
    return open.kind() == Segment.Kind.PAUSED
        || (open.kind() == Segment.Kind.SUCTION && !compresses());
  }

  /** Compressions go on in step where they already ran; else they start at once. */
  private long compressionOrigin(long at) {
    long atOnce = at + plan.leadNanos();
    Optional<CompressionPlan> compressions = inForce.rhythm().compressions();
    if (!compressions.isPresent()) {
      return atOnce;
    }
    OptionalLong coming = comingWithinLead(CueKind.COMPRESS, at);
    if (coming.isPresent()) {
      return coming.getAsLong();
    }
    long period = compressions.get().tempo().nanosAt(1);
    OptionalLong last = lastWithin(CueKind.COMPRESS, at, period);
    return last.isPresent() ? Math.max(atOnce, last.getAsLong() + period) : atOnce;
  }

  /**
   * Breaths are counted on from the last squeeze while its interval has not passed, so that no
   * change of rhythm brings two squeezes close together; else they start at once.
   */
  private long breathOrigin(long at) {
    long atOnce = at + plan.leadNanos();
    Optional<BreathPlan> breaths = inForce.rhythm().steadyBreaths();
    if (!breaths.isPresent()) {
      return atOnce;
    }
    long interval = breaths.get().interval().nanosAt(1);
    OptionalLong last = lastWithin(CueKind.SQUEEZE, at, interval);
    long earliest = comingWithinLead(CueKind.SQUEEZE, at).orElse(atOnce);
    boolean running = last.isPresent() && last.getAsLong() + interval >= earliest;
    return running ? last.getAsLong() : earliest;
  }

  /**
   * A cue that comes before the new rhythm could start stays where it is: its sound may have left
   * already, and another right behind it would be heard as two.
   */
  private OptionalLong comingWithinLead(CueKind kind, long at) {
    long until = at + plan.leadNanos() + 1;
    return RhythmCues.first(open, kind, at, promptedUntil(until));
  }

  private OptionalLong lastWithin(CueKind kind, long at, long span) {
    OptionalLong last = RhythmCues.last(open, kind, at - span, promptedUntil(at));
    long before = kind == CueKind.SQUEEZE ? lastSqueeze : lastCompression;
    if (last.isPresent() || before < at - span) {
      return last;
    }
    return OptionalLong.of(before);
  }

  /** Remembered, so that a change costs the same however many came before it. */
  private void end(long at) {
    Segment ended = open.endingAt(at);
    lastSqueeze =
        RhythmCues.last(ended, CueKind.SQUEEZE, at - LOOK_BACK, promptedUntil(at))
            .orElse(lastSqueeze);
    lastCompression =
        RhythmCues.last(ended, CueKind.COMPRESS, at - LOOK_BACK, at).orElse(lastCompression);
    done.add(ended);
  }

  private void turn(Segment next) {
    long at = next.startNanos();
    if (silentFrom > at) {
      // The breath that was to keep its prompt is held up, or the rhythm changes.
      silentFrom = at;
    }
    if (open.kind() == Segment.Kind.PAUSED) {
      pausedNanos += at - open.startNanos();
    }
    // A control inside the count-in takes the place of what was to follow it.
    while (!done.isEmpty() && done.get(done.size() - 1).endNanos() > at) {
      Segment last = done.remove(done.size() - 1);
      open = last.endingAt(open.endNanos());
    }
    if (at > open.startNanos()) {
      end(at);
    }
    open = next;
  }

  /** Ends the session by the clock. While it is paused the clock does not run. */
  private void endIfOverBefore(long nanos) {
    if (open.kind() == Segment.Kind.PAUSED || open.kind() == Segment.Kind.ENDED) {
      return;
    }
    long end = plan.countInNanos() + plan.lengthNanos() + pausedNanos;
    if (end <= nanos) {
      hold(Segment.Kind.ENDED, Math.max(end, open.startNanos()));
    }
  }
}
