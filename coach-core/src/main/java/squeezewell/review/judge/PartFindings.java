package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Practice;
import squeezewell.review.say.Words;

/**
 * The findings of the parts of a session whose rhythm changed. Each says for which part it holds;
 * what holds for several is told once, with what each of them adds.
 */
final class PartFindings {
  /** In a shorter part nothing is said about what was not done at all (our own choice). */
  private static final int FEWEST_SECONDS = 10;

  /** Figures of so many parts are told in one finding (our own choice). */
  private static final int MOST_TOLD = 3;

  private static final Pattern FIGURE = Pattern.compile("\\d");

  private final List<Facts> parts;
  private final Map<List<Object>, List<Told>> told = new LinkedHashMap<>();

  private PartFindings(List<Facts> parts) {
    this.parts = parts;
  }

  /** A finding and the part it was found in. */
  private record Told(Ranked ranked, Practice part) {}

  /**
   * @param parts those that are judged, in order
   */
  static List<Ranked> of(List<Facts> parts) {
    PartFindings findings = new PartFindings(parts);
    parts.forEach(findings::add);
    List<Ranked> found = new ArrayList<>();
    findings.told.values().forEach(same -> found.add(findings.joined(same)));
    return found;
  }

  private void add(Facts part) {
    List<Ranked> found = Findings.ofRhythm(part);
    boolean brief = part.metrics().effectiveSeconds() < FEWEST_SECONDS;
    int missed = part.metrics().prompts().missed();
    if (brief) {
      found.removeIf(r -> r.isCode("compressions-missing"));
    } else if (part.metrics().breathCount() == 0 && missed > 0) {
      found.add(noBreath(missed));
    }
    for (Ranked ranked : found) {
      Finding finding = ranked.finding();
      told.computeIfAbsent(
              Arrays.asList(finding.code(), finding.severity(), finding.title()),
              k -> new ArrayList<>())
          .add(new Told(ranked, part.practice()));
    }
  }

  private static Ranked noBreath(int missed) {
    return Ranked.fault(
        Ranked.NOTHING,
        "no-breaths",
        "No breath was recorded",
        Words.count(missed, "breath")
            + (missed == 1 ? " was" : " were")
            + " asked for and none was recorded. If you did squeeze, check that the key or the"
            + " sensor reaches the program, then try again.");
  }

  private Ranked joined(List<Told> same) {
    Ranked first = same.get(0).ranked();
    List<Practice> where = new ArrayList<>();
    Set<String> said = new LinkedHashSet<>();
    List<String> texts = new ArrayList<>();
    int harm = first.harm();
    int more = 0;
    for (Told one : same) {
      harm = Math.min(harm, one.ranked().harm());
      where.add(one.part());
      // A reason that was told for one part need not be told again for the next; figures are.
      String news =
          Arrays.stream(one.ranked().finding().text().split("(?<=\\.) "))
              .filter(sentence -> said.add(sentence) || FIGURE.matcher(sentence).find())
              .collect(Collectors.joining(" "));
      if (texts.size() >= MOST_TOLD) {
        more++;
      } else if (!news.isEmpty()) {
        texts.add(from(one.part()) + news);
      }
    }
    if (more > 0) {
      texts.add("Likewise in " + Words.count(more, "other part") + "; see there.");
    }
    boolean everywhere = same.size() == parts.size();
    Finding finding = first.finding();
    return new Ranked(
        harm,
        new Finding(
            finding.code(),
            finding.severity(),
            everywhere ? finding.title() : finding.title() + ", " + listed(places(where)),
            String.join(" ", texts)));
  }

  private static String listed(List<String> places) {
    int last = places.size() - 1;
    return last == 0
        ? places.get(0)
        : String.join(", ", places.subList(0, last)) + " and " + places.get(last);
  }

  /** Parts that follow each other are one place. */
  private static List<String> places(List<Practice> parts) {
    List<String> places = new ArrayList<>();
    Practice first = parts.get(0);
    for (int i = 0; i < parts.size(); i++) {
      Practice last = parts.get(i);
      boolean goesOn = i + 1 < parts.size() && parts.get(i + 1).startNanos() == last.endNanos();
      if (!goesOn) {
        places.add(place(first, last));
        first = i + 1 < parts.size() ? parts.get(i + 1) : last;
      }
    }
    return places;
  }

  private static String place(Practice first, Practice last) {
    String start = Words.clock(first.startNanos());
    String end = Words.clock(last.endNanos());
    if (first.place().first()) {
      return "before " + end;
    }
    return last.place().last() ? "after " + start : start + " to " + end;
  }

  private static String from(Practice part) {
    String end = part.place().last() ? "" : " to " + Words.clock(part.endNanos());
    return "From "
        + Words.clock(part.startNanos())
        + end
        + " ("
        + part.guidance().situation().label()
        + "): ";
  }
}
