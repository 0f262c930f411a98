package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;

/** What is to be heard when. Immutable: the same question has the same answer. */
public interface SoundSource {
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
   * @return nanoseconds of the sound's time; {@link squeezewell.cue.Stretch#OPEN} if there is no
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
          var guidance = schedule.guidanceAt(cue.atNanos());
          // One that a command cuts short still swells at the usual speed up to the cut.
          long swell = Math.max(cue.lengthNanos(), SoundBank.squeezeNanos(guidance.rhythm()));
          found.add(
              new Sounding.Prompt(
                  cue.atNanos(), cue, schedule.inForceAt(cue.atNanos()), swell, true));
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
   * This source up to an instant, and another from there on. What sounds at that instant fades out.
   *
   * @param turnNanos nanoseconds of the sound's time
   */
  default SoundSource until(long turnNanos, SoundSource next) {
    return new SplicedSource(this, turnNanos, next);
  }
}
