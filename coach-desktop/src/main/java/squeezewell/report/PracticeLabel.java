package squeezewell.report;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import squeezewell.session.SessionHeader;
import squeezewell.words.Wording;

/** Who practised when, in a few words. */
public final class PracticeLabel {
  private static final Wording WORDS = Wording.beside(PracticeLabel.class);

  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private PracticeLabel() {}

  /** The trainee's name if there is one, how it came about, and when. */
  public static String of(SessionHeader header, ZoneId zone) {
    String trainee = header.trainee().isEmpty() ? "" : header.trainee() + ", ";
    String when = WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone));
    return PlainText.of(
        switch (header.origin()) {
          case LIVE -> trainee + when;
          case VIRTUAL -> trainee + WORDS.say("label.virtual", when);
          case EVENT_LIST -> trainee + WORDS.say("event-list");
        });
  }
}
