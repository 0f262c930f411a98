package squeezewell.report;

import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.words.Wording;

/** The kinds of file that a debrief can be saved as, told apart by how a file's name ends. */
public enum ReportKind {
  PAGE(".html"),
  PICTURE(".png"),
  FIGURES("-figures.csv"),
  BREATHS("-breaths.csv"),
  STATEMENTS("-xapi.json");

  private final String ending;

  ReportKind(String ending) {
    this.ending = ending;
  }

  /** How the name of such a file ends, with its dot. */
  public String ending() {
    return ending;
  }

  /** The words shown to people. */
  public String label() {
    return Wording.beside(ReportKind.class).say("kind." + name().toLowerCase(Locale.ROOT));
  }

  /** The kinds that a session can be saved as. */
  public static List<ReportKind> of(Session session) {
    List<ReportKind> kinds = new ArrayList<>(List.of(values()));
    if (XapiJson.whyNot(session.header()).isPresent()) {
      kinds.remove(STATEMENTS);
    }
    return List.copyOf(kinds);
  }

  /**
   * The kind that a name asks for. The whole ending decides; a bare {@code .csv} or {@code .json}
   * is the chosen kind if that fits, else the first that does. Empty if the name asks for none.
   */
  public static Optional<ReportKind> named(String name, ReportKind chosen) {
    return first(name, ReportKind::ending)
        .or(() -> Optional.of(chosen).filter(kind -> ends(name, kind.suffix())))
        .or(() -> first(name, ReportKind::suffix));
  }

  /** The name with this kind's ending in place of another kind's. */
  public String rename(String name) {
    String other =
        first(name, ReportKind::ending)
            .map(ReportKind::ending)
            .or(() -> first(name, ReportKind::suffix).map(ReportKind::suffix))
            .orElse("");
    return name.substring(0, name.length() - other.length()) + ending;
  }

  private static Optional<ReportKind> first(String name, Function<ReportKind, String> end) {
    return Arrays.stream(values()).filter(kind -> ends(name, end.apply(kind))).findFirst();
  }

  private static boolean ends(String name, String end) {
    return name.toLowerCase(Locale.ROOT).endsWith(end);
  }

  /** What the system tells kinds of file apart by: the dot and what follows. */
  private String suffix() {
    return ending.substring(ending.lastIndexOf('.'));
  }

  /** What such a file holds. */
  public byte[] content(Session session, Review review, ZoneId zone) {
    return switch (this) {
      case PAGE -> utf8(ReviewHtml.of(session.header(), review, zone));
      case PICTURE -> ReviewPng.of(session.header(), review, zone);
      case FIGURES -> utf8(ReviewCsv.figures(review));
      case BREATHS -> utf8(ReviewCsv.breaths(review));
      case STATEMENTS -> utf8(XapiJson.of(session, review, XapiAccount.unsaid()));
    };
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
