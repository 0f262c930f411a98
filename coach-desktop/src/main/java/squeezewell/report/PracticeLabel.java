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
    return PlainText.of(said("label.", header.trainee(), header, zone));
  }

  /** The same in more words. */
  static String inFull(String trainee, SessionHeader header, ZoneId zone) {
    return said("who.", trainee, header, zone);
  }

  private static String said(String key, String trainee, SessionHeader header, ZoneId zone) {
    String how = WORDS.say(key + header.origin().word(), when(header, zone));
    return trainee.isEmpty() ? how : trainee + ", " + how;
  }

  static String when(SessionHeader header, ZoneId zone) {
    return WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone));
  }
}
