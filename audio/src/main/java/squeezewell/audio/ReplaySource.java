package squeezewell.audio;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import squeezewell.coach.Playback;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.InOrder;
import squeezewell.cue.Segment;
import squeezewell.session.Breath;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * A session as it is played back: its prompts, what was done and what an examiner said, with times
 * and lengths divided by the speed. Spoken words are left out above the session's own speed, since
 * they can't be hurried. Only what lies ahead of the last change of the playback is heard.
 * Immutable.
 */
public final class ReplaySource implements SoundSource {
  private final Playback playback;
  private final CueSchedule schedule;
  private final List<Sounding.Deed> deeds;
  private final List<Said> said;
  private final Function<String, Optional<SpokenLine>> voice;

  /**
   * A line that an examiner said.
   *
   * @param atNanos when, session time
   * @param text the words
   */
  public record Said(long atNanos, String text) {
    public Said {
      Objects.requireNonNull(text, "text");
    }
  }

  /**
   * What a session holds, at its own times and taken apart once.
   *
   * @param schedule its prompts
   * @param deeds what was done, in order of time; breaths that were retracted are left out
   * @param said what the examiner of a station said, in order of time
   */
  public record Track(CueSchedule schedule, List<Sounding.Deed> deeds, List<Said> said) {
    public Track {
      Objects.requireNonNull(schedule, "schedule");
      deeds = List.copyOf(deeds);
      said = List.copyOf(said);
    }

    /** What the examiner said, each text once. */
    public List<String> texts() {
      return said.stream().map(Said::text).distinct().toList();
    }

    /** The track of a session. */
    public static Track of(Session session) {
      List<Sounding.Deed> deeds = new ArrayList<>();
      for (Breath breath : session.breaths()) {
        deeds.add(new Sounding.Deed(breath.startNanos(), Sounding.Act.SQUEEZED));
        breath.endNanos().ifPresent(end -> deeds.add(new Sounding.Deed(end, Sounding.Act.LET_GO)));
      }
      for (long at : session.compressions()) {
        deeds.add(new Sounding.Deed(at, Sounding.Act.COMPRESSED));
      }
      deeds.sort(Comparator.comparingLong(Sounding.Deed::atNanos));
      List<Said> said = new ArrayList<>();
      for (SessionEvent event : session.events()) {
        if (event.fact() instanceof Fact.Told told && told.type() == EventType.EXAMINER) {
          said.add(new Said(event.atNanos(), told.text()));
        }
      }
      return new Track(session.schedule(), deeds, said);
    }
  }

  /**
   * A track played in a certain way.
   *
   * @param track what is played
   * @param playback how; its time is the sound's time
   * @param voice what the examiner said as sound, where that is known by the time it is heard
   */
  public ReplaySource(
      Track track, Playback playback, Function<String, Optional<SpokenLine>> voice) {
    this.playback = Objects.requireNonNull(playback, "playback");
    this.voice = Objects.requireNonNull(voice, "voice");
    this.schedule = track.schedule();
    this.deeds = track.deeds();
    this.said = track.said();
  }

  @Override
  public List<Sounding> between(long fromNanos, long toNanos) {
    List<Sounding> found = new ArrayList<>();
    if (!playback.playing() || toNanos <= playback.sinceNanos()) {
      return found;
    }
    // A nanosecond of room on each side for rounding; what is outside is left out below.
    long from = playback.positionAt(fromNanos - 1);
    long to = playback.positionAt(toNanos + 1) + 1;
    for (Cue cue : schedule.between(from, to)) {
      long at = playback.timeOf(cue.atNanos()).orElse(Long.MIN_VALUE);
      if (at >= fromNanos && at < toNanos) {
        found.add(SoundSource.prompt(schedule, cue, at, playback::scaled, playback.speed() == 1));
      }
    }
    int first = InOrder.countBefore(deeds.size(), i -> deeds.get(i).atNanos(), from);
    for (int i = first; i < deeds.size() && deeds.get(i).atNanos() < to; i++) {
      long at = playback.timeOf(deeds.get(i).atNanos()).orElse(Long.MIN_VALUE);
      if (at >= fromNanos && at < toNanos) {
        found.add(new Sounding.Deed(at, deeds.get(i).act()));
      }
    }
    if (playback.speed() == 1) {
      addSaid(found, fromNanos, toNanos, from, to);
    }
    found.sort(Comparator.comparingLong(Sounding::atNanos));
    return found;
  }

  private void addSaid(List<Sounding> found, long fromNanos, long toNanos, long from, long to) {
    for (Said each : said) {
      long at =
          each.atNanos() >= from && each.atNanos() < to
              ? playback.timeOf(each.atNanos()).orElse(Long.MIN_VALUE)
              : Long.MIN_VALUE;
      if (at >= fromNanos && at < toNanos) {
        voice
            .apply(each.text())
            .ifPresent(words -> found.add(new Sounding.Line(at, each.text(), words)));
      }
    }
  }

  @Override
  public long soundsUntil(Sounding sounding) {
    if (!(sounding instanceof Sounding.Prompt prompt)) {
      return Segment.OPEN;
    }
    long end = schedule.soundsUntil(prompt.cue());
    return end == Segment.OPEN ? end : playback.timeOf(end).orElse(Segment.OPEN);
  }
}
