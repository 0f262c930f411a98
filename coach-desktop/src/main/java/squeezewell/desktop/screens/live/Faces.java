package squeezewell.desktop.screens.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.coach.CoachState;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckKind;
import squeezewell.cue.CueFader;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Moment;
import squeezewell.cue.Prompting;
import squeezewell.cue.Segment;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.screens.CompressionView;
import squeezewell.desktop.screens.FindingsView;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.live.LiveFace.Feedback;
import squeezewell.desktop.screens.live.LiveFace.Ground;
import squeezewell.desktop.screens.live.LiveFace.Line;
import squeezewell.desktop.screens.live.LiveFace.Strip;
import squeezewell.desktop.screens.live.LiveFace.Vessel;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Limits;
import squeezewell.protocol.Rhythm;
import squeezewell.session.Breath;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** Says what a running practice shows. Pure: the same state and instant give the same face. */
public final class Faces {
  static final Wording WORDS = Wording.beside(Faces.class);

  /** Shorter intervals are told as the rate of the last breaths: single ones come too fast. */
  private static final double SHORT_SECONDS = 3;

  private static final int SHORT_BREATHS = 5;

  private final CoachState state;
  private final long now;
  private final CueSchedule schedule;
  private final Moment moment;
  private final Guidance guidance;
  private final Limits limits;
  private final ActiveGuidance inForce;

  private Ground ground = Ground.PLAIN;
  private String clock;
  private Optional<Strip> strip = Optional.empty();
  private String word = "";
  private String hint = "";
  private Optional<Vessel> vessel = Optional.empty();
  private String count = "";
  private String note = "";
  private final List<Line> more = new ArrayList<>();
  private final List<Line> beside = new ArrayList<>();
  private Optional<LiveFace.Steps> steps = Optional.empty();
  private Optional<LiveFace.Cells> cells = Optional.empty();
  private final List<Line> below = new ArrayList<>();
  private Optional<Feedback> feedback = Optional.empty();
  private boolean ribbon;

  private Faces(CoachState state, long now) {
    this.state = state;
    this.now = now;
    schedule = state.schedule();
    moment = schedule.momentAt(now);
    guidance = moment.segment().guidance();
    limits = guidance.limits();
    inForce = schedule.inForceAt(now);
    clock = Quantities.clock(schedule.practisedAt(now));
  }

  /**
   * The face of a practice.
   *
   * @param edition the edition in a word
   * @param now session time
   */
  public static LiveFace of(CoachState state, String edition, long now) {
    return new Faces(state, now).face(edition);
  }

  /** Whether it is the test: nothing but the pad may answer. */
  static boolean isTest(CoachState state) {
    return state.schedule().plan().prompting() == Prompting.NONE;
  }

  static String say(String key, Object... values) {
    return WORDS.say(key, values);
  }

  private LiveFace face(String edition) {
    switch (moment.segment().kind()) {
      case PULSE_CHECK -> check();
      case SUCTION -> {
        if (moment.segment().compressing()) {
          rhythm();
          suctionStrip();
        } else {
          suction();
        }
      }
      case PAUSED, STALLED -> paused();
      case ENDED -> {
        word = say("word.done");
        vessel = Optional.of(new Vessel.Hatched());
      }
      default -> rhythm();
    }
    return new LiveFace(
        ground,
        guidance.patient().label(),
        say("detail", say("situation." + guidance.situation().id()), edition),
        clock,
        strip,
        advice(),
        word,
        hint,
        vessel,
        count,
        note,
        more,
        beside,
        steps,
        cells,
        below,
        feedback,
        noted(),
        ribbon);
  }

  private Optional<LiveFace.Advice> advice() {
    return FindingsView.told(state, now).map(t -> new LiveFace.Advice(t.title(), t.text()));
  }

  private String noted() {
    return state.undoable(now).map(f -> say("noted", f.finding().label())).orElse("");
  }

  /** Breaths, or compressions and breaths. */
  private void rhythm() {
    boolean test = isTest(state);
    boolean silent = moment.act() == Moment.Act.KEEP_RHYTHM;
    word = say("word." + moment.act().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    if (test && silent) {
      test();
      return;
    }
    long without = state.withoutBreathNanos(now);
    long longest = limits.gapLongest().nanos();
    strip = Optional.of(next());
    ribbon = moment.segment().kind() != Segment.Kind.COUNT_IN || schedule.practisedAt(now) > 0;
    if (without > longest) {
      missing(without, longest);
      return;
    }
    feedback = feedback();
    if (silent) {
      word = say("word.alone");
      level();
      return;
    }
    count = moment.count() > 0 ? Integer.toString(moment.count()) : "";
    vessel = Optional.of(vessel());
    note = note();
    boolean breath = moment.act() == Moment.Act.SQUEEZE || moment.act() == Moment.Act.RELEASE;
    if (!guidance.rhythm().steadyBreaths().isPresent() && breath) {
      handsOff();
    }
    if (count.isEmpty()) {
      beside.add(new Line(note, 28, true, false));
      note = "";
    }
  }

  private Vessel vessel() {
    return switch (moment.act()) {
      case COMPRESS ->
          moment.of() > 0
              ? new Vessel.Slats(moment.count(), moment.of())
              : new Vessel.Tide(moment.fill(), moment.count(), moment.of());
      case WATCH, BREATHE_NO_RATE -> new Vessel.Hatched();
      default ->
          new Vessel.Tide(
              moment.fill(),
              moment.segment().kind() == Segment.Kind.PACED ? moment.count() : 0,
              moment.of());
    };
  }

  private String note() {
    boolean cycle = guidance.rhythm() instanceof Rhythm.CompressionCycle;
    return switch (moment.act()) {
      case GET_READY -> say(cycle ? "note.first-compression" : "note.first-breath");
      case COMPRESS -> {
        int breaths = ((Rhythm.CompressionCycle) guidance.rhythm()).breathsPerCycle();
        yield say("note.compressions", moment.of(), breaths);
      }
      case WATCH -> say("note.watch");
      case BREATHE_NO_RATE -> say("note.no-rate");
      default -> moment.of() > 0 ? say("note.of", moment.of()) : "";
    };
  }

  /** For how long no compression came while the breaths of a cycle are given. */
  private void handsOff() {
    List<Long> recent = state.recentCompressions();
    if (!recent.isEmpty()) {
      long off = (now - recent.get(recent.size() - 1)) / 1_000_000_000L;
      note = say("note.hands-off", note, off);
    }
  }

  private void test() {
    word = say("word.test");
    clock = say("test.clock");
    vessel = Optional.of(new Vessel.Hatched());
    beside.add(new Line(say("test.one"), 28, true, false));
    beside.add(new Line(say("test.two"), 20, false, true));
    beside.add(new Line(say("test.three"), 20, false, true));
  }

  private void level() {
    vessel = Optional.of(new Vessel.Hatched());
    int level = state.fadingLevel().orElse(0);
    beside.add(new Line(say("fading"), 20, false, true));
    beside.add(new Line(say("fading.level", level, CueFader.HIGHEST), 36, true, false));
    steps = Optional.of(new LiveFace.Steps(level, CueFader.HIGHEST));
  }

  private void missing(long without, long longest) {
    ground = Ground.GAP;
    word = say("word.missing");
    vessel = Optional.of(new Vessel.Empty());
    count = Long.toString(without / 1_000_000_000L);
    note = say("missing.note");
    more.add(new Line(say("missing.limit", Phrases.seconds(longest)), 20, false, true));
    List<Breath> breaths = state.breaths();
    long since = breaths.isEmpty() ? 0 : breaths.get(breaths.size() - 1).startNanos() + 1;
    int missed = schedule.squeezesAsked(since, now).size();
    if (missed > 0 && !schedule.silentAt(now)) {
      more.add(new Line(say("missing.prompts", missed), 20, false, true));
    }
  }

  private void check() {
    long most = limits.pulseCheckLongest().nanos();
    long since = now - moment.segment().startNanos();
    boolean over = since >= most;
    String kind = inForce.check().name().toLowerCase(Locale.ROOT).replace('_', '-');
    ground = over ? Ground.GAP : Ground.REST;
    word = say(over ? "check.over." + kind : "check." + kind);
    String site = "check.site." + guidance.patient().id();
    hint =
        over
            ? say("check.over.hint", Phrases.seconds(most))
            : inForce.check() == CheckKind.PULSE
                ? say(site)
                : inForce.changesCompressors() ? say("check.switch") : "";
    count = Long.toString(Math.max(0, since) / 1_000_000_000L);
    note = say(over ? "check.note.over" : "check.note", Phrases.seconds(most));
    boolean least = inForce.check() == CheckKind.PULSE;
    long shortest = limits.pulseCheckShortest().nanos();
    cells = Optional.of(cells(since, most, least ? shortest : 0));
    if (over) {
      below.add(new Line(say("check.below.over." + kind), 20, true, false));
    } else {
      below.add(new Line(say("check.below." + kind), 20, true, false));
      below.add(new Line(say("check.then." + kind, Phrases.seconds(most)), 18, false, true));
    }
  }

  private void suction() {
    long most = limits.suctionLongest().nanos();
    long since = now - moment.segment().startNanos();
    boolean over = since >= most;
    ground = over ? Ground.GAP : Ground.REST;
    strip = Optional.of(next());
    word = say(over ? "suction.over" : "word.suction");
    hint = say(over ? "suction.over.hint" : "suction.hint", Phrases.seconds(most));
    count = Long.toString(Math.max(0, since) / 1_000_000_000L);
    note = say(over ? "check.note.over" : "check.note", Phrases.seconds(most));
    cells = Optional.of(cells(since, most, 0));
    below.add(new Line(say("suction.below"), 20, true, false));
    if (!over) {
      below.add(new Line(say("suction.then", Phrases.seconds(most)), 18, false, true));
    }
  }

  /** In CPR the compressions go on beside it. */
  private void suctionStrip() {
    long most = limits.suctionLongest().nanos();
    long since = now - moment.segment().startNanos();
    boolean over = since >= most;
    String text =
        say(
            over ? "suction.strip.over" : "suction.strip",
            since / 1_000_000_000L,
            Phrases.seconds(most));
    strip = Optional.of(new Strip(Sign.SUCTION, text, Math.min(1, (double) since / most), over));
  }

  private static LiveFace.Cells cells(long since, long most, long least) {
    int of = (int) Math.max(1, Math.round(most / 1e9));
    int done = (int) Math.max(0, Math.min(of, since / 1_000_000_000L));
    int from = (int) Math.round(least / 1e9);
    return new LiveFace.Cells(
        done,
        of,
        from,
        from > 0 ? say("cells.least", from) : "",
        say("cells.most", Phrases.seconds(most)));
  }

  private void paused() {
    word = say("word.paused");
    strip = Optional.of(new Strip(Sign.PAUSE, say("paused.strip"), 0, false));
    vessel = Optional.of(new Vessel.Hatched());
    ribbon = false;
    List<Breath> breaths = state.breaths();
    int judged = 0;
    int good = 0;
    for (int i = 1; i < breaths.size(); i++) {
      Judgement judgement = LiveMarks.judge(schedule, breaths, i);
      judged += judgement == Judgement.UNJUDGED ? 0 : 1;
      good += judgement == Judgement.IN_RANGE ? 1 : 0;
    }
    if (judged > 0 && !isTest(state)) {
      beside.add(new Line(say("paused.so-far"), 16, false, true));
      beside.add(new Line(say("paused.range", good, judged), 32, true, false));
      beside.add(new Line(say("paused.in-range"), 16, false, true));
    }
  }

  /** How the last breath came, until it is old; compressions of a cycle as a rate. */
  private Optional<Feedback> feedback() {
    Optional<BreathPlan> plan = guidance.rhythm().steadyBreaths();
    if (!plan.isPresent()) {
      return compressions();
    }
    List<Breath> breaths = state.breaths();
    OptionalLong last = state.lastIntervalNanos();
    if (!last.isPresent() || breaths.isEmpty()) {
      return Optional.empty();
    }
    long since = now - breaths.get(breaths.size() - 1).startNanos();
    if (since > plan.get().range().high() * 1e9) {
      return Optional.empty();
    }
    if (plan.get().interval().seconds() < SHORT_SECONDS) {
      return shortBreaths(plan.get(), breaths);
    }
    Judgement judgement = plan.get().judge(last.getAsLong());
    return told(
        judgement,
        "feedback." + judgement.name().toLowerCase(Locale.ROOT),
        say("value.seconds", Quantities.decimals(last.getAsLong() / 1e9, 1)));
  }

  private Optional<Feedback> shortBreaths(BreathPlan plan, List<Breath> breaths) {
    int first = Math.max(0, breaths.size() - 1 - SHORT_BREATHS);
    long from = breaths.get(first).startNanos();
    long to = breaths.get(breaths.size() - 1).startNanos();
    if (!schedule.unbroken(from, to)) {
      return Optional.empty();
    }
    double perMinute = 60e9 * (breaths.size() - 1 - first) / (to - from);
    Judgement judgement = plan.judgeRate(perMinute);
    return told(
        judgement,
        "feedback.rate." + judgement.name().toLowerCase(Locale.ROOT),
        say("value.rate", Math.round(perMinute)));
  }

  private Optional<Feedback> compressions() {
    OptionalDouble rate = CompressionView.rate(state, now);
    if (!rate.isPresent()) {
      return Optional.empty();
    }
    Judgement judgement =
        guidance.rhythm().compressions().orElseThrow().judgeRate(rate.getAsDouble());
    long shown = Math.round(guidance.rhythm().compressionShare() * rate.getAsDouble());
    return told(
        judgement,
        "feedback.rate." + judgement.name().toLowerCase(Locale.ROOT),
        say("value.rate", shown));
  }

  private static Optional<Feedback> told(Judgement judgement, String key, String value) {
    return judgement == Judgement.UNJUDGED
        ? Optional.empty()
        : Optional.of(new Feedback(judgement, say(key), value));
  }

  /** What comes next: a check, or the end. */
  private Strip next() {
    OptionalLong due = schedule.nextPulseCheckAt(now);
    String kind = inForce.check().name().toLowerCase(Locale.ROOT).replace('_', '-');
    if (!due.isPresent()) {
      OptionalLong end = schedule.endNanos();
      String text =
          end.isPresent()
              ? say("next.end", Phrases.clockLeft(end.getAsLong() - now))
              : say("next.none");
      return new Strip(Sign.CLOCK, text, 0, false);
    }
    long left = due.getAsLong() - now;
    String key = inForce.changesCompressors() ? "next.switch" : "next." + kind;
    if (left <= 0) {
      return new Strip(Sign.CHECK, say("next.overdue." + kind, Quantities.clock(-left)), 1, true);
    }
    double used = 1 - (double) left / limits.pulseCheckEvery().nanos();
    boolean soon = left <= limits.pulseCheckNotice().nanos();
    return new Strip(Sign.CHECK, say(key, Phrases.clockLeft(left)), Math.max(0, used), soon);
  }
}
