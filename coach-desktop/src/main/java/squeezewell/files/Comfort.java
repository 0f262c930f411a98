package squeezewell.files;

/**
 * What suits a person's eyes and hands.
 *
 * @param reducedMotion whether the column moves once a count instead of evenly
 * @param leftHanded whether on a wide window the pane to touch is on the left
 * @param touchSqueezes whether the pads answer a touch or the mouse
 */
public record Comfort(boolean reducedMotion, boolean leftHanded, boolean touchSqueezes) {
  /** What holds until a person chooses. */
  public static final Comfort USUAL = new Comfort(false, false, true);
}
