package squeezewell.audio;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;

/**
 * What was heard of what was asked for, without the moments that a busy machine spoilt. A machine
 * that lets the device run dry for a moment can still be measured before and after it.
 *
 * @param segments runs of cues, each without a disturbance between its first and its last
 * @param missing cues asked for in such runs and not heard, frames asked
 * @param extra sounds heard within such runs that nobody asked for, frames in asked time
 */
record Heard(List<Segment> segments, List<Long> missing, List<Long> extra) {
  private static final long MILLI = PulseSandbox.RATE / 1_000;

  /** A cue heard farther than this from its instant is another sound. */
  private static final long MOST_ERROR_FRAMES = 15 * MILLI;

  /** How long before it was noticed a device may have stood dry, and how long after it settles. */
  private static final long BEFORE_DRY_FRAMES = 500 * MILLI;

  private static final long AFTER_FRAMES = 300 * MILLI;

  /** A correction mends what {@link DeviceTime} has looked at, which is the last three seconds. */
  private static final long BEFORE_CORRECTION_FRAMES = 4_000 * MILLI;

  /** Cues heard one after the other, frames; the delay between the two lists is unknown. */
  record Segment(List<Long> asked, List<Long> heard) {
    Steadiness steadiness() {
      return Steadiness.of(heard, asked, PulseSandbox.RATE);
    }
  }

  /**
   * Matches sounds with cues.
   *
   * @param asked when each cue was due, frames of the session, ascending
   * @param onsets when sounds began, frames of the recording, ascending
   * @param lines what the player printed; those of {@link DryWatch} are read
   */
  static Heard of(List<Long> asked, List<Long> onsets, List<String> lines) {
    TreeMap<Long, Long> spoilt = spoilt(lines);
    long offset = offset(asked, onsets);
    List<Segment> segments = new ArrayList<>();
    List<Long> missing = new ArrayList<>();
    List<Long> extra = new ArrayList<>();
    int next = 0;
    List<Long> cues = new ArrayList<>();
    List<Long> sounds = new ArrayList<>();
    for (int i = 0; i < asked.size(); i++) {
      long cue = asked.get(i);
      boolean cut = i > 0 && spoilt(spoilt, asked.get(i - 1), cue);
      if (cut) {
        segments.add(new Segment(cues, sounds));
        cues = new ArrayList<>();
        sounds = new ArrayList<>();
      }
      while (next < onsets.size() && onsets.get(next) - offset < cue - MOST_ERROR_FRAMES) {
        if (!cut && !cues.isEmpty()) {
          extra.add(onsets.get(next) - offset);
        }
        next++;
      }
      if (next < onsets.size() && onsets.get(next) - offset <= cue + MOST_ERROR_FRAMES) {
        cues.add(cue);
        sounds.add(onsets.get(next));
        next++;
      } else if (!spoilt(spoilt, cue, cue)) {
        missing.add(cue);
      }
    }
    segments.add(new Segment(cues, sounds));
    return new Heard(segments, missing, extra);
  }

  /** The same of some of the cues only, such as the squeezes; stretches stay what they are. */
  Heard only(List<Long> cues) {
    Set<Long> wanted = new HashSet<>(cues);
    List<Segment> some = new ArrayList<>();
    for (Segment segment : segments) {
      List<Long> asked = new ArrayList<>();
      List<Long> heard = new ArrayList<>();
      for (int i = 0; i < segment.asked().size(); i++) {
        if (wanted.contains(segment.asked().get(i))) {
          asked.add(segment.asked().get(i));
          heard.add(segment.heard().get(i));
        }
      }
      some.add(new Segment(asked, heard));
    }
    return new Heard(some, missing, extra);
  }

  /** Whether a moment from one instant to another, frames of the session, was spoilt. */
  static boolean spoilt(NavigableMap<Long, Long> spoilt, long from, long to) {
    NavigableMap<Long, Long> begun = spoilt.headMap(to, true);
    return begun.values().stream().anyMatch(end -> end >= from);
  }

  /**
   * Whether so much was spoilt that the rest measures the machine too, such as a sound server that
   * did not get to run: more than a third of the time between two instants, frames of the session.
   */
  static boolean hopeless(List<String> lines, long from, long to) {
    long spoilt = 0;
    long done = from;
    for (Map.Entry<Long, Long> entry : spoilt(lines).entrySet()) {
      long begin = Math.max(done, entry.getKey());
      long end = Math.min(to, entry.getValue());
      spoilt += Math.max(0, end - begin);
      done = Math.max(done, end);
    }
    return spoilt > (to - from) / 3;
  }

  /**
   * Passes a failure on, unless the machine disturbed the run between two instants, frames of the
   * session: what a sound server does after it stood still is not always told to its programs, so
   * such a run proves nothing and has to be made again.
   */
  static void blame(AssertionError failure, List<String> lines, long from, long to) {
    if (!spoilt(spoilt(lines), from, to)) {
      throw failure;
    }
    System.out.println("not counted, the machine disturbed this run: " + failure.getMessage());
  }

  /** From when until when nothing can be measured, frames of the session. */
  static TreeMap<Long, Long> spoilt(List<String> lines) {
    TreeMap<Long, Long> spoilt = new TreeMap<>();
    for (String line : lines) {
      String[] parts = line.split(" ", 3);
      long before =
          switch (parts[0]) {
            case DryWatch.DRY, DryWatch.WIDENED -> BEFORE_DRY_FRAMES;
            case DryWatch.CORRECTED -> BEFORE_CORRECTION_FRAMES;
            default -> -1;
          };
      if (before >= 0) {
        long at = Frames.at(Long.parseLong(parts[1]), PulseSandbox.RATE);
        spoilt.merge(at - before, at + AFTER_FRAMES, Math::max);
      }
    }
    return spoilt;
  }

  /**
   * How much later a frame of the session stands in the recording: the delay with which most cues
   * are heard, and of those the one with which most are heard to the frame.
   */
  static long offset(List<Long> asked, List<Long> onsets) {
    long best = 0;
    int mostNear = -1;
    int mostExact = -1;
    for (long first : asked.subList(0, Math.min(asked.size(), 40))) {
      for (long onset : onsets) {
        long offset = onset - first;
        int near = found(asked, onsets, offset, MOST_ERROR_FRAMES);
        int exact = near < mostNear ? -1 : found(asked, onsets, offset, 1);
        if (near > mostNear || (near == mostNear && exact > mostExact)) {
          best = offset;
          mostNear = near;
          mostExact = exact;
        }
      }
    }
    return best;
  }

  private static int found(List<Long> asked, List<Long> onsets, long offset, long tolerance) {
    int found = 0;
    int next = 0;
    for (long cue : asked) {
      while (next < onsets.size() && onsets.get(next) - offset < cue - tolerance) {
        next++;
      }
      if (next < onsets.size() && onsets.get(next) - offset <= cue + tolerance) {
        found++;
      }
    }
    return found;
  }
}
