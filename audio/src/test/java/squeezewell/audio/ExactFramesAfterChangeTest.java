package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.cue.Control;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * A practice of breaths every 6 s changes to each built-in rhythm at an odd instant, and each cue
 * up to the end of the day stands on its exact nanosecond and frame. The numbers of a rhythm are
 * read here from the text of its file; instants are computed from them as decimal fractions.
 */
class ExactFramesAfterChangeTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long DAY = HeardDay.SECONDS * SECOND;
  private static final long CHANGE = 1_234_567_891_234L;

  /** The lead of 35 ms later. */
  private static final long AT_ONCE = 1_234_602_891_234L;

  /** The last squeeze before it. */
  private static final long LAST_SQUEEZE = 1_230 * SECOND;

  private static final int DIGITS = 30;
  private static final double JUMP = 0.1;
  private static final int[] RATES = {44_100, 48_000};
  private static final Guidance BEFORE =
      Plans.guidance("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
  private static final Set<CueKind> RHYTHM =
      EnumSet.of(CueKind.SQUEEZE, CueKind.RELEASE, CueKind.COUNT, CueKind.COMPRESS);

  /**
   * A rhythm.
   *
   * @param guidance one that has it
   * @param json as its file says it
   */
  record Written(Guidance guidance, JsonObject json) {
    BigDecimal number(String field, String of) {
      return json.getAsJsonObject(field).get(of).getAsBigDecimal();
    }

    @Override
    public String toString() {
      return numbers(json);
    }
  }

  /** Those of all editions, each once. */
  static Stream<Written> rhythms() {
    Map<String, Written> found = new LinkedHashMap<>();
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (JsonElement patient : read(edition.id()).getAsJsonArray("patients")) {
        String group = patient.getAsJsonObject().get("group").getAsString();
        for (JsonElement element : patient.getAsJsonObject().getAsJsonArray("rhythms")) {
          JsonObject json = element.getAsJsonObject();
          Guidance guidance =
              edition.guidance().stream()
                  .filter(g -> g.patient().id().equals(group))
                  .filter(g -> g.situation().id().equals(json.get("situation").getAsString()))
                  .filter(g -> g.fromAge().map(a -> a.value()).orElse(0L) == fromAge(json))
                  .filter(
                      g -> !json.has("rescuers") || g.rescuers() == json.get("rescuers").getAsInt())
                  .findFirst()
                  .orElseThrow();
          found.putIfAbsent(numbers(json), new Written(guidance, json));
        }
      }
    }
    return found.values().stream();
  }

  private static long fromAge(JsonObject json) {
    return json.has("fromAge") ? json.getAsJsonObject("fromAge").get("value").getAsLong() : 0;
  }

  private static JsonObject read(String edition) {
    String name = "/squeezewell/protocol/" + edition + ".json";
    try (InputStreamReader in =
        new InputStreamReader(
            GuidelineLibrary.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
      return JsonParser.parseReader(in).getAsJsonObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String numbers(JsonObject json) {
    StringBuilder text = new StringBuilder(json.get("kind").getAsString());
    for (String field :
        new String[] {"compressionRate", "cycle", "pause", "breathInterval", "inspiration"}) {
      if (json.has(field)) {
        JsonObject value = json.getAsJsonObject(field);
        text.append(", ").append(field);
        for (String part : new String[] {"target", "value", "compressions", "breaths", "unit"}) {
          if (value.has(part)) {
            text.append(' ').append(value.get(part).getAsString());
          }
        }
      }
    }
    return text.toString();
  }

  @Test
  void allRhythmsAreThere() {
    assertThat(rhythms().map(w -> w.json().get("kind").getAsString()).distinct())
        .containsExactlyInAnyOrder(
            "steady-breaths", "compression-cycle", "continuous-compressions");
    assertThat(rhythms().count()).isGreaterThanOrEqualTo(15);
  }

  @ParameterizedTest
  @MethodSource("rhythms")
  void eachCueOfADayStandsOnItsNanosecondAndFrame(Written rhythm) {
    List<String> asked = asked(rhythm);
    List<Cue> cues = cues(rhythm);
    assertThat(cues).hasSameSizeAs(asked);
    for (int i = 0; i < asked.size(); i++) {
      Cue cue = cues.get(i);
      // No assertion of the library for each: there are hundreds of thousands.
      if (!asked.get(i).equals(cue.atNanos() + " " + cue.kind().id())) {
        assertThat(cue).as("%s, cue %d", rhythm, i).hasToString(asked.get(i));
      }
      for (int rate : RATES) {
        long frame = frame(cue.atNanos(), rate);
        if (Frames.at(cue.atNanos(), rate) != frame) {
          assertThat(Frames.at(cue.atNanos(), rate)).as("%s, %d", cue, rate).isEqualTo(frame);
        }
      }
    }
  }

  /** The same in the samples, for the two rhythms of an arrest, at the rate that divides worse. */
  @ParameterizedTest
  @MethodSource("arrests")
  void eachCueOfADayIsHeardOnItsFrame(Written rhythm) {
    int rate = 44_100;
    TreeSet<Long> asked = new TreeSet<>();
    for (long second = 0; second * SECOND < CHANGE; second++) {
      asked.add(second * rate);
    }
    for (String cue : asked(rhythm)) {
      asked.add(frame(Long.parseLong(cue.substring(0, cue.indexOf(' '))), rate));
    }
    SoundLevels levels =
        SoundLevels.defaults().withMuted(SoundKind.VOICE, true).withMuted(SoundKind.REMINDER, true);
    CueMixer mixer = new CueMixer(rate, levels);
    mixer.publish(schedule(rhythm));
    List<Long> heard = HeardDay.onsets(mixer, new OnsetFinder(JUMP, rate / 100));
    List<Long> wanted = HeardDay.kept(asked, rate);
    assertThat(heard).hasSameSizeAs(wanted);
    assertThat(heard.equals(wanted)).as("all on their frames").isTrue();
  }

  static Stream<Written> arrests() {
    return rhythms()
        .filter(w -> w.guidance().patient() == PatientGroup.ADULT)
        .filter(w -> w.guidance().rhythm().compressions().isPresent());
  }

  private static CueSchedule schedule(Written rhythm) {
    PracticePlan plan = new PracticePlan(BEFORE, 0, DAY, SoundOutput.LEAD_NANOS);
    return CueSchedule.of(plan, List.of(Control.change(CHANGE, rhythm.guidance())));
  }

  private static List<Cue> cues(Written rhythm) {
    return schedule(rhythm).between(CHANGE, DAY).stream()
        .filter(c -> RHYTHM.contains(c.kind()))
        .toList();
  }

  /** Instant and kind of each cue from the change to the end of the day, in order. */
  private static List<String> asked(Written rhythm) {
    List<Asked> asked = new ArrayList<>();
    switch (rhythm.json().get("kind").getAsString()) {
      case "steady-breaths" -> addBreaths(rhythm, asked);
      case "compression-cycle" -> addCycles(rhythm, asked);
      default -> {
        addBreaths(rhythm, asked);
        BigDecimal each = period(rhythm);
        for (long k = 0; AT_ONCE + times(each, k) < DAY; k++) {
          asked.add(new Asked(AT_ONCE + times(each, k), CueKind.COMPRESS));
        }
      }
    }
    asked.removeIf(a -> a.nanos() < CHANGE || a.nanos() >= DAY);
    asked.sort(
        (a, b) ->
            a.nanos() == b.nanos()
                ? a.kind().compareTo(b.kind())
                : Long.compare(a.nanos(), b.nanos()));
    return asked.stream().map(a -> a.nanos() + " " + a.kind().id()).toList();
  }

  private record Asked(long nanos, CueKind kind) {}

  private static void addBreaths(Written rhythm, List<Asked> asked) {
    BigDecimal interval = nanos(rhythm.number("breathInterval", "target"));
    long squeezeLength = nanos(rhythm.number("inspiration", "value")).longValueExact();
    // Counted on from the last squeeze while its interval has not passed, else at once.
    long origin = LAST_SQUEEZE + interval.longValueExact() >= AT_ONCE ? LAST_SQUEEZE : AT_ONCE;
    // The squeeze, the release, and about one count for each further second.
    long rest = interval.longValueExact() - squeezeLength;
    long parts =
        BigDecimal.valueOf(rest, 9)
            .setScale(0, RoundingMode.HALF_UP)
            .max(BigDecimal.ONE)
            .longValue();
    for (long k = 0; origin + times(interval, k) < DAY; k++) {
      long squeeze = origin + times(interval, k);
      asked.add(new Asked(squeeze, CueKind.SQUEEZE));
      for (long part = 0; part < parts; part++) {
        long at =
            BigDecimal.valueOf(rest)
                .multiply(BigDecimal.valueOf(part))
                .divide(BigDecimal.valueOf(parts), 0, RoundingMode.FLOOR)
                .longValueExact();
        CueKind kind = part == 0 ? CueKind.RELEASE : CueKind.COUNT;
        asked.add(new Asked(squeeze + squeezeLength + at, kind));
      }
    }
  }

  private static void addCycles(Written rhythm, List<Asked> asked) {
    BigDecimal each = period(rhythm);
    long pause = nanos(rhythm.number("pause", "value")).longValueExact();
    long length = nanos(rhythm.number("inspiration", "value")).longValueExact();
    long compressions = rhythm.number("cycle", "compressions").longValueExact();
    long breaths = rhythm.number("cycle", "breaths").longValueExact();
    for (long c = 0; AT_ONCE + times(each, c * compressions) + c * pause < DAY; c++) {
      for (long k = c * compressions; k < (c + 1) * compressions; k++) {
        asked.add(new Asked(AT_ONCE + times(each, k) + c * pause, CueKind.COMPRESS));
      }
      long from = AT_ONCE + times(each, (c + 1) * compressions) + c * pause;
      for (long b = 0; b < breaths; b++) {
        long squeeze = from + pause * b / breaths;
        asked.add(new Asked(squeeze, CueKind.SQUEEZE));
        asked.add(new Asked(squeeze + length, CueKind.RELEASE));
      }
    }
  }

  /** Nanoseconds from one compression to the next. */
  private static BigDecimal period(Written rhythm) {
    return BigDecimal.valueOf(60 * SECOND)
        .divide(rhythm.number("compressionRate", "target"), DIGITS, RoundingMode.HALF_EVEN);
  }

  private static BigDecimal nanos(BigDecimal seconds) {
    return seconds.movePointRight(9);
  }

  private static long times(BigDecimal nanos, long k) {
    return nanos.multiply(BigDecimal.valueOf(k)).setScale(0, RoundingMode.HALF_UP).longValueExact();
  }

  private static long frame(long nanos, int rate) {
    return BigDecimal.valueOf(nanos, 9)
        .multiply(BigDecimal.valueOf(rate))
        .setScale(0, RoundingMode.HALF_UP)
        .longValueExact();
  }
}
