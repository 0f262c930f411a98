package squeezewell.cue;

import java.math.BigDecimal;
import java.util.Optional;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientState;

/**
 * Where findings have led so far: what is known of the patient, and which guidance follows from it.
 * The live practice and the review walk the same course. Immutable.
 */
public final class PatientCourse {
  private final PracticePlan plan;
  private final PatientState state;
  private final Guidance guidance;
  private final CareKind care;
  private final Optional<PatientCourse> before;

  private PatientCourse(
      PracticePlan plan,
      PatientState state,
      Guidance guidance,
      CareKind care,
      Optional<PatientCourse> before) {
    this.plan = plan;
    this.state = state;
    this.guidance = guidance;
    this.care = care;
    this.before = before;
  }

  /** The course of a practice in which nothing was found yet. */
  public static PatientCourse of(PracticePlan plan) {
    Guidance guidance = plan.guidance();
    PatientState state = PatientState.of(guidance.patient(), guidance.situation());
    return new PatientCourse(plan, state, guidance, CareKind.of(guidance), Optional.empty());
  }

  /**
   * The course once that was found. Where the edition has no rhythm for it, the one in force stays,
   * but compressions stop where the chest need not be compressed; {@link #covered()} tells.
   */
  public PatientCourse after(PatientChange finding) {
    PatientState next = state.after(finding);
    // The rhythm that was chosen stays while the patient's state calls for nothing else.
    // Who breathes well is checked as one with a pulse, never as one who is compressed.
    PatientState needs = next.watching() ? next.after(PatientChange.BREATHING_STOPPED) : next;
    boolean stays = next.equals(state) || (next.watching() && !compresses(guidance));
    Guidance found = stays ? guidance : plan.guidanceFor(needs).orElse(guidance);
    // Nobody with a pulse is compressed, not even for want of a rhythm: rather no prompts at all.
    boolean wrong = !next.arrest() && compresses(found);
    CareKind needed = wrong ? CareKind.BREATHE_NO_RATE : CareKind.of(found);
    return new PatientCourse(
        plan, next, found, next.watching() ? CareKind.WATCH : needed, Optional.of(this));
  }

  private static boolean compresses(Guidance guidance) {
    return guidance.rhythm().compressions().isPresent();
  }

  /** The course before the last finding; this one if there was none. */
  public PatientCourse undone() {
    return before.orElse(this);
  }

  /** What is known of the patient. */
  public PatientState state() {
    return state;
  }

  /** The guidance that is, or was last, in force. */
  public Guidance guidance() {
    return guidance;
  }

  /** What is done for the patient. */
  public CareKind care() {
    return care;
  }

  /** Whether the edition has a rhythm for what is known of the patient. */
  public boolean covered() {
    return state.watching()
        || (care.prompted() && state.situations().contains(guidance.situation()));
  }

  /** Whether the chest is compressed on while the airway is cleared. */
  public boolean compressesDuringSuction() {
    return care.prompted() && guidance.compressesDuringSuction(plan.rescuers());
  }

  /** What to do about a finding that led here, for this patient and with these limits. */
  public String advice(PatientChange finding) {
    String advice = finding.advice(state.patient());
    if (finding != PatientChange.VOMIT) {
      return advice;
    }
    BigDecimal seconds = BigDecimal.valueOf(guidance.limits().suctionLongest().nanos(), 9);
    return advice
        + " At most "
        + seconds.stripTrailingZeros().toPlainString()
        + " s."
        + (compressesDuringSuction() ? " Compressions go on; breaths wait." : "");
  }

  /** How it changes the prompts to go on from another course to this one; empty if it does not. */
  public Optional<Control> controlFrom(PatientCourse other, long atNanos) {
    if (care == other.care && guidance.equals(other.guidance)) {
      return Optional.empty();
    }
    return Optional.of(
        switch (care) {
          case WATCH -> Control.watch(atNanos, guidance);
          case BREATHE_NO_RATE -> Control.noRate(atNanos, guidance);
          case BREATHE, COMPRESS -> Control.change(atNanos, guidance);
        });
  }
}
