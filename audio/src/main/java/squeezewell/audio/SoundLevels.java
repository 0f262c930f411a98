package squeezewell.audio;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * How loud each kind of sound is and how counts are given. Immutable.
 *
 * @param volumes what is set for each kind, 0 to 1, whether muted or not
 * @param muted the kinds that are muted by themselves
 * @param allMuted whether everything is muted
 * @param countStyle how counts are given
 */
public record SoundLevels(
    Map<SoundKind, Double> volumes, Set<SoundKind> muted, boolean allMuted, CountStyle countStyle) {
  private static final SoundLevels DEFAULTS =
      new SoundLevels(
          Map.of(
              SoundKind.SQUEEZE, 0.8,
              SoundKind.RELEASE, 0.6,
              SoundKind.COUNT, 0.72,
              SoundKind.COMPRESSION, 0.6,
              SoundKind.REMINDER, 0.6,
              SoundKind.VOICE, 0.8,
              SoundKind.EXAMINER, 0.8,
              SoundKind.DONE, 0.7),
          Set.of(),
          false,
          CountStyle.SOUND);

  public SoundLevels {
    volumes = Map.copyOf(volumes);
    muted = Set.copyOf(muted);
    Objects.requireNonNull(countStyle, "countStyle");
  }

  /** Everything on, counts softer than squeezes and as tones (our own choice). */
  public static SoundLevels defaults() {
    return DEFAULTS;
  }

  /** The volume set for a kind, 0 to 1, whether muted or not. */
  public double volume(SoundKind kind) {
    return volumes.get(kind);
  }

  /** Whether a kind is muted by itself. */
  public boolean muted(SoundKind kind) {
    return muted.contains(kind);
  }

  /** What the samples of a kind are multiplied by: its volume, or 0 if it is muted. */
  public double gain(SoundKind kind) {
    return allMuted || muted.contains(kind) ? 0 : volumes.get(kind);
  }

  /**
   * These levels with another volume for one kind.
   *
   * @param volume 0 to 1
   * @throws IllegalArgumentException if the volume is out of range
   */
  public SoundLevels withVolume(SoundKind kind, double volume) {
    Objects.requireNonNull(kind, "kind");
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("a volume lies between 0 and 1, not " + volume);
    }
    Map<SoundKind, Double> more = new EnumMap<>(volumes);
    more.put(kind, volume);
    return new SoundLevels(more, muted, allMuted, countStyle);
  }

  /** These levels with one kind muted or not. */
  public SoundLevels withMuted(SoundKind kind, boolean mute) {
    Objects.requireNonNull(kind, "kind");
    Set<SoundKind> more = EnumSet.noneOf(SoundKind.class);
    more.addAll(muted);
    if (mute) {
      more.add(kind);
    } else {
      more.remove(kind);
    }
    return new SoundLevels(volumes, more, allMuted, countStyle);
  }

  /** These levels with everything muted or not; what is set for each kind is kept. */
  public SoundLevels withAllMuted(boolean mute) {
    return new SoundLevels(volumes, muted, mute, countStyle);
  }

  /** These levels with counts given in another way. */
  public SoundLevels withCountStyle(CountStyle style) {
    return new SoundLevels(volumes, muted, allMuted, style);
  }
}
