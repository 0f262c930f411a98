package squeezewell.files;

/**
 * How loud one kind of sound is.
 *
 * @param volume 0 (nothing) to 1 (full)
 * @param muted whether it is silent for now, whatever its volume
 */
public record SoundLevel(double volume, boolean muted) {
  public SoundLevel {
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("volume is " + volume + "; allowed: 0 to 1");
    }
  }
}
