package squeezewell.review.say;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.cue.Silence;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.Review;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.Compressions;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.measure.Unprompted;
import squeezewell.session.NotedFinding;

/**
 * Writes a review as one JSON object for programs. Times are seconds since the session began, as
 * plain decimals of at most nine places; what can't be computed is null.
 */
public final class ReviewJson {
  private static final int PLACES = 6;

  private ReviewJson() {}

  /**
   * Writes a review.
   *
   * @param out where to; it is neither flushed nor closed
   * @throws IOException if {@code out} can't be written to
   */
  public static void write(Review review, Appendable out) throws IOException {
    StringWriter text = new StringWriter();
    JsonWriter json = new JsonWriter(text);
    json.setIndent("  ");
    write(review, json);
    json.flush();
    out.append(text.toString()).append('\n');
  }

  /** Writes a review as the next value of {@code json}. */
  public static void write(Review review, JsonWriter json) throws IOException {
    boolean nulls = json.getSerializeNulls();
    json.setSerializeNulls(true);
    new Body(review, json).write();
    json.setSerializeNulls(nulls);
  }

  private static final class Body {
    private final Review review;
    private final Metrics metrics;
    private final JsonWriter json;

    Body(Review review, JsonWriter json) {
      this.review = review;
      this.metrics = review.metrics();
      this.json = json;
    }

    void write() throws IOException {
      json.beginObject();
      asked();
      json.name("headline").value(review.headline());
      figures();
      prompts();
      compressions();
      holds();
      drift();
      volume();
      verdict();
      findings();
      found();
      json.name("parts").beginArray();
      for (Review part : review.parts()) {
        new Body(part, json).part();
      }
      json.endArray();
      lists();
      json.endObject();
    }

    /** What stands for a part with one rhythm; its breaths and checks stand in the whole. */
    private void part() throws IOException {
      json.beginObject();
      nanos("fromSeconds", OptionalLong.of(review.startNanos()));
      nanos("toSeconds", OptionalLong.of(review.endNanos()));
      json.name("situation").value(review.asked().situation());
      json.name("slip").value(review.slip());
      asked();
      figures();
      prompts();
      compressions();
      drift();
      volume();
      verdict();
      json.endObject();
    }

    private void found() throws IOException {
      json.name("found").beginArray();
      for (NotedFinding noted : review.found()) {
        json.beginObject();
        nanos("atSeconds", OptionalLong.of(noted.atNanos()));
        json.name("finding").value(noted.finding().word());
        json.name("label").value(noted.finding().label());
        json.name("undone").value(noted.undone());
        json.name("changedRhythm").value(noted.changesPrompts());
        json.endObject();
      }
      json.endArray();
    }

    private void asked() throws IOException {
      Asked asked = review.asked();
      json.name("asked").beginObject();
      json.name("protocol").value(asked.protocolId());
      json.name("patient").value(asked.patient());
      json.name("situation").value(asked.situation());
      number("intervalSeconds", asked.intervalSeconds());
      nanos("lowSeconds", asked.lowNanos());
      nanos("highSeconds", asked.highNanos());
      nanos("inspirationSeconds", OptionalLong.of(asked.inspirationNanos()));
      nanos("lengthSeconds", OptionalLong.of(asked.lengthNanos()));
      nanos("practisedSeconds", OptionalLong.of(asked.practisedNanos()));
      json.name("source").value(asked.source().line());
      local(asked.local());
      json.endObject();
    }

    private void local(Optional<LocalLabel> label) throws IOException {
      json.name("local");
      if (!label.isPresent()) {
        json.nullValue();
        return;
      }
      json.beginObject();
      json.name("label").value(label.get().origin());
      json.name("differences").beginArray();
      for (String difference : label.get().differences()) {
        json.value(difference);
      }
      json.endArray();
      json.endObject();
    }

    private void figures() throws IOException {
      json.name("breaths").beginObject();
      json.name("count").value(metrics.breathCount());
      number("firstSeconds", metrics.firstBreathSeconds());
      json.endObject();
      json.name("rate").beginObject();
      number("overallPerMinute", metrics.rate().overallPerMinute());
      number("countPerMinute", metrics.rate().countPerMinute());
      json.endObject();
      Metrics.Interval interval = metrics.interval();
      json.name("interval").beginObject();
      json.name("count").value(interval.count());
      number("meanSeconds", interval.meanSeconds());
      number("medianSeconds", interval.medianSeconds());
      number("sdSeconds", interval.sdSeconds());
      number("robustSdSeconds", interval.robustSdSeconds());
      json.name("inRangeCount").value(interval.inRangeCount());
      number("inRangeFraction", interval.inRangeFraction());
      number("inRangeFractionLow", interval.inRangeLow());
      number("inRangeFractionHigh", interval.inRangeHigh());
      json.name("fastCount").value(interval.fastCount());
      json.name("slowCount").value(interval.slowCount());
      number("timeInRangeFraction", interval.timeInRangeFraction());
      number("tempoErrorPercent", interval.tempoErrorPercent());
      number("excessBreaths", judged(interval.excessBreaths()));
      number("deficitBreaths", judged(interval.deficitBreaths()));
      number("fastMinutes", judged(interval.fastMinutes()));
      number("slowMinutes", judged(interval.slowMinutes()));
      number("hyperventilationMinutes", metrics.hyperventilationMinutes());
      json.endObject();
      Metrics.Gap gap = metrics.gap();
      json.name("gap").beginObject();
      number("longestSeconds", OptionalDouble.of(gap.longestSeconds()));
      number("longestAtSeconds", OptionalDouble.of(gap.longestAtSeconds()));
      number("longestNetSeconds", OptionalDouble.of(gap.longestNetSeconds()));
      number("longestNetAtSeconds", OptionalDouble.of(gap.longestNetAtSeconds()));
      json.name("overLimitCount").value(gap.overLimitCount());
      json.endObject();
    }

    /** What rests on the range is not known for a rhythm without one. */
    private OptionalDouble judged(double value) {
      return review.rhythms().stream().anyMatch(r -> r.asked().intervalSeconds().isPresent())
          ? OptionalDouble.of(value)
          : OptionalDouble.empty();
    }

    private void prompts() throws IOException {
      Metrics.Prompts prompts = metrics.prompts();
      json.name("prompts").beginObject();
      json.name("given").value(prompts.given());
      json.name("met").value(prompts.met());
      json.name("missed").value(prompts.missed());
      json.name("extra").value(prompts.extra());
      json.name("forgiven").value(prompts.forgiven());
      json.name("unprompted").value(prompts.unprompted());
      json.endObject();
      unprompted();
      Metrics.Asynchrony asynchrony = metrics.asynchrony();
      json.name("asynchrony").beginObject();
      number("meanSeconds", asynchrony.meanSeconds());
      number("medianSeconds", asynchrony.medianSeconds());
      number("sdSeconds", asynchrony.sdSeconds());
      number("phaseLocking", asynchrony.phaseLocking());
      json.name("ownTempo").value(asynchrony.ownTempo());
      json.endObject();
      Metrics.Inspiration squeeze = metrics.inspiration();
      json.name("inspiration").beginObject();
      json.name("count").value(squeeze.count());
      number("meanSeconds", squeeze.meanSeconds());
      number("medianSeconds", squeeze.medianSeconds());
      number("goodFraction", squeeze.goodFraction());
      json.endObject();
    }

    private void unprompted() throws IOException {
      json.name("unprompted");
      if (!metrics.unprompted().isPresent()) {
        json.nullValue();
        return;
      }
      Unprompted done = metrics.unprompted().get();
      json.beginObject();
      json.name("silences").value(done.silences());
      number("seconds", OptionalDouble.of(done.seconds()));
      json.name("breathCount").value(done.breathCount());
      json.name("plannedCount").value(done.plannedCount());
      json.name("intervalCount").value(done.intervalCount());
      number("meanSeconds", done.meanSeconds());
      number("ratePerMinute", done.ratePerMinute());
      json.name("inRangeCount").value(done.inRangeCount());
      json.name("fastCount").value(done.fastCount());
      json.name("slowCount").value(done.slowCount());
      number("inRangeFractionLow", done.inRangeLow());
      number("inRangeFractionHigh", done.inRangeHigh());
      number("driftPercentPerMinute", done.driftPercentPerMinute());
      number("longestGapSeconds", OptionalDouble.of(done.longestGapSeconds()));
      number("longestGapAtSeconds", OptionalDouble.of(done.longestGapAtSeconds()));
      boolean level = done.highestLevel().isPresent();
      json.name("highestLevel").value(level ? done.highestLevel().getAsInt() : null);
      json.name("test");
      if (review.testIntervals().isPresent()) {
        json.beginObject();
        json.name("outcome").value(VerdictText.testWord(review.verdict().outcome()));
        json.name("intervalCount").value(review.testIntervals().getAsInt());
        json.name("rule").value(review.rule());
        json.name("reasons").beginArray();
        for (String reason : review.reasons()) {
          json.value(reason);
        }
        json.endArray();
        json.endObject();
      } else {
        json.nullValue();
      }
      json.endObject();
    }

    private void compressions() throws IOException {
      json.name("compressions");
      if (!metrics.compressions().isPresent()) {
        json.nullValue();
        return;
      }
      Compressions done = metrics.compressions().get();
      boolean cycles = done.pauseLimitSeconds().isPresent();
      json.beginObject();
      json.name("count").value(done.count());
      number("ratePerMinute", done.ratePerMinute());
      number("inRangeFraction", done.inRangeFraction());
      json.name("pauseCount").value(done.pauseCount());
      number("longestPauseSeconds", done.longestPauseSeconds());
      json.name("overLimitPauses").value(cycles ? done.overLimitPauses() : null);
      number("handsOffSeconds", OptionalDouble.of(done.handsOffSeconds()));
      number("fraction", done.fraction());
      json.name("cycles").value(cycles ? done.cycles().size() : null);
      json.name("goodCycles").value(cycles ? done.goodCycles() : null);
      json.endObject();
    }

    private void holds() throws IOException {
      json.name("pulseChecks").beginArray();
      for (PulseCheckResult check : metrics.pulseChecks()) {
        json.beginObject();
        json.name("kind").value(word(check.kind()));
        number("dueSeconds", check.dueSeconds());
        number("startedSeconds", check.startedSeconds());
        number("lengthSeconds", check.lengthSeconds());
        number("lateSeconds", check.lateSeconds());
        json.name("outcome").value(word(check.outcome()));
        json.name("length").value(word(check.lengthOutcome()));
        json.name("breathsDuring").value(check.breathsDuring());
        json.endObject();
      }
      json.endArray();
      json.name("suctions").beginArray();
      for (SuctionResult suction : metrics.suctions()) {
        json.beginObject();
        number("startedSeconds", OptionalDouble.of(suction.startedSeconds()));
        number("lengthSeconds", OptionalDouble.of(suction.lengthSeconds()));
        json.name("withinLimit").value(suction.withinLimit());
        json.endObject();
      }
      json.endArray();
      json.name("holes").beginObject();
      json.name("count").value(metrics.holeCount());
      number("seconds", OptionalDouble.of(metrics.holeSeconds()));
      json.endObject();
    }

    private void drift() throws IOException {
      json.name("drift").beginObject();
      number("percentPerMinute", metrics.drift().percentPerMinute());
      number("lowPercentPerMinute", metrics.drift().lowPercentPerMinute());
      number("highPercentPerMinute", metrics.drift().highPercentPerMinute());
      json.endObject();
    }

    private void volume() throws IOException {
      json.name("volume").beginObject();
      json.name("count").value(metrics.volume().count());
      number("medianMillilitres", metrics.volume().medianMillilitres());
      number("variationFraction", metrics.volume().variationFraction());
      number("litresPerMinute", metrics.volume().litresPerMinute());
      json.endObject();
    }

    private void verdict() throws IOException {
      json.name("verdict").beginObject();
      json.name("outcome").value(word(review.verdict().outcome()));
      json.name("rule").value(review.rule());
      json.name("reasons").beginArray();
      for (String reason : review.reasons()) {
        json.value(reason);
      }
      json.endArray();
      json.endObject();
    }

    private void findings() throws IOException {
      json.name("findings").beginArray();
      for (Feedback finding : review.findings()) {
        json.beginObject();
        json.name("code").value(finding.code());
        json.name("severity").value(finding.severity().word());
        json.name("title").value(finding.title());
        json.name("text").value(finding.text());
        json.endObject();
      }
      json.endArray();
      json.name("notes").beginArray();
      for (String note : review.notes()) {
        json.value(note);
      }
      json.endArray();
    }

    private void lists() throws IOException {
      json.name("breathList").beginArray();
      for (BreathMark breath : review.breaths()) {
        json.beginObject();
        nanos("atSeconds", OptionalLong.of(breath.startNanos()));
        nanos("endSeconds", breath.endNanos());
        number("millilitres", breath.millilitres());
        json.name("judgement").value(word(breath.judgement()));
        nanos("errorSeconds", breath.errorNanos());
        json.name("unprompted").value(breath.unprompted());
        json.endObject();
      }
      json.endArray();
      json.name("silenceList").beginArray();
      for (Silence silence : review.silences()) {
        json.beginObject();
        nanos("fromSeconds", OptionalLong.of(silence.startNanos()));
        nanos("toSeconds", OptionalLong.of(silence.endNanos()));
        json.endObject();
      }
      json.endArray();
      json.name("promptList").beginArray();
      for (PromptMark prompt : review.prompts()) {
        json.beginObject();
        nanos("atSeconds", OptionalLong.of(prompt.atNanos()));
        json.name("outcome").value(word(prompt.outcome()));
        json.endObject();
      }
      json.endArray();
    }

    private static String word(Enum<?> value) {
      return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private void nanos(String name, OptionalLong nanos) throws IOException {
      json.name(name);
      plain(nanos.isPresent() ? BigDecimal.valueOf(nanos.getAsLong(), 9) : null);
    }

    private void number(String name, OptionalDouble number) throws IOException {
      json.name(name);
      plain(
          number.isPresent()
              ? BigDecimal.valueOf(number.getAsDouble()).setScale(PLACES, RoundingMode.HALF_EVEN)
              : null);
    }

    private void plain(BigDecimal value) throws IOException {
      if (value == null) {
        json.nullValue();
        return;
      }
      String text = value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
      json.jsonValue(text);
    }
  }
}
