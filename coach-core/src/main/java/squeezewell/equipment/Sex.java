package squeezewell.equipment;

import java.math.BigDecimal;

/** The sex that the formulas for predicted body weight tell apart. */
public enum Sex {
  FEMALE("Female", "45.5"),
  MALE("Male", "50");

  private final String label;
  private final BigDecimal kilogramsAtBase;

  Sex(String label, String kilogramsAtBase) {
    this.label = label;
    this.kilogramsAtBase = new BigDecimal(kilogramsAtBase);
  }

  BigDecimal kilogramsAtBase() {
    return kilogramsAtBase;
  }

  @Override
  public String toString() {
    return label;
  }
}
