package squeezewell.protocol;

/** Unit of an age. A year has 365.25 days, a month a twelfth of that. */
public enum AgeUnit {
  DAYS("days", "day", 1),
  MONTHS("months", "month", 365.25 / 12),
  YEARS("years", "year", 365.25);

  private final String id;
  private final String singular;
  private final double days;

  AgeUnit(String id, String singular, double days) {
    this.id = id;
    this.singular = singular;
    this.days = days;
  }

  /** The word used in files. */
  public String id() {
    return id;
  }

  /** The word for one of it, or for several. */
  public String word(double number) {
    return number == 1 ? singular : id;
  }

  /** How many days one of it has. */
  public double days() {
    return days;
  }
}
