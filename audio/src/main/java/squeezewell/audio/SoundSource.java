package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.LongUnaryOperator;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;

/** What is to be heard when. Immutable: the same question has the same answer. */
public interface SoundSource {
  /** A cue created this late still starts at once; a later one is dropped (our own choice). */
  long LATE_NANOS = 100_000_000L;

  /**
   * What starts in a half-open range.
   *
   * @param fromNanos inclusive, nanoseconds of the sound's time
   * @param toNanos exclusive
   * @return in order of time
   */
  List<Sounding> between(long fromNanos, long toNanos);

  /**
   * Until when one of them may sound.
   *
   * @return nanoseconds of the sound's time; {@link squeezewell.cue.Segment#OPEN} if there is no
   *     end
   */
  long soundsUntil(Sounding sounding);

  /** Nothing at all. */
  static SoundSource silence() {
    return new SoundSource() {
      @Override
      public List<Sounding> between(long fromNanos, long toNanos) {
        return List.of();
      }

      @Override
      public long soundsUntil(Sounding sounding) {
        return sounding.atNanos();
      }
    };
  }

  /** The prompts of a schedule, in session time. */
  static SoundSource of(CueSchedule schedule) {
    Objects.requireNonNull(schedule, "schedule");
    return new SoundSource() {
      @Override
      public List<Sounding> between(long fromNanos, long toNanos) {
        List<Sounding> found = new ArrayList<>();
        for (Cue cue : schedule.between(fromNanos, toNanos)) {
          found.add(prompt(schedule, cue, cue.atNanos(), LongUnaryOperator.identity(), true));
        }
        return found;
      }

      @Override
      public long soundsUntil(Sounding sounding) {
        return sounding instanceof Sounding.Prompt prompt
            ? schedule.soundsUntil(prompt.cue())
            : sounding.atNanos();
      }
    };
  }

  /**
   * A cue as it sounds.
   *
   * @param atNanos when it starts in the sound's time
   * @param scaled how long something of the session's time takes there
   * @param words whether spoken words may go with it
   */
  static Sounding.Prompt prompt(
      CueSchedule schedule, Cue cue, long atNanos, LongUnaryOperator scaled, boolean words) {
    long given = cue.atNanos();
    // One that a command cuts short still swells at the usual speed up to the cut.
    long usual = SoundBank.squeezeNanos(schedule.guidanceAt(given).rhythm());
    long swell = scaled.applyAsLong(Math.max(cue.lengthNanos(), usual));
    return new Sounding.Prompt(atNanos, cue, schedule.inForceAt(given), swell, words);
  }

  /**
   * This source up to an instant, and another from there on. What sounds at that instant fades out.
   *
   * @param turnNanos nanoseconds of the sound's time
   */
  default SoundSource until(long turnNanos, SoundSource next) {
    return new Spliced(this, turnNanos, next);
  }

  /**
   * One source up to an instant, another from there on.
   *
   * @param before what is heard before the turn
   * @param turnNanos nanoseconds of the sound's time
   * @param after what is heard from the turn on
   */
  record Spliced(SoundSource before, long turnNanos, SoundSource after) implements SoundSource {
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
      boolean past = turnNanos + 2 * LATE_NANOS < nextTurnNanos;
      return new Spliced(past ? after : this, nextTurnNanos, next);
    }
  }
}
