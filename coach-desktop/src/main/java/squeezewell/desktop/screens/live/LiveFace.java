package squeezewell.desktop.screens.live;

import java.util.List;
import java.util.Optional;
import squeezewell.desktop.look.Sign;
import squeezewell.protocol.Judgement;

/**
 * What a running practice shows at one instant, in words and numbers. Immutable.
 *
 * @param ground what it is all painted on
 * @param patient who is breathed for
 * @param detail the situation and the edition
 * @param clock the time practiced; what takes its place where a clock would betray the beat
 * @param strip what is due next; empty if nothing may be told
 * @param advice what was found and what to do about it, for a while after
 * @param word the one thing to do
 * @param hint a second line under the word; empty for none
 * @param vessel the column; empty while the bag rests
 * @param count the large number; empty for none
 * @param note what the number is of
 * @param more further lines under the note
 * @param beside what stands beside the vessel where there is no number
 * @param steps a level out of some, drawn as steps; empty for none
 * @param cells the seconds of a check or of suction
 * @param below lines below the cells
 * @param feedback how the last breath or the compressions came
 * @param noted what can be taken back
 * @param ribbon whether the ribbon may be seen
 */
public record LiveFace(
    Ground ground,
    String patient,
    String detail,
    String clock,
    Optional<Strip> strip,
    Optional<Advice> advice,
    String word,
    String hint,
    Optional<Vessel> vessel,
    String count,
    String note,
    List<Line> more,
    List<Line> beside,
    Optional<Steps> steps,
    Optional<Cells> cells,
    List<Line> below,
    Optional<Feedback> feedback,
    String noted,
    boolean ribbon) {
  public LiveFace {
    more = List.copyOf(more);
    beside = List.copyOf(beside);
    below = List.copyOf(below);
  }

  /** The same with the column as another face has it, if it shows a column of that kind. */
  LiveFace withVesselOf(LiveFace other) {
    boolean alike =
        vessel.isPresent()
            && other.vessel.isPresent()
            && vessel.get() instanceof Vessel.Tide
            && other.vessel.get() instanceof Vessel.Tide
            && word.equals(other.word);
    return alike
        ? new LiveFace(
            ground,
            patient,
            detail,
            clock,
            strip,
            advice,
            word,
            hint,
            other.vessel,
            count,
            note,
            more,
            beside,
            steps,
            cells,
            below,
            feedback,
            noted,
            ribbon)
        : this;
  }

  /** What it is painted on. */
  public enum Ground {
    PLAIN,
    /** The bag must rest. */
    REST,
    /** A breath is missing. */
    GAP
  }

  /**
   * A bar that fills as the time it tells of runs out.
   *
   * @param fill 0 to 1
   * @param urgent whether it presses
   */
  public record Strip(Sign sign, String text, double fill, boolean urgent) {}

  /** What was found, and what to do about it. */
  public record Advice(String title, String text) {}

  /** A line of text of a size in density-independent pixels. */
  public record Line(String text, int size, boolean bold, boolean soft) {}

  /** What the column shows. */
  public sealed interface Vessel {
    /**
     * Fluid that rises while the bag is to be squeezed and ebbs until the next breath.
     *
     * @param fill 0 to 1
     * @param count the mark that is long, from 1; 0 for none
     * @param of how many marks
     */
    record Tide(double fill, int count, int of) implements Vessel {}

    /** One slat for each compression of a cycle. */
    record Slats(int done, int of) implements Vessel {}

    /** Nothing is prompted. */
    record Hatched() implements Vessel {}

    /** A breath is missing. */
    record Empty() implements Vessel {}
  }

  /** A level, from 0. */
  public record Steps(int level, int of) {}

  /**
   * Seconds that have passed.
   *
   * @param done how many
   * @param of how many there are at most
   * @param least how many there should be at least; 0 for none
   * @param leastText the word for it
   * @param mostText the word for the most
   */
  public record Cells(int done, int of, int least, String leastText, String mostText) {}

  /** How something came. */
  public record Feedback(Judgement judgement, String word, String value) {}
}
