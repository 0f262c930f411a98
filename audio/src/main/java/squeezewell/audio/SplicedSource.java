package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;

/**
 * One source up to an instant, another from there on.
 *
 * @param before what is heard before the turn
 * @param turnNanos nanoseconds of the sound's time
 * @param after what is heard from the turn on
 */
record SplicedSource(SoundSource before, long turnNanos, SoundSource after) implements SoundSource {
  @Override
  public List<Sounding> between(long fromNanos, long toNanos) {
    List<Sounding> found = new ArrayList<>();
    if (fromNanos < turnNanos) {
      found.addAll(before.between(fromNanos, Math.min(toNanos, turnNanos)));
    }
    if (toNanos > turnNanos) {
      found.addAll(after.between(Math.max(fromNanos, turnNanos), toNanos));
    }
    return found;
  }

  @Override
  public long soundsUntil(Sounding sounding) {
    return sounding.atNanos() < turnNanos
        ? Math.min(turnNanos, before.soundsUntil(sounding))
        : after.soundsUntil(sounding);
  }

  @Override
  public SoundSource until(long nextTurnNanos, SoundSource next) {
    // What lies well before a turn is never asked for again, so a chain need not grow.
    boolean past = turnNanos + 2 * CueMixer.LATE_NANOS < nextTurnNanos;
    return new SplicedSource(past ? after : this, nextTurnNanos, next);
  }
}
