package squeezewell.protocol;

/** Age group that a guideline sets its values for. */
public enum PatientGroup {
  ADULT("adult", "Adult"),
  CHILD("child", "Child"),
  INFANT("infant", "Infant"),
  NEWBORN("newborn", "Newborn");

  private final String id;
  private final String label;

  PatientGroup(String id, String label) {
    this.id = id;
    this.label = label;
  }

  /** The identifier used in files and on the command line. */
  public String id() {
    return id;
  }

  /** The name shown to people. */
  public String label() {
    return label;
  }
}
