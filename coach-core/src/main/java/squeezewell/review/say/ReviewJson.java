package squeezewell.review.say;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.judge.Sentence;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PromptMark;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.session.NotedFinding;

/**
 * Writes a review as one JSON object for programs. Times are seconds since 0:00 of the practice, as
 * plain decimals of at most nine places; what can't be computed is null.
 */
public final class ReviewJson {
  /** The order of these fields, which programs that compare texts rely on. */
  private static final List<String> PROMPTS =
      List.of("given", "met", "missed", "extra", "forgiven", "unprompted");

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
      Prescription asked = review.asked();
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
      group("breaths");
      group("rate");
      group("interval");
      group("gap");
    }

    private void prompts() throws IOException {
      if (metrics.prompts().isPresent()) {
        json.name("prompts").beginObject();
        for (String field : PROMPTS) {
          field(Figures.named("prompts." + field), review);
        }
        json.endObject();
      } else {
        json.name("prompts").nullValue();
      }
      unprompted();
      if (metrics.asynchrony().isPresent()) {
        group("asynchrony");
      } else {
        json.name("asynchrony").nullValue();
      }
      group("inspiration");
    }

    /** An object that holds all figures of a group. */
    private void group(String group) throws IOException {
      json.name(group).beginObject();
      fields(group);
      json.endObject();
    }

    private void fields(String group) throws IOException {
      for (Figure<Review> figure : Figures.ONCE) {
        if (figure.inJson() && figure.in(group)) {
          field(figure, review);
        }
      }
    }

    private <T> void field(Figure<T> figure, T of) throws IOException {
      json.name(figure.field());
      Object value = figure.value(of);
      if (value == null) {
        json.nullValue();
      } else if (value instanceof Number number) {
        json.jsonValue(Figure.plain(number));
      } else if (value instanceof Boolean yes) {
        json.value(yes);
      } else {
        json.value(value.toString());
      }
    }

    private void unprompted() throws IOException {
      json.name("unprompted");
      if (!metrics.unprompted().isPresent()) {
        json.nullValue();
        return;
      }
      json.beginObject();
      fields("unprompted");
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
      if (metrics.compressions().isPresent()) {
        group("compressions");
      } else {
        json.name("compressions").nullValue();
      }
    }

    private void holds() throws IOException {
      json.name("pulseChecks").beginArray();
      for (PulseCheckResult check : metrics.pulseChecks()) {
        json.beginObject();
        json.name("kind").value(word(check.kind()));
        for (Figure<PulseCheckResult> figure : Figures.CHECK) {
          field(figure, check);
        }
        json.endObject();
      }
      json.endArray();
      json.name("suctions").beginArray();
      for (SuctionResult suction : metrics.suctions()) {
        json.beginObject();
        for (Figure<SuctionResult> figure : Figures.SUCTION) {
          field(figure, suction);
        }
        json.endObject();
      }
      json.endArray();
      group("holes");
    }

    private void drift() throws IOException {
      group("drift");
    }

    private void volume() throws IOException {
      group("volume");
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
        json.name("sources").beginArray();
        for (Feedback.Paragraph why : finding.paragraphs(Sentence.Kind.WHY)) {
          json.value(why.source());
        }
        json.endArray();
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
      for (UnpromptedSpan silence : review.silences()) {
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
      if (number.isPresent()) {
        json.jsonValue(Figure.plain(number.getAsDouble()));
      } else {
        json.nullValue();
      }
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
