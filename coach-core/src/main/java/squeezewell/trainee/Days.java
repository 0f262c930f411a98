package squeezewell.trainee;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Days as people lived them. */
final class Days {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private Days() {}

  static LocalDate on(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDate();
  }

  static String of(Instant at, ZoneId zone) {
    return of(on(at, zone));
  }

  static String of(LocalDate day) {
    return DAY.format(day);
  }
}
