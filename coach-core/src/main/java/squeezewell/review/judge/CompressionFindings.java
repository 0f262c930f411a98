package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Rhythm;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.MeasureCompressions;
import squeezewell.review.say.Words;

/**
 * Findings about compressions. The limits are the protocol's; how much has to be off before it is
 * told is our own choice.
 */
final class CompressionFindings {
  /** With fewer compressions nothing is said about them. */
  private static final int FEWEST = 10;

  /** Cycles may be off up to this share. */
  private static final double MOST_OFF = 0.2;

  /** Below this share of intervals in range the rate is not praised, whatever its mean. */
  private static final double MOSTLY = 0.5;

  private final Compressions done;
  private final CompressionPlan plan;
  private final Optional<Rhythm.CompressionCycle> cycle;
  private final int breaths;
  private final PatientGroup patient;

  private CompressionFindings(Facts facts, Compressions done, CompressionPlan plan) {
    this.done = done;
    this.plan = plan;
    cycle = MeasureCompressions.cycleOf(facts.practice());
    breaths = facts.metrics().breathCount();
    patient = facts.practice().guidance().patient();
  }

  static List<Ranked> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    Optional<CompressionPlan> plan = facts.practice().guidance().rhythm().compressions();
    if (plan.isPresent()) {
      Compressions done = facts.metrics().compressions().get();
      new CompressionFindings(facts, done, plan.get()).addTo(found);
    }
    return found;
  }

  private void addTo(List<Ranked> found) {
    if (done.count() == 0) {
      found.add(missing());
    }
    if (done.count() < FEWEST) {
      return;
    }
    addRate(found);
    addPauses(found);
    cycle.ifPresent(c -> addCycles(found, c));
    boolean noPause = cycle.isPresent() || done.pauseCount() == 0;
    // The mean of intervals that are too short and too long by turns may well be in range.
    boolean mostly = done.inRangeFraction().orElse(0) >= MOSTLY;
    if (found.isEmpty() && noPause && mostly && done.ratePerMinute().isPresent()) {
      found.add(good());
    }
  }

  private static Ranked missing() {
    return Ranked.advice(
        Ranked.COMPRESSIONS_MISSING,
        "compressions-missing",
        "No compression was recorded",
        "This rhythm asks for compressions, but none was recorded. If somebody did compress, tell"
            + " the program of each one, so that rate and pauses can be judged too.");
  }

  private void addRate(List<Ranked> found) {
    double rate = done.ratePerMinute().orElse(plan.tempo().perMinute());
    Judgement judgement = plan.judgeRate(rate);
    String text =
        "You compressed "
            + Words.decimalBeside(rate, plan.limitPerMinute(judgement))
            + " times a minute, pauses not counted; asked was "
            + Words.range(plan)
            + ".";
    if (judgement == Judgement.FAST) {
      found.add(
          Ranked.fault(
              Ranked.COMPRESS_TOO_FAST,
              "compress-too-fast",
              "Compressions too fast",
              text
                  + " Too fast, and the heart has too little time to fill (JAMA Cardiology 2019)."
                  + " Next time compress with the sound."));
    } else if (judgement == Judgement.SLOW) {
      found.add(
          Ranked.fault(
              Ranked.COMPRESS_TOO_SLOW,
              "compress-too-slow",
              "Compressions too slow",
              text
                  + " Too slow, and too little blood flows (JAMA Cardiology 2019). Next time"
                  + " compress with the sound."));
    }
  }

  private void addPauses(List<Ranked> found) {
    if (done.overLimitPauses() == 0) {
      return;
    }
    found.add(
        Ranked.fault(
            Ranked.PAUSE_LONG,
            "pause-too-long",
            "Pauses in the compressions too long",
            Words.count(done.overLimitPauses(), "pause")
                + " of "
                + done.pauseCount()
                + (done.overLimitPauses() == 1 ? " was" : " were")
                + " too long, the longest "
                + Words.secondsBeside(
                    done.longestPauseSeconds().getAsDouble(),
                    done.pauseLimitSeconds().getAsDouble())
                + "; at most "
                + Words.seconds(done.pauseLimitSeconds().getAsDouble())
                + " was asked. Hardly any blood flows while nobody compresses (basic life support)."
                + " Next time have the mask ready before the last compression."));
  }

  private void addCycles(List<Ranked> found, Rhythm.CompressionCycle asked) {
    int few = count(c -> c.breaths() < asked.breathsPerCycle());
    // Without any breath there is a finding that says so.
    if (breaths > 0 && few > MOST_OFF * done.cycles().size()) {
      found.add(
          Ranked.fault(
              Ranked.BREATHS_MISSING,
              "breaths-missing",
              "Breaths missing in the pauses",
              few
                  + " of "
                  + Words.count(done.cycles().size(), "pause")
                  + " had fewer than "
                  + Words.count(asked.breathsPerCycle(), "breath")
                  + ". A pause without its breaths costs blood flow and brings no air"
                  + whyBreaths()
                  + ". Next time seal the mask before the pause begins."));
    }
    int off = count(c -> c.compressions() != asked.perCycle());
    if (off > MOST_OFF * done.cycles().size()) {
      found.add(
          Ranked.advice(
              Ranked.WRONG_NUMBER,
              "wrong-number",
              "Not the number of compressions asked for",
              off
                  + " of "
                  + Words.count(done.cycles().size(), "cycle")
                  + " did not have "
                  + Words.count(asked.perCycle(), "compression")
                  + ". Count aloud, so that the one who breathes is ready."));
    }
  }

  private String whyBreaths() {
    switch (patient) {
      case ADULT:
        return "; where breaths went in, more hearts started again (adults, Circulation 2023)";
      case NEWBORN:
        return "; in a newborn the breaths matter most (newborn life support)";
      default:
        return "; most arrests in children begin with too little oxygen (J Emerg Trauma Shock"
            + " 2010)";
    }
  }

  private int count(Predicate<Compressions.Cycle> which) {
    return (int) done.cycles().stream().filter(which).count();
  }

  private Ranked good() {
    String cycles =
        done.cycles().isEmpty()
            ? ""
            : " "
                + done.goodCycles()
                + " of "
                + Words.count(done.cycles().size(), "cycle")
                + (done.cycles().size() == 1 ? " was" : " were")
                + " just as asked.";
    return Ranked.good(
        0,
        "compressions-good",
        "Compressions at the right rate",
        "You compressed "
            + Words.decimal(plan.asRead(done.ratePerMinute().getAsDouble()))
            + " times a minute; asked was "
            + Words.range(plan)
            + "."
            + cycles);
  }
}
