package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;

/**
 * What is said first of a trainee with one fault, or with two, in every kind of rhythm. The trainee
 * is drawn here, knowing nothing of the review: intervals with the spread of a skilled human, a
 * squeeze of about the right length, a check when it is due. What ought to be said first is what an
 * instructor would say, and not what the program said. With {@code -Dsqueezewell.verdictRuns=100}
 * each row is run a hundred times; the table goes to {@code target/verdicts.txt} too.
 */
class VerdictTableTest {
  private static final int RUNS = Integer.getInteger("squeezewell.verdictRuns", 20);
  private static final double LEAST_RIGHT = 0.95;
  private static final double LEAST_CLEAN = 0.99;
  private static final double CHECK_AT = 120;

  /** A rhythm of breaths: the interval asked for and its range, in seconds, as published. */
  private record Breaths(
      String name,
      String edition,
      PatientGroup patient,
      Situation situation,
      double target,
      double low,
      double high,
      double squeeze,
      double seconds) {}

  /**
   * AHA 2025: one breath every 6 s, sixth either side; AHA 2020: 2 to 3 s; ERC 2021: 25 a minute.
   */
  private static final List<Breaths> BREATHING =
      List.of(
          new Breaths(
              "adult",
              "aha-2025",
              PatientGroup.ADULT,
              Situation.PULSE_NO_BREATHING,
              6,
              5,
              7,
              1,
              229),
          new Breaths(
              "child",
              "aha-2020",
              PatientGroup.CHILD,
              Situation.PULSE_NO_BREATHING,
              2.5,
              2,
              3,
              1,
              229),
          new Breaths(
              "infant",
              "erc-2021",
              PatientGroup.INFANT,
              Situation.PULSE_NO_BREATHING,
              2.4,
              2,
              2.8,
              1,
              229),
          new Breaths(
              "newborn",
              "aha-2025",
              PatientGroup.NEWBORN,
              Situation.NEWBORN_VENTILATION,
              1.5,
              1,
              2,
              0.5,
              29));

  /** A rhythm of cycles: compressions, breaths, beats a minute, pause and its limit in seconds. */
  private record Cycles(
      String name,
      String edition,
      PatientGroup patient,
      int compressions,
      int breaths,
      double beat,
      double pause,
      double tooLong,
      double squeeze,
      double seconds) {}

  private static final List<Cycles> CYCLING =
      List.of(
          new Cycles("30:2", "aha-2025", PatientGroup.ADULT, 30, 2, 110, 5, 14, 1, 115),
          new Cycles("15:2", "erc-2021", PatientGroup.CHILD, 15, 2, 110, 5, 14, 1, 115),
          new Cycles("3:1", "aha-2025", PatientGroup.NEWBORN, 3, 1, 120, 1, 3, 0.4, 55));

  private final Map<String, String> lines = new TreeMap<>();
  private final List<String> wrong = new ArrayList<>();

  /** How breaths come: the next interval, given how many there were and when. */
  private interface Next {
    double after(int count, double at, Random chance);
  }

  /** A trainee of breaths; changed by faults. */
  private static final class Trainee {
    private final Breaths rhythm;
    private Next next;
    private double squeeze;
    private double lag;
    private double seconds;
    private double checkAt = CHECK_AT;
    private double checkFor = 7;

    Trainee(Breaths rhythm) {
      this.rhythm = rhythm;
      squeeze = rhythm.squeeze();
      seconds = rhythm.seconds();
      double spread = Math.min(0.4, 0.06 * rhythm.target());
      next = (n, at, chance) -> rhythm.target() + spread * chance.nextGaussian();
    }

    Review review(long seed) {
      Random chance = new Random(seed);
      Protocol edition = TestPlans.edition(rhythm.edition());
      SessionBuilder session =
          SessionBuilder.ofSeconds(seconds).by(edition, rhythm.patient()).in(rhythm.situation());
      double at = Math.max(0, lag + 0.1 * chance.nextGaussian());
      boolean checked = checkAt <= 0 || checkAt > seconds;
      for (int n = 0; at < seconds - rhythm.squeeze(); n++) {
        double length = Math.max(0.1, squeeze * (1 + 0.06 * chance.nextGaussian()));
        session.squeeze(at, length, "");
        double interval = Math.max(1.05 * length, next.after(n, at, chance));
        if (!checked && at + interval > checkAt) {
          double from = Math.max(checkAt, at + length + 0.1);
          session.pulseCheck(from, from + checkFor);
          at = from + checkFor + 0.2 + Math.max(0, lag);
          checked = true;
        } else {
          at += interval;
        }
      }
      return session.review();
    }
  }

  private static Next around(double mean, double sd) {
    return (n, at, chance) -> mean + sd * chance.nextGaussian();
  }

  /** Follows the beat itself and not the breath before, off by a spread. */
  private static Next onBeat(Breaths r, double lag) {
    double spread = 0.03 * r.target();
    return (n, at, chance) -> {
      double beats = Math.round((at - lag) / r.target()) + 1;
      return beats * r.target() + lag + spread * chance.nextGaussian() - at;
    };
  }

  private static Map<String, Consumer<Trainee>> breathFaults(Breaths r) {
    double width = r.high() - r.low();
    double steady = 0.03 * r.target();
    // Of 18 s, or of seven breaths.
    int burst = 8 + (r.seconds() > CHECK_AT ? (int) Math.ceil(18 / (0.62 * r.low())) : 7);
    Map<String, Consumer<Trainee>> faults = new TreeMap<>();
    faults.put("fast=too-fast", t -> t.next = around(0.8 * r.low(), steady));
    faults.put("very fast=too-fast", t -> t.next = around(0.6 * r.low(), steady));
    faults.put("a little fast=a-little-fast", t -> t.next = around(0.9985 * r.low(), 0.0005));
    faults.put("slow=too-slow", t -> t.next = around(1.25 * r.high(), steady));
    faults.put("a little slow=a-little-slow", t -> t.next = around(1.01 * r.high(), 0.001));
    faults.put(
        "uneven=rhythm-uneven",
        t -> {
          // Fewer than some twenty intervals do not show it.
          t.seconds = Math.max(t.seconds, 59);
          t.next =
              (n, at, c) -> Math.max(0.75 * r.low(), r.target() + 0.9 * width * c.nextGaussian());
        });
    faults.put(
        "in turns=rhythm-uneven",
        t -> t.next = (n, at, c) -> n % 2 == 0 ? 0.8 * r.low() : 1.15 * r.high());
    faults.put(
        "burst=fast-burst",
        t -> {
          Next usual = t.next;
          t.next = (n, at, c) -> n >= 8 && n < burst ? 0.62 * r.low() : usual.after(n, at, c);
        });
    faults.put("short squeeze=short-squeeze", t -> t.squeeze = 0.35 * r.squeeze());
    if (r.squeeze() * 1.8 < r.low()) {
      faults.put("long squeeze=long-squeeze", t -> t.squeeze = 1.75 * r.squeeze());
    }
    if (r.patient() == PatientGroup.ADULT) {
      faults.put(
          "double=double-breaths",
          t -> t.next = (n, at, c) -> (n % 2 == 0 ? 1.2 : 4.8) + 0.05 * c.nextGaussian());
      faults.put(
          "double, slowly=double-breaths",
          t -> t.next = (n, at, c) -> (n % 2 == 0 ? 1.4 : 10) + 0.1 * c.nextGaussian());
      faults.put(
          "leaves out breaths=missed-prompts",
          t -> {
            t.seconds = CHECK_AT - 5;
            Next beat = onBeat(r, 0.1);
            t.next = (n, at, c) -> beat.after(n, at, c) + (n % 5 == 4 ? r.target() : 0);
          });
    }
    if (r.seconds() > CHECK_AT) {
      double wait = 6 * r.target();
      faults.put(
          "gap=long-gap",
          t -> {
            Next usual = t.next;
            t.next = (n, at, c) -> n == 9 ? wait : usual.after(n, at, c);
          });
      faults.put(
          "two gaps=long-gap",
          t -> {
            Next usual = t.next;
            t.next = (n, at, c) -> n == 5 || n == 14 ? wait : usual.after(n, at, c);
          });
      faults.put(
          "slows down=slowed-down",
          t ->
              t.next =
                  (n, at, c) ->
                      r.target() * (1 + 0.5 * at / r.seconds()) + steady * c.nextGaussian());
      faults.put(
          "speeds up=sped-up",
          t ->
              t.next =
                  (n, at, c) ->
                      r.high()
                          - (r.high() - 0.92 * r.low()) * at / r.seconds()
                          + steady * c.nextGaussian());
      faults.put("no check=pulse-check-missed", t -> t.checkAt = 1_000);
      faults.put("late check=pulse-check-late", t -> t.checkAt = CHECK_AT + 40);
      faults.put("long check=pulse-check-long", t -> t.checkFor = 18);
      faults.put("short check=pulse-check-short", t -> t.checkFor = 2.5);
      faults.put("behind the beat=late", t -> beside(t, Math.max(0.7, 0.25 * r.target())));
    }
    return faults;
  }

  private static void beside(Trainee trainee, double lag) {
    trainee.lag = lag;
    trainee.next = onBeat(trainee.rhythm, lag);
    trainee.seconds = CHECK_AT - 5;
  }

  /** Two faults at once: the first named is told first. */
  private static final List<String> PAIRS =
      List.of(
          "fast=too-fast + long check",
          "fast=too-fast + short squeeze",
          "slow=too-slow + no check",
          "uneven=rhythm-uneven + short squeeze",
          "in turns=rhythm-uneven + late check",
          "gap=long-gap + short squeeze",
          "gap=long-gap + long check",
          "burst=fast-burst + late check",
          "a little fast=a-little-fast + no check",
          "no check=pulse-check-missed + short squeeze",
          "long check=pulse-check-long + short squeeze");

  @Test
  void whatIsSaidFirstIsWhatAnInstructorWouldSay() throws IOException {
    for (Breaths rhythm : BREATHING) {
      Map<String, Consumer<Trainee>> faults = breathFaults(rhythm);
      clean(rhythm.name(), seed -> new Trainee(rhythm).review(seed));
      faults.forEach(
          (name, fault) ->
              first(
                  rhythm.name(),
                  name,
                  seed -> {
                    Trainee trainee = new Trainee(rhythm);
                    fault.accept(trainee);
                    return trainee.review(seed);
                  }));
      for (String pair : PAIRS) {
        String[] both = pair.split(" \\+ ", -1);
        String second =
            faults.keySet().stream()
                .filter(f -> f.startsWith(both[1] + "="))
                .findFirst()
                .orElse("");
        if (faults.containsKey(both[0]) && !second.isEmpty()) {
          first(
              rhythm.name(),
              pair,
              seed -> {
                Trainee trainee = new Trainee(rhythm);
                faults.get(both[0]).accept(trainee);
                faults.get(second).accept(trainee);
                return trainee.review(seed);
              });
        }
      }
    }
    for (Cycles rhythm : CYCLING) {
      cycles(rhythm);
    }
    continuous();
    StringBuilder table = new StringBuilder();
    lines.forEach((name, line) -> table.append(line).append('\n'));
    System.out.print(table);
    Path file = Paths.get("target", "verdicts.txt");
    Files.createDirectories(file.getParent());
    Files.write(file, table.toString().getBytes(StandardCharsets.UTF_8));
    assertThat(lines).hasSizeGreaterThan(30);
    assertThat(wrong).isEmpty();
  }

  private void cycles(Cycles r) {
    clean(r.name(), seed -> cpr(r, r.compressions(), r.breaths(), r.beat(), r.pause(), 0, seed));
    // Begun late, at either end of the range, with a long pause within the limit.
    clean(
        r.name() + " begun late",
        seed -> cpr(r, r.compressions(), r.breaths(), r.beat(), r.pause(), 2.5, seed));
    double fast = r.beat() == 120 ? 132 : 117;
    double slow = r.beat() == 120 ? 108 : 103;
    clean(
        r.name() + " quick",
        seed -> cpr(r, r.compressions(), r.breaths(), fast, r.pause(), 0, seed));
    clean(
        r.name() + " slow",
        seed -> cpr(r, r.compressions(), r.breaths(), slow, r.pause(), 0, seed));
    first(
        r.name(),
        "compresses fast=compress-too-fast",
        seed -> cpr(r, r.compressions(), r.breaths(), 1.3 * r.beat(), r.pause(), 0, seed));
    first(
        r.name(),
        "compresses slowly=compress-too-slow",
        seed -> cpr(r, r.compressions(), r.breaths(), 0.72 * r.beat(), r.pause(), 0, seed));
    first(
        r.name(),
        "too many=wrong-number",
        seed ->
            cpr(
                r,
                Math.max(r.compressions() + 2, (int) (1.15 * r.compressions())),
                r.breaths(),
                r.beat(),
                r.pause(),
                0,
                seed));
    first(
        r.name(),
        "long pauses=pause-too-long",
        seed -> cpr(r, r.compressions(), r.breaths(), r.beat(), r.tooLong(), 0, seed));
    if (r.breaths() > 1) {
      first(
          r.name(),
          "one breath=breaths-missing",
          seed -> cpr(r, r.compressions(), 1, r.beat(), r.pause(), 0, seed));
      first(
          r.name(),
          "one breath=breaths-missing + too many",
          seed -> cpr(r, r.compressions() + 5, 1, r.beat(), r.pause(), 0, seed));
    }
    first(
        r.name(),
        "long pauses=pause-too-long + compresses fast",
        seed -> cpr(r, r.compressions(), r.breaths(), 1.3 * r.beat(), r.tooLong(), 0, seed));
    first(
        r.name(),
        "no breath=no-breaths",
        seed -> cpr(r, r.compressions(), 0, r.beat(), r.pause(), 0, seed));
  }

  /** Cycles by hand: so many compressions at that beat, a pause with the breaths in it. */
  private static Review cpr(
      Cycles r, int compressions, int breaths, double beat, double pause, double from, long seed) {
    Random chance = new Random(seed);
    SessionBuilder session =
        SessionBuilder.ofSeconds(r.seconds())
            .by(TestPlans.edition(r.edition()), r.patient())
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    double period = 60 / beat;
    double at = from + 0.1;
    while (at + compressions * period + pause < r.seconds()) {
      for (int k = 0; k < compressions; k++) {
        session.compressions(1, at, 1);
        at += period * (k == compressions - 1 ? 0 : 1 + 0.02 * chance.nextGaussian());
      }
      double gap = pause * (1 + 0.05 * chance.nextGaussian());
      for (int k = 0; k < breaths; k++) {
        session.squeeze(at + gap * (k + 0.35) / (breaths + 0.2), r.squeeze(), "");
      }
      at += gap;
    }
    return session.review();
  }

  /** Advanced airway, AHA 2025: a breath every 6 s, 100 to 120 compressions a minute. */
  private void continuous() {
    clean("continuous", seed -> both(6, 0.3, 110, seed));
    first("continuous", "breathes fast=too-fast", seed -> both(3, 0.2, 110, seed));
    first("continuous", "breathes slowly=too-slow", seed -> both(10, 0.3, 110, seed));
    first("continuous", "breathes unevenly=rhythm-uneven", seed -> both(6, 1.9, 110, seed));
    first("continuous", "compresses fast=compress-too-fast", seed -> both(6, 0.3, 140, seed));
    first("continuous", "compresses slowly=compress-too-slow", seed -> both(6, 0.3, 82, seed));
    first(
        "continuous", "breathes fast=too-fast + compresses fast", seed -> both(3, 0.2, 140, seed));
  }

  private static Review both(double interval, double sd, double beat, long seed) {
    Random chance = new Random(seed);
    SessionBuilder session =
        SessionBuilder.ofSeconds(115)
            .by(TestPlans.edition("aha-2025"), PatientGroup.ADULT)
            .in(Situation.ARREST_ADVANCED_AIRWAY);
    for (double at = 0.1; at < 114; at += 60 / beat * (1 + 0.02 * chance.nextGaussian())) {
      session.compressions(1, at, 1);
    }
    for (double at = 0.3; at < 113; at += Math.max(1.5, interval + sd * chance.nextGaussian())) {
      session.squeeze(at, 1, "");
    }
    return session.review();
  }

  private interface Run {
    Review of(long seed);
  }

  private void first(String rhythm, String name, Run run) {
    String expected = name.split("=", -1)[1].split(" ", -1)[0];
    Map<String, Integer> firsts = new TreeMap<>();
    for (long seed = 1; seed <= RUNS; seed++) {
      firsts.merge(run.of(seed).findings().get(0).code(), 1, Integer::sum);
    }
    add(
        rhythm,
        name.replaceFirst("=\\S+", ""),
        expected,
        firsts.getOrDefault(expected, 0),
        LEAST_RIGHT,
        firsts.toString());
  }

  private void clean(String rhythm, Run run) {
    int clean = 0;
    Map<String, Integer> faults = new TreeMap<>();
    for (long seed = 1; seed <= RUNS; seed++) {
      List<Feedback> findings = run.of(seed).findings();
      findings.stream()
          .filter(f -> f.severity() == Severity.FAULT)
          .forEach(f -> faults.merge(f.code(), 1, Integer::sum));
      clean += findings.stream().noneMatch(f -> f.severity() == Severity.FAULT) ? 1 : 0;
    }
    add(rhythm, "sound", "no fault", clean, LEAST_CLEAN, faults.toString());
  }

  private void add(
      String rhythm, String fault, String expected, int right, double least, String told) {
    String line =
        String.format(
            Locale.ROOT,
            "%-18s %-42s %-20s %3d of %d  %s",
            rhythm,
            fault,
            expected,
            right,
            RUNS,
            told);
    lines.put(rhythm + " " + fault, line);
    if (right < least * RUNS) {
      wrong.add(line);
    }
  }

  /** All that may be told is told somewhere in the table, or stands here with the reason. */
  @Test
  void theRowsNameDifferentFaults() {
    Set<String> expected = new java.util.TreeSet<>();
    breathFaults(BREATHING.get(0)).keySet().forEach(k -> expected.add(k.split("=", -1)[1]));
    assertThat(expected).hasSizeGreaterThanOrEqualTo(17);
    assertThat(Arrays.asList("too-fast", "double-breaths", "rhythm-uneven"))
        .allMatch(expected::contains);
  }
}
