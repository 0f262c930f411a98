package squeezewell.protocol;

import java.util.EnumSet;
import java.util.Set;
import squeezewell.words.Wording;

/**
 * Age group that a guideline sets its values for, from old to young, with the facts by which one
 * group is cared for otherwise than another.
 */
public enum PatientGroup {
  ADULT("adult", Heart.PULSE),
  CHILD("child", Heart.PULSE_AND_RATE),
  INFANT("infant", Heart.PULSE_AND_RATE),
  NEWBORN("newborn", Heart.RATE);

  private static final Wording WORDS = Wording.beside(PatientGroup.class);

  /** By what it is decided whether to compress. */
  private enum Heart {
    PULSE,
    /** A pulse, or a heart that beats too slowly for the age (AHA PALS 2020). */
    PULSE_AND_RATE,
    /** The heart rate, not whether a pulse is felt (NRP, 8th edition). */
    RATE
  }

  private final String id;
  private final Heart heart;

  PatientGroup(String id, Heart heart) {
    this.id = id;
    this.heart = heart;
  }

  /** The identifier used in files and on the command line. */
  public String id() {
    return id;
  }

  /** The name shown to people. */
  public String label() {
    return WORDS.say("patient." + id);
  }

  /**
   * Whether the heart rate decides, and not whether a pulse is felt, as in newborn programmes: one
   * situation then stands for all breathing with a pulse, and cycles go on with a tube in place.
   */
  public boolean isJudgedByHeartRate() {
    return heart == Heart.RATE;
  }

  /** Whether the chest is also compressed where the heart beats too slowly for the age. */
  public boolean mayHaveSlowHeart() {
    return heart != Heart.PULSE;
  }

  /** The situation in which such a patient is most often met. */
  public Situation usualSituation() {
    return isJudgedByHeartRate() ? Situation.NEWBORN_VENTILATION : Situation.PULSE_NO_BREATHING;
  }

  /** The situations in which such a patient may be found. */
  public Set<Situation> situations() {
    return isJudgedByHeartRate()
        ? EnumSet.of(Situation.NEWBORN_VENTILATION, Situation.ARREST_NO_ADVANCED_AIRWAY)
        : EnumSet.complementOf(EnumSet.of(Situation.NEWBORN_VENTILATION));
  }
}
