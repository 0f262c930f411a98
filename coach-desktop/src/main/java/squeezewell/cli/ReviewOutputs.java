package squeezewell.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import squeezewell.audio.CueTrack;
import squeezewell.audio.SoundLevels;
import squeezewell.input.BadInputException;
import squeezewell.report.PlainText;
import squeezewell.report.ReviewCsv;
import squeezewell.report.ReviewHtml;
import squeezewell.report.ReviewPng;
import squeezewell.report.XapiAccount;
import squeezewell.report.XapiJson;
import squeezewell.review.say.Review;
import squeezewell.session.Session;

/** The files that a review may be written to besides being printed. */
final class ReviewOutputs {
  private static final int REPLAY_RATE = 48_000;
  private static final List<String> FILES =
      List.of(
          "--html", "--png", "--csv", "--compressions", "--metrics-csv", "--replay-wav", "--xapi");

  @Spec(Spec.Target.MIXEE)
  CommandSpec mixee;

  @Option(names = "--html", paramLabel = "FILE")
  String html = "";

  @Option(names = "--png", paramLabel = "FILE")
  String png = "";

  @Option(names = "--csv", paramLabel = "FILE")
  String csv = "";

  @Option(names = "--compressions", paramLabel = "FILE")
  String compressions = "";

  @Option(names = "--metrics-csv", paramLabel = "FILE")
  String metricsCsv = "";

  @Option(names = "--replay-wav", paramLabel = "FILE")
  String replayWav = "";

  @Option(names = "--xapi", paramLabel = "FILE")
  String xapi = "";

  @Option(names = "--xapi-home", paramLabel = "URL")
  String xapiHome = "";

  @Option(names = "--xapi-account", paramLabel = "NAME")
  String xapiAccount = "";

  @Option(names = "--force")
  boolean force;

  /** The files, looked at before anything is written. */
  List<OutputFile> files(Path source) throws BadInputException {
    List<OutputFile> files = new ArrayList<>();
    for (String option : FILES) {
      String named = mixee.findOption(option).getValue();
      if (!named.isEmpty()) {
        OutputFile file = OutputFile.of(option, named, force);
        file.mustDifferFrom("FILE", source);
        for (OutputFile other : files) {
          file.mustDifferFrom(other.option(), other.path());
        }
        files.add(file);
      }
    }
    account();
    return files;
  }

  /** Refuses what can't be written about that session. */
  void check(Session session) throws BadInputException {
    Optional<String> whyNot = XapiJson.whyNot(session.header());
    if (!replayWav.isEmpty()) {
      track(session);
    }
    if (!xapi.isEmpty() && whyNot.isPresent()) {
      throw BadInputException.fault("--xapi", "", whyNot.get() + "; allowed: a person's practice");
    }
  }

  void write(OutputFile file, Session session, Review review, ZoneId zone)
      throws BadInputException, IOException {
    if (file.option().equals("--replay-wav")) {
      track(session).write(file.path(), force, done -> {});
      return;
    }
    file.write(
        switch (file.option()) {
          case "--html" -> utf8(ReviewHtml.of(session.header(), review, zone));
          case "--png" -> ReviewPng.of(session.header(), review, zone);
          case "--csv" -> utf8(ReviewCsv.breaths(review));
          case "--compressions" -> utf8(ReviewCsv.compressions(review));
          case "--metrics-csv" -> utf8(ReviewCsv.figures(review));
          case "--xapi" -> utf8(XapiJson.of(session, review, account()));
          default -> throw new IllegalArgumentException(file.option());
        });
  }

  private static CueTrack track(Session session) throws BadInputException {
    try {
      return CueTrack.replay(session, REPLAY_RATE, SoundLevels.defaults());
    } catch (IllegalArgumentException e) {
      throw BadInputException.fault("--replay-wav", "", e.getMessage());
    }
  }

  private XapiAccount account() throws BadInputException {
    if (xapi.isEmpty() && !(xapiHome.isEmpty() && xapiAccount.isEmpty())) {
      throw BadInputException.fault(
          "--xapi-home, --xapi-account", "", "they say nothing without --xapi");
    }
    if (!xapiHome.isEmpty() && !XapiAccount.isHome(xapiHome)) {
      throw BadInputException.notAllowed("--xapi-home", "", xapiHome, XapiAccount.ALLOWED_HOME);
    }
    if (PlainText.of(xapiAccount).length() > XapiAccount.LONGEST_NAME) {
      throw BadInputException.notAllowed(
          "--xapi-account",
          "",
          xapiAccount,
          "a text of at most " + XapiAccount.LONGEST_NAME + " characters");
    }
    return new XapiAccount(xapiHome.isEmpty() ? XapiAccount.PLACEHOLDER : xapiHome, xapiAccount);
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
