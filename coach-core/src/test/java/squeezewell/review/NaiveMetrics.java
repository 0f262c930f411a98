package squeezewell.review;

import static squeezewell.review.MetricFields.NONE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hipparchus.complex.Complex;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.interval.BinomialProportion;
import org.hipparchus.stat.interval.ConfidenceInterval;
import squeezewell.cue.Prompting;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.PatientGroup;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * The figures of a practice with one rhythm, worked out again by their definitions: plainly, second
 * by second and pair by pair, with Hipparchus for what it has. From the review it takes only the
 * marks: breaths, prompts and which belongs to which, holds and silences.
 */
final class NaiveMetrics {
  private static final double SECOND = 1e9;
  private static final double Z95 = 1.959963984540054;
  private static final Pattern LEVEL = Pattern.compile("level (\\d).*");

  private final Session session;
  private final Review review;
  private final long zero;
  private final long start;
  private final long end;
  private final long[] at;
  private final boolean steady;
  private final long low;
  private final long high;
  private final Map<String, Object> figures = new LinkedHashMap<>();

  private NaiveMetrics(Session session, Review review) {
    this.session = session;
    this.review = review;
    zero = Session.zeroNanos(session.header().plan(), session.breaths());
    start = review.startNanos();
    end = review.endNanos();
    at = review.breaths().stream().mapToLong(BreathMark::startNanos).toArray();
    steady = review.asked().lowNanos().isPresent();
    low = review.asked().lowNanos().orElse(0);
    high = review.asked().highNanos().orElse(Long.MAX_VALUE);
  }

  /** All figures by name; what is not known is {@link MetricFields#NONE}. */
  static Map<String, Object> of(Session session, Review review) {
    NaiveMetrics naive = new NaiveMetrics(session, review);
    naive.times();
    naive.intervals();
    naive.burden();
    naive.gaps();
    naive.prompts();
    naive.unprompted();
    naive.squeezes();
    naive.checks();
    naive.suctions();
    naive.others();
    naive.compressions();
    return naive.figures;
  }

  private void put(String name, long value) {
    figures.put(name, (double) value);
  }

  private void put(String name, double value) {
    figures.put(name, value);
  }

  private void put(String name, boolean known, double value) {
    figures.put(name, known ? (Object) value : NONE);
  }

  /** How much of [from, to) is excused, piece by piece. */
  private long excused(long from, long to) {
    TreeSet<Long> cuts = new TreeSet<>(List.of(from, Math.max(from, to)));
    for (Interruption hold : review.holds()) {
      for (long cut : new long[] {hold.startNanos(), hold.startNanos() + hold.excusedNanos()}) {
        if (cut > from && cut < to) {
          cuts.add(cut);
        }
      }
    }
    long sum = 0;
    long before = from;
    for (long cut : cuts) {
      sum += isExcused(before) ? cut - before : 0;
      before = cut;
    }
    return sum;
  }

  private boolean isExcused(long nanos) {
    return review.holds().stream()
        .anyMatch(h -> h.startNanos() <= nanos && nanos < h.startNanos() + h.excusedNanos());
  }

  /** How much of [from, to) lies in holds, piece by piece. */
  private long held(long from, long to) {
    TreeSet<Long> cuts = new TreeSet<>(List.of(from, Math.max(from, to)));
    for (Interruption hold : review.holds()) {
      for (long cut : new long[] {hold.startNanos(), hold.endNanos()}) {
        if (cut > from && cut < to) {
          cuts.add(cut);
        }
      }
    }
    long sum = 0;
    long before = from;
    for (long cut : cuts) {
      long piece = before;
      boolean inHold =
          review.holds().stream().anyMatch(h -> h.startNanos() <= piece && piece < h.endNanos());
      sum += inHold ? cut - before : 0;
      before = cut;
    }
    return sum;
  }

  private boolean silent(long nanos) {
    return review.silences().stream()
        .anyMatch(s -> s.startNanos() <= nanos && nanos < s.endNanos());
  }

  /** From and to of the intervals that count. */
  private List<long[]> valid() {
    List<long[]> valid = new ArrayList<>();
    for (int k = 1; k < at.length && steady; k++) {
      if (held(at[k - 1], at[k]) == 0) {
        valid.add(new long[] {at[k - 1], at[k]});
      }
    }
    return valid;
  }

  private static double[] lengths(List<long[]> intervals) {
    return intervals.stream().mapToDouble(i -> (i[1] - i[0]) / SECOND).toArray();
  }

  private void times() {
    double effective = (end - start - excused(start, end)) / SECOND;
    long outside = Arrays.stream(at).filter(b -> !isExcused(b)).count();
    put("breathCount", at.length);
    put("sessionSeconds", (end - start) / SECOND);
    put("effectiveSeconds", effective);
    put("firstBreathSeconds", at.length > 0, at.length > 0 ? (at[0] - start) / SECOND : 0);
    put("rate.countPerMinute", effective > 0, 60 * outside / effective);
  }

  private static double quantile(double[] sample, double percent) {
    return new Percentile()
        .withEstimationType(Percentile.EstimationType.R_7)
        .evaluate(sample, percent);
  }

  private void sample(String name, double[] sample) {
    boolean any = sample.length > 0;
    put(name + ".meanSeconds", any, StatUtils.mean(sample));
    put(name + ".medianSeconds", any, any ? quantile(sample, 50) : 0);
  }

  private void deviation(String name, double[] sample) {
    put(name, sample.length > 1, new StandardDeviation().evaluate(sample));
  }

  private void score(String lowName, String highName, int successes, int trials) {
    ConfidenceInterval interval =
        trials == 0
            ? null
            : BinomialProportion.getWilsonScoreInterval(trials, (double) successes / trials, 0.95);
    put(lowName, trials > 0, trials > 0 ? Math.max(0, interval.getLowerBound()) : 0);
    put(highName, trials > 0, trials > 0 ? Math.min(1, interval.getUpperBound()) : 0);
  }

  private void intervals() {
    List<long[]> valid = valid();
    double[] lengths = lengths(valid);
    int n = lengths.length;
    int fast = (int) valid.stream().filter(i -> i[1] - i[0] < low).count();
    int slow = (int) valid.stream().filter(i -> i[1] - i[0] > high).count();
    double sum = StatUtils.sum(lengths);
    put("rate.overallPerMinute", n > 0 && sum > 0, 60 * n / sum);
    put("interval.count", n);
    sample("interval", lengths);
    deviation("interval.sdSeconds", lengths);
    double median = n > 0 ? quantile(lengths, 50) : 0;
    double[] distances = Arrays.stream(lengths).map(s -> Math.abs(s - median)).toArray();
    put("interval.robustSdSeconds", n > 1, n > 1 ? 1.4826 * quantile(distances, 50) : 0);
    put("interval.inRangeCount", n - fast - slow);
    put("interval.fastCount", fast);
    put("interval.slowCount", slow);
    put("interval.inRangeFraction", n > 0, (double) (n - fast - slow) / n);
    score("interval.inRangeLow", "interval.inRangeHigh", n - fast - slow, n);
    double asked = review.asked().intervalSeconds().orElse(1);
    put("interval.tempoErrorPercent", n > 0, 100 * (sum / n - asked) / asked);
    double excess = 0;
    double deficit = 0;
    double fastMinutes = 0;
    double slowMinutes = 0;
    double in = 0;
    double out = 0;
    for (long[] i : valid) {
      double length = i[1] - i[0];
      if (length < low) {
        excess += (low - length) / low;
        fastMinutes += length / SECOND / 60;
      } else if (length > high) {
        deficit += (length - high) / high;
        slowMinutes += length / SECOND / 60;
      }
      in += length >= low && length <= high ? length : 0;
      out += length >= low && length <= high ? 0 : length;
    }
    put("interval.excessBreaths", excess);
    put("interval.deficitBreaths", deficit);
    put("interval.fastMinutes", fastMinutes);
    put("interval.slowMinutes", slowMinutes);
    // The stretches that are no valid interval: beyond the longest interval they are out of range.
    long before = start;
    for (int k = 0; k <= at.length; k++) {
      long next = k < at.length ? at[k] : end;
      boolean counted = k > 0 && k < at.length && held(before, next) == 0;
      out += counted ? 0 : Math.max(0, next - before - excused(before, next) - high);
      before = next;
    }
    put("interval.timeInRangeFraction", steady && in + out > 0, in / (in + out));
  }

  /** The rate over the last minute, second by second, over all intervals each time. */
  private void burden() {
    List<long[]> valid = valid();
    int above = 0;
    boolean known = false;
    for (long now = start + 1_000_000_000L; now <= end; now += 1_000_000_000L) {
      double covered = 0;
      double breaths = 0;
      for (long[] i : valid) {
        double inside = Math.min(now, i[1]) - (double) Math.max(now - 60_000_000_000L, i[0]);
        if (i[0] == i[1]) {
          breaths += i[1] <= now && i[1] > now - 60_000_000_000L ? 1 : 0;
        } else if (inside > 0) {
          covered += inside / SECOND;
          breaths += inside / (i[1] - i[0]);
        }
      }
      if (covered >= 30 - 1e-9) {
        known = true;
        above += 60 * breaths / covered > 60 / (low / SECOND) * (1 + 1e-9) ? 1 : 0;
      }
    }
    put("hyperventilationMinutes", known, above / 60.0);
  }

  private void gaps() {
    double limit = review.asked().gapLongestNanos() / SECOND;
    double longestNet = -1;
    double longestNetAt = 0;
    int over = 0;
    double overSeconds = 0;
    long from = start;
    for (int k = 0; k <= at.length; k++) {
      long to = Math.max(start, k < at.length ? at[k] : end);
      from = Math.min(to, Math.max(start, from));
      double raw = (to - from) / SECOND;
      double net = raw - held(from, to) / SECOND;
      if (net > longestNet) {
        longestNet = net;
        longestNetAt = from / SECOND;
      }
      over += net > limit ? 1 : 0;
      overSeconds += Math.max(0, net - limit);
      from = k < at.length ? review.breaths().get(k).endNanos().orElse(at[k]) : end;
    }
    put("gap.longestSeconds", longestNet);
    put("gap.longestAtSeconds", longestNetAt);
    put("gap.overLimitCount", over);
    put("gap.overLimitSeconds", overSeconds);
  }

  private void prompts() {
    long[] prompts = review.prompts().stream().mapToLong(PromptMark::atNanos).toArray();
    List<Double> errors = new ArrayList<>();
    int extra = 0;
    int unprompted = 0;
    for (BreathMark breath : review.breaths()) {
      if (breath.prompt().isPresent()) {
        errors.add((breath.startNanos() - prompts[breath.prompt().getAsInt()]) / SECOND);
      } else if (silent(breath.startNanos())) {
        unprompted++;
      } else {
        extra++;
      }
    }
    int forgiven = 0;
    for (PromptMark prompt : review.prompts()) {
      forgiven += prompt.outcome() == PromptMark.Outcome.FORGIVEN ? 1 : 0;
    }
    put("prompts.given", prompts.length);
    put("prompts.met", errors.size());
    put("prompts.missed", prompts.length - errors.size() - forgiven);
    put("prompts.extra", extra);
    put("prompts.forgiven", forgiven);
    put("prompts.unprompted", unprompted);
    double[] late = errors.stream().mapToDouble(Double::doubleValue).toArray();
    sample("asynchrony", late);
    deviation("asynchrony.sdSeconds", late);
    phase(prompts);
  }

  private static long[] within(long[] instants, long from, long to) {
    return Arrays.stream(instants).filter(i -> from <= i && i < to).toArray();
  }

  /** The length of the sum of unit vectors (Fisher, 1993). */
  private static double norm(List<Complex> turns) {
    return turns.stream().reduce(Complex.ZERO, Complex::add).norm();
  }

  /** A unit vector for each breath between two prompts with no hold between them. */
  private List<Complex> turns(long[] prompts, long[] breaths) {
    List<Complex> turns = new ArrayList<>();
    long[] apart = new long[Math.max(0, prompts.length - 1)];
    for (int i = 0; i < apart.length; i++) {
      apart[i] = prompts[i + 1] - prompts[i];
    }
    long[] sorted = apart.clone();
    Arrays.sort(sorted);
    for (int i = 0; i < apart.length && steady; i++) {
      for (long breath : breaths) {
        boolean between = prompts[i] <= breath && breath < prompts[i + 1];
        if (between && !silent(breath) && apart[i] <= 1.5 * sorted[sorted.length / 2]) {
          double turn = (breath - prompts[i]) / (double) apart[i];
          turns.add(new Complex(0, 2 * Math.PI * turn).exp());
        }
      }
    }
    return turns;
  }

  private void phase(long[] prompts) {
    List<Complex> all = turns(prompts, at);
    put("asynchrony.phaseLocking", !all.isEmpty(), norm(all) / all.size());
    // After a check a trainee may keep another place: the middle of each hold divides.
    TreeSet<Long> middles = new TreeSet<>(List.of(Long.MAX_VALUE));
    review.holds().forEach(h -> middles.add(h.startNanos() + (h.endNanos() - h.startNanos()) / 2));
    double norms = 0;
    int count = 0;
    long from = Long.MIN_VALUE;
    for (long to : middles) {
      List<Complex> some = turns(within(prompts, from, to), within(at, from, to));
      if (some.size() >= 6) {
        norms += norm(some);
        count += some.size();
      }
      from = to;
    }
    if (count == 0) {
      norms = norm(all);
      count = all.size();
    }
    boolean own = count >= 6 && prompts.length >= 6 && norms / count < 0.5;
    double[] lengths = lengths(valid());
    double asked = review.asked().intervalSeconds().orElse(1);
    boolean another = lengths.length >= 5 && Math.abs(quantile(lengths, 50) / asked - 1) > 0.25;
    if (prompts.length > 0 && (!steady || own || another)) {
      figures.keySet().removeIf(n -> n.startsWith("prompts.") || n.startsWith("asynchrony."));
      figures.put("prompts", NONE);
      figures.put("asynchrony", NONE);
    }
  }

  private void squeezes() {
    double[] lengths =
        review.breaths().stream()
            .filter(b -> b.endNanos().isPresent())
            .mapToDouble(b -> (b.endNanos().getAsLong() - b.startNanos()) / SECOND)
            .toArray();
    double asked = review.asked().inspirationNanos() / SECOND;
    double shortest = Math.max(0, Math.min(0.8 * asked, asked - 0.15));
    double longest = Math.max(1.3 * asked, asked + 0.15);
    long good = Arrays.stream(lengths).filter(s -> s >= shortest && s <= longest).count();
    int n = lengths.length;
    put("inspiration.count", n);
    sample("inspiration", lengths);
    put("inspiration.lowerQuartileSeconds", n > 0, n > 0 ? quantile(lengths, 25) : 0);
    put("inspiration.upperQuartileSeconds", n > 0, n > 0 ? quantile(lengths, 75) : 0);
    put("inspiration.goodCount", good);
    put("inspiration.goodFraction", n > 0, (double) good / n);
    put("inspiration.shortestGoodSeconds", shortest);
    put("inspiration.longestGoodSeconds", longest);
  }

  /**
   * Checks are due every two minutes, for a newborn every 30 s, counted from the last; one within
   * half of that serves.
   */
  private void checks() {
    long spacing = spacing();
    List<Interruption> made = new ArrayList<>();
    review.holds().stream().filter(h -> h.kind() == Segment.Kind.PULSE_CHECK).forEach(made::add);
    long due = start + spacing;
    int i = 0;
    for (Interruption check : made) {
      while (due + spacing / 2 < check.startNanos()) {
        notMade(i++, due);
        due += spacing;
      }
      boolean serves = Math.abs(check.startNanos() - due) <= spacing / 2;
      double late = (check.startNanos() - due) / SECOND;
      boolean asked = serves && !(late < -15 && due >= end);
      String name = "pulseChecks[" + i++ + "].";
      figures.put(name + "kind", lookedFor());
      put(name + "dueSeconds", asked, due / SECOND);
      put(name + "startedSeconds", check.startNanos() / SECOND);
      put(name + "lengthSeconds", (check.endNanos() - check.startNanos()) / SECOND);
      put(name + "lateSeconds", asked, late);
      figures.put(
          name + "outcome",
          !asked ? "EXTRA" : late > 15 ? "LATE" : late < -15 ? "EARLY" : "ON_TIME");
      double length = (check.endNanos() - check.startNanos()) / SECOND;
      figures.put(
          name + "lengthOutcome",
          length > 10 ? "TOO_LONG" : check.cutByEnd() ? "NOT_JUDGED" : word(length));
      put(
          name + "breathsDuring",
          Arrays.stream(at)
              .filter(b -> b > check.startNanos() + 300_000_000L && b < check.endNanos())
              .count());
      due = check.startNanos() + spacing;
    }
    while (due < end) {
      notMade(i++, due);
      due += spacing;
    }
  }

  private long spacing() {
    return review.asked().patient().equals("Newborn") ? 30_000_000_000L : 120_000_000_000L;
  }

  private static String word(double length) {
    return length < 5 ? "TOO_SHORT" : "RIGHT";
  }

  private String lookedFor() {
    if (session.header().plan().guidance().patient() == PatientGroup.NEWBORN) {
      return "HEART_RATE";
    }
    return steady ? "PULSE" : "RHYTHM";
  }

  private void notMade(int place, long due) {
    String name = "pulseChecks[" + place + "].";
    figures.put(name + "kind", lookedFor());
    double left = (end - due) / SECOND;
    put(name + "dueSeconds", due / SECOND);
    for (String figure : List.of("startedSeconds", "lengthSeconds", "lateSeconds")) {
      figures.put(name + figure, NONE);
    }
    figures.put(name + "outcome", left <= 15 ? "NOT_COUNTED" : left < 60 ? "OVERDUE" : "MISSED");
    figures.put(name + "lengthOutcome", "NOT_JUDGED");
    put(name + "breathsDuring", 0);
  }

  /** 15 s at most, 10 s for a child, 5 s for a newborn. */
  private void suctions() {
    int i = 0;
    double asked = review.asked().intervalSeconds().orElse(6);
    double limit = asked == 6 ? 15 : asked == 2.5 ? 10 : 5;
    for (Interruption hold : review.holds()) {
      if (hold.kind() == Segment.Kind.SUCTION) {
        String name = "suctions[" + i++ + "].";
        double length = (hold.endNanos() - hold.startNanos()) / SECOND;
        put(name + "startedSeconds", hold.startNanos() / SECOND);
        put(name + "lengthSeconds", length);
        put(name + "limitSeconds", limit);
        figures.put(name + "withinLimit", Boolean.toString(length <= limit));
      }
    }
  }

  private void others() {
    int holes = 0;
    double holeSeconds = 0;
    for (SessionEvent event : session.events()) {
      if (event.what() == EventType.HOLE) {
        holes++;
        // It is written to a tenth, so half a tenth may be missing at its start.
        holeSeconds += Double.parseDouble(event.detail().replace(" s", "")) + 0.05;
      }
    }
    put("holeCount", holes);
    put("holeSeconds", holeSeconds);
    List<long[]> valid = valid();
    double[] drift = drift(valid);
    put("drift.intervals", valid.size());
    put("drift.percentPerMinute", drift.length > 0, drift.length > 0 ? drift[0] : 0);
    put("drift.lowPercentPerMinute", drift.length > 0, drift.length > 0 ? drift[1] : 0);
    put("drift.highPercentPerMinute", drift.length > 0, drift.length > 0 ? drift[2] : 0);
    double[] volumes =
        review.breaths().stream()
            .filter(b -> b.millilitres().isPresent())
            .mapToDouble(b -> b.millilitres().getAsDouble())
            .toArray();
    int n = volumes.length;
    put("volume.count", n);
    put("volume.medianMillilitres", n > 0, n > 0 ? quantile(volumes, 50) : 0);
    double spread = new StandardDeviation().evaluate(volumes) / StatUtils.mean(volumes);
    put("volume.variationFraction", n > 1, spread);
    double litres = 0;
    double minutes = 0;
    for (int k = 0; k + 1 < at.length && steady; k++) {
      BreathMark breath = review.breaths().get(k);
      if (held(at[k], at[k + 1]) == 0 && breath.millilitres().isPresent()) {
        litres += breath.millilitres().getAsDouble() / 1_000;
        minutes += (at[k + 1] - at[k]) / SECOND / 60;
      }
    }
    put("volume.litresPerMinute", minutes > 0, litres / minutes);
  }

  /** Theil (1950) and Sen (1968), all pairs: the slope and both ends of its interval. */
  private static double[] drift(List<long[]> intervals) {
    int n = intervals.size();
    double[] lengths = lengths(intervals);
    if (n < 8 || quantile(lengths, 50) <= 0) {
      return new double[0];
    }
    List<Double> slopes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        double x = intervals.get(i)[0] + (double) intervals.get(i)[1];
        double before = intervals.get(j)[0] + (double) intervals.get(j)[1];
        if (x > before) {
          slopes.add((lengths[i] - lengths[j]) / ((x - before) / 2 / SECOND));
        }
      }
    }
    if (slopes.isEmpty()) {
      return new double[0];
    }
    double[] sorted = slopes.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    double spread = Z95 * Math.sqrt(n * (n - 1.0) * (2 * n + 5) / 18);
    int first = (int) Math.max(1, Math.floor((sorted.length - spread) / 2));
    int last = (int) Math.min(sorted.length, Math.ceil((sorted.length + spread) / 2) + 1);
    double scale = 100 * 60 / quantile(lengths, 50);
    return new double[] {
      scale * quantile(sorted, 50), scale * sorted[first - 1], scale * sorted[last - 1]
    };
  }

  private void unprompted() {
    if (review.silences().isEmpty()) {
      figures.put("unprompted", NONE);
      return;
    }
    double seconds = 0;
    List<long[]> all = new ArrayList<>();
    List<long[]> longest = new ArrayList<>();
    for (UnpromptedSpan silence : review.silences()) {
      long from = Math.max(start, silence.startNanos());
      seconds += (silence.endNanos() - from - held(from, silence.endNanos())) / SECOND;
      List<long[]> own = new ArrayList<>();
      for (long[] i : valid()) {
        if (silence.startNanos() <= i[1] && i[1] < silence.endNanos()) {
          own.add(i);
        }
      }
      all.addAll(own);
      longest = own.size() > longest.size() ? own : longest;
    }
    put("unprompted.silences", review.silences().size());
    put("unprompted.seconds", seconds);
    put("unprompted.breathCount", Arrays.stream(at).filter(this::silent).count());
    put(
        "unprompted.plannedCount",
        session.schedule().squeezesAsked(0, zero + end).stream()
            .filter(at -> silent(at - zero))
            .count());
    double[] lengths = lengths(all);
    int n = lengths.length;
    int fast = (int) all.stream().filter(i -> i[1] - i[0] < low).count();
    int slow = (int) all.stream().filter(i -> i[1] - i[0] > high).count();
    double sum = StatUtils.sum(lengths);
    put("unprompted.intervalCount", n);
    put("unprompted.meanSeconds", n > 0, sum / n);
    put("unprompted.ratePerMinute", sum > 0, 60 * n / sum);
    put("unprompted.inRangeCount", n - fast - slow);
    put("unprompted.fastCount", fast);
    put("unprompted.slowCount", slow);
    score("unprompted.inRangeLow", "unprompted.inRangeHigh", n - fast - slow, n);
    double[] drift = longest.size() < 25 ? new double[0] : drift(longest);
    boolean told = drift.length > 0 && Math.abs(drift[0]) >= 2 && drift[1] * drift[2] > 0;
    put("unprompted.driftPercentPerMinute", told, told ? drift[0] : 0);
    silentGap();
    session.events().stream()
        .map(e -> LEVEL.matcher(e.detail()))
        .filter(Matcher::matches)
        .mapToInt(m -> Integer.parseInt(m.group(1)))
        .max()
        .ifPresentOrElse(
            level -> put("unprompted.highestLevel", level),
            () -> figures.put("unprompted.highestLevel", NONE));
    test();
  }

  private void silentGap() {
    double longest = 0;
    double longestAt = 0;
    long from = start;
    for (int k = 0; k <= at.length; k++) {
      long to = Math.max(start, k < at.length ? at[k] : end);
      from = Math.min(to, Math.max(start, from));
      for (UnpromptedSpan silence : review.silences()) {
        long until = Math.min(to, silence.endNanos());
        double net = (until - from - excused(from, until)) / SECOND;
        boolean touches = from < silence.endNanos() && silence.startNanos() < until;
        if (touches && net > longest) {
          longest = net;
          longestAt = from / SECOND;
        }
      }
      from = k < at.length ? review.breaths().get(k).endNanos().orElse(at[k]) : end;
    }
    put("unprompted.longestGapSeconds", longest);
    put("unprompted.longestGapAtSeconds", longestAt);
  }

  private void test() {
    if (session.header().plan().prompting() != Prompting.NONE) {
      figures.put("unprompted.test", NONE);
      return;
    }
    List<Double> intervals = new ArrayList<>();
    List<Double> besideHolds = new ArrayList<>();
    double scored = 0;
    long until = end;
    for (int k = 1; k < at.length && scored < 120 - 1e-9; k++) {
      until = at[k];
      long held = held(at[k - 1], at[k]);
      scored += (at[k] - at[k - 1] - held) / SECOND;
      double net = (at[k] - at[k - 1] - excused(at[k - 1], at[k])) / SECOND;
      (held == 0 ? intervals : besideHolds).add(net);
    }
    double asked = review.asked().intervalSeconds().getAsDouble();
    long scoredTo = until;
    boolean stoodStill =
        review.holds().stream()
            .anyMatch(h -> h.kind() == Segment.Kind.STALLED && h.startNanos() < scoredTo);
    String outcome = "FAIL";
    if (stoodStill) {
      outcome = "REPEAT";
    } else if (scored < 120 - 1e-9) {
      outcome = "INCOMPLETE";
    } else if (passes(intervals, besideHolds, asked)) {
      outcome = "PASS";
    } else {
      // It may be that one breath was not recorded: any one interval of about two is split.
      for (double twice : intervals) {
        if (twice >= 1.7 * asked && twice <= 2.3 * asked) {
          List<Double> split = new ArrayList<>(intervals);
          split.remove(twice);
          split.addAll(List.of(twice / 2, twice / 2));
          outcome = passes(split, besideHolds, asked) ? "REPEAT" : outcome;
        }
      }
    }
    figures.put("unprompted.test.outcome", outcome);
    put("unprompted.test.intervalCount", intervals.size());
  }

  private boolean passes(List<Double> intervals, List<Double> besideHolds, double asked) {
    double longest =
        Stream.concat(intervals.stream(), besideHolds.stream())
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    double[] lengths = intervals.stream().mapToDouble(Double::doubleValue).toArray();
    long outside =
        Arrays.stream(lengths)
            .filter(s -> s < low / SECOND - 1e-9 || s > high / SECOND + 1e-9)
            .count();
    double mean = StatUtils.mean(lengths);
    boolean near =
        asked == 6
            ? Math.abs(mean - asked) <= 0.08 * asked + 1e-8
            : mean >= low / SECOND - 1e-8 && mean <= high / SECOND + 1e-8;
    return lengths.length > 0
        && outside <= Math.floor(0.15 * lengths.length + 1e-9)
        && near
        && longest <= asked * 5 / 3 + 1e-9;
  }

  /** 30:2 alone, with no hold in it. */
  private void compressions() {
    if (steady) {
      figures.put("compressions", NONE);
      return;
    }
    long[] pressed = review.compressions().stream().mapToLong(CompressionMark::atNanos).toArray();
    List<Double> intervals = new ArrayList<>();
    int inRange = 0;
    int run = 1;
    int place = 0;
    int over = 0;
    int good = 0;
    double longest = 0;
    double pauses = 0;
    for (int k = 1; k < pressed.length; k++) {
      long from = pressed[k - 1];
      long to = pressed[k];
      double length = (to - from) / SECOND;
      if (length <= 2) {
        intervals.add(length);
        inRange += Math.round(60 / length) >= 100 && Math.round(60 / length) <= 120 ? 1 : 0;
        run++;
        continue;
      }
      long breaths = Arrays.stream(at).filter(b -> from <= b && b < to).count();
      String name = "compressions.cycles[" + place++ + "].";
      put(name + "compressions", run);
      put(name + "breaths", breaths);
      put(name + "pauseSeconds", length);
      over += length > 10 ? 1 : 0;
      good += run == 30 && breaths == 2 && length <= 10 ? 1 : 0;
      longest = Math.max(longest, length);
      pauses += length;
      run = 1;
    }
    double[] lengths = intervals.stream().mapToDouble(Double::doubleValue).toArray();
    double mean = StatUtils.mean(lengths);
    put("compressions.count", pressed.length);
    put("compressions.ratePerMinute", lengths.length > 0, 60 / mean);
    // No cycle here is paced by events.
    put("compressions.eventsPerMinute", false, 0);
    put("compressions.inRangeFraction", lengths.length > 0, (double) inRange / lengths.length);
    put("compressions.pauseCount", place);
    put("compressions.longestPauseSeconds", place > 0, longest);
    put("compressions.pauseLimitSeconds", 10);
    put("compressions.overLimitPauses", over);
    double total = (end - start) / SECOND;
    double last = Math.max(0, (end - pressed[pressed.length - 1]) / SECOND - mean);
    double off = Math.min(total, (pressed[0] - start) / SECOND + pauses - place * mean + last);
    put("compressions.handsOffSeconds", off);
    put("compressions.fraction", 1 - off / total);
    put("compressions.goodCycles", good);
  }
}
