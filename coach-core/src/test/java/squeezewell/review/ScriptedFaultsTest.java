package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.Tries;
import squeezewell.coach.Coach;
import squeezewell.coach.ScriptedFinding;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * Made-up trainees with one fault each, through practices in which something is found: the first
 * finding must still name the fault. Scripts, faults and the share that must be right are our own.
 */
class ScriptedFaultsTest {
  private static final int SEEDS = Tries.orLong(40, 100);
  private static final int FEWEST_RIGHT = Tries.orLong(38, 95);
  private static final String LOST_BACK = "pulse lost 2:00, back 3:30";
  private static final String SLOW_STOPPED = "slow 0:50, stopped 2:00";
  private static final Protocol EDITION = TestPlans.edition("aha-2025");
  private static final Map<String, List<ScriptedFinding>> SCRIPTS = scripts();

  private static Map<String, List<ScriptedFinding>> scripts() {
    Map<String, List<ScriptedFinding>> scripts = new LinkedHashMap<>();
    scripts.put(
        LOST_BACK, List.of(at(120, PatientChange.PULSE_LOST), at(210, PatientChange.PULSE_BACK)));
    scripts.put(
        SLOW_STOPPED,
        List.of(at(50, PatientChange.BREATHING_SLOW), at(120, PatientChange.BREATHING_STOPPED)));
    scripts.put("vomit 1:00", List.of(at(60, PatientChange.VOMIT)));
    return scripts;
  }

  private static Map<TraineeFault, Set<String>> codes(String script) {
    Map<TraineeFault, Set<String>> codes = new LinkedHashMap<>();
    codes.put(TraineeFault.FAST, Set.of("too-fast"));
    // What slows down over a whole practice is too slow in its last part.
    codes.put(TraineeFault.SLOWS, Set.of("slowed-down", "too-slow"));
    codes.put(TraineeFault.SKIPS, Set.of("missed-prompts"));
    codes.put(TraineeFault.LONG_PAUSES, Set.of("long-gap"));
    // The two minutes begin anew at each change, so that no check falls due: nothing is late.
    codes.put(
        TraineeFault.LATE_CHECK,
        Set.of(script.equals(LOST_BACK) ? "rhythm-even" : "pulse-check-late"));
    codes.put(TraineeFault.SHORT_SQUEEZE, Set.of("short-squeeze"));
    codes.put(TraineeFault.ANTICIPATES, Set.of("anticipates"));
    // About 5 s where 5 to 7 s is in range.
    codes.put(TraineeFault.OWN_TEMPO, Set.of("a-little-fast", "own-tempo"));
    return codes;
  }

  @Test
  void theFirstFindingNamesTheFaultWhateverIsFound() {
    StringBuilder table = new StringBuilder();
    Map<String, Integer> right = new LinkedHashMap<>();
    SCRIPTS.forEach(
        (name, script) ->
            codes(name)
                .forEach(
                    (fault, codes) -> {
                      Map<String, Integer> firsts = new HashMap<>();
                      int good = 0;
                      for (int seed = 0; seed < SEEDS; seed++) {
                        List<Feedback> findings = review(seed, fault, script).findings();
                        String first = findings.get(0).code();
                        firsts.merge(first, 1, Integer::sum);
                        boolean named = findings.stream().anyMatch(f -> codes.contains(f.code()));
                        good += named && isFirst(first, codes, name, fault) ? 1 : 0;
                      }
                      right.put(name + ", " + fault.id(), good);
                      table.append(
                          String.format(
                              Locale.ROOT,
                              "%-27s %-14s %3d of %d  %s%n",
                              name,
                              fault.id(),
                              good,
                              SEEDS,
                              firsts));
                    }));
    System.out.print(table);
    assertThat(right).allSatisfy((k, n) -> assertThat(n).isGreaterThanOrEqualTo(FEWEST_RIGHT));
  }

  /** A breath every so often, whatever is asked, leaves the pauses of 30:2 without theirs. */
  private static boolean isFirst(
      String first, Set<String> codes, String script, TraineeFault fault) {
    boolean ownTime = fault == TraineeFault.SLOWS || fault == TraineeFault.OWN_TEMPO;
    return codes.contains(first)
        || (script.equals(LOST_BACK) && ownTime && first.equals("breaths-missing"));
  }

  @Test
  void theFirstFindingSaysWhere() {
    List<ScriptedFinding> script = SCRIPTS.get(LOST_BACK);
    assertThat(review(1, TraineeFault.OWN_TEMPO, script).findings().get(0).title())
        .isEqualTo("Breaths missing in the pauses, 2:00 to 3:30");
    assertThat(review(1, TraineeFault.SKIPS, script).findings().get(0).title())
        .startsWith("Prompts were missed");
    Feedback fast = review(1, TraineeFault.FAST, script).findings().get(0);
    assertThat(fast.title()).matches("Too fast, before 2:0\\d and after 3:3\\d");
    assertThat(fast.text()).contains("From 3:3");
  }

  @Test
  void aSoundTraineeHasNoFaultWhateverIsFound() {
    SCRIPTS.forEach(
        (name, script) -> {
          int clean = 0;
          Map<String, Integer> others = new HashMap<>();
          for (int seed = 0; seed < SEEDS; seed++) {
            List<Feedback> findings = review(seed, TraineeFault.NONE, script).findings();
            clean += findings.stream().anyMatch(f -> f.severity() == Severity.FAULT) ? 0 : 1;
            findings.stream()
                .filter(f -> f.severity() != Severity.GOOD)
                .forEach(f -> others.merge(f.code(), 1, Integer::sum));
          }
          System.out.printf(
              Locale.ROOT,
              "%-27s %-14s %3d of %d without a fault %s%n",
              name,
              "none",
              clean,
              SEEDS,
              others);
          assertThat(clean).isGreaterThanOrEqualTo(FEWEST_RIGHT);
        });
  }

  private static ScriptedFinding at(int seconds, PatientChange finding) {
    return new ScriptedFinding(seconds * TestPlans.SECOND, finding);
  }

  private static Review review(long seed, TraineeFault fault, List<ScriptedFinding> script) {
    Guidance guidance =
        EDITION.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2).orElseThrow();
    PracticePlan plan = PracticePlan.of(EDITION, guidance, 0, 300 * TestPlans.SECOND, 0);
    SessionHeader header =
        new SessionHeader(
            TestPlans.header(plan).startedAt(), SessionHeader.Origin.VIRTUAL, "", EDITION, plan);
    Kept journal = new Kept();
    new VirtualTrainee(seed, fault)
        .practise(new Coach(plan, journal, List.of()), new ManualClock(), script);
    return Reviewer.review(new Session(header, journal.events(), List.of()));
  }

  /** Keeps the facts in memory. */
  private record Kept(List<SessionEvent> events) implements Journal {
    Kept() {
      this(new java.util.ArrayList<>());
    }

    @Override
    public void append(SessionEvent event) {
      events.add(event);
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }
}
