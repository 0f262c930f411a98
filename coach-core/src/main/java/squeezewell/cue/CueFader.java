package squeezewell.cue;

import java.util.Objects;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;

/**
 * Decides which breaths are prompted while a trainee learns to hold a rhythm alone. Practice goes
 * in blocks of so many prompted breaths and so many silent ones; the higher the level, the more are
 * silent. Two good blocks in a row lead one level up. When two silent intervals running lie out of
 * the range on the same side, or a wait grows too long, prompts come back for two breaths; when
 * that happens twice in a block, the block is over and the next is one level lower. Who leaves
 * level 0 has just held the rhythm for twelve breaths, so level 1 begins with its silent ones.
 *
 * <p>The levels and numbers are our own choice. That prompts should become fewer rests on studies
 * of feedback in motor learning (Winstein and Schmidt, 1990). Immutable; the same intervals give
 * the same decisions.
 */
public final class CueFader {
  /** The highest level: nothing is prompted. */
  public static final int HIGHEST = 5;

  /** Prompted breaths of a block, by level. */
  private static final int[] PROMPTED = {6, 5, 4, 3, 2, 0};

  /** Silent breaths of a block, by level. */
  private static final int[] SILENT = {0, 5, 8, 12, 20, 20};

  /** The highest level with which a practice can begin: some breaths still give the pace. */
  public static final int HIGHEST_START = HIGHEST - 1;

  private static final int RESCUE_BREATHS = 2;
  private static final int GOOD_BLOCKS = 2;
  private static final int MOST_RESCUES = 2;
  private static final int LEAST_IN_RANGE_PERCENT = 80;

  private final BreathPlan plan;
  private final int level;
  private final int goodBlocks;
  private final Block block;

  /**
   * How far a block has come.
   *
   * @param prompted prompted breaths done, those of rescues not counted
   * @param judged intervals that the block is judged by: the silent ones, or all at level 0
   * @param inRange how many of them were in range
   * @param sumNanos their sum
   * @param side how the last silent one was; not judged if the last was prompted
   * @param rescues how often prompts had to come back
   * @param rescueLeft prompted breaths of a rescue that are left
   */
  private record Block(
      int prompted,
      int judged,
      int inRange,
      long sumNanos,
      Judgement side,
      int rescues,
      int rescueLeft) {
    static final Block NEW = new Block(0, 0, 0, 0, Judgement.UNJUDGED, 0, 0);

    /** One of level 1 whose prompted breaths were those of level 0. */
    static final Block SILENT_FIRST = new Block(PROMPTED[1], 0, 0, 0, Judgement.UNJUDGED, 0, 0);

    Block rescued(int more, int left) {
      return new Block(
          prompted, judged, inRange, sumNanos, Judgement.UNJUDGED, rescues + more, left);
    }
  }

  private CueFader(BreathPlan plan, int level, int goodBlocks, Block block) {
    this.plan = plan;
    this.level = level;
    this.goodBlocks = goodBlocks;
    this.block = block;
  }

  /** The machine before the first breath: level 0, where every breath is prompted. */
  public static CueFader start(BreathPlan plan) {
    return start(plan, 0);
  }

  /**
   * The machine before the first breath of a practice that goes on from an earlier one.
   *
   * @param level 0 to {@link #HIGHEST_START}
   */
  public static CueFader start(BreathPlan plan, int level) {
    if (level < 0 || level > HIGHEST_START) {
      throw new IllegalArgumentException(
          "a start with level " + level + "; allowed: 0 to " + HIGHEST_START);
    }
    return new CueFader(Objects.requireNonNull(plan, "plan"), level, 0, Block.NEW);
  }

  /** The level, 0 to {@link #HIGHEST}. */
  public int level() {
    return level;
  }

  /** Whether the next breath is prompted. */
  public boolean prompts() {
    return block.rescueLeft > 0 || block.prompted < PROMPTED[level];
  }

  /** Whether prompts are back because the rhythm was lost. */
  public boolean rescues() {
    return block.rescueLeft > 0;
  }

  /**
   * The machine after one more breath.
   *
   * @param intervalNanos from the breath before to this one, nothing having held it up, not
   *     negative
   */
  public CueFader after(long intervalNanos) {
    if (block.rescueLeft > 0) {
      return with(block.rescued(0, block.rescueLeft - 1)).judged();
    }
    boolean silent = !prompts();
    boolean counts = silent || level == 0;
    Judgement side = plan.judge(intervalNanos);
    CueFader next =
        with(
            new Block(
                block.prompted + (silent ? 0 : 1),
                block.judged + (counts ? 1 : 0),
                block.inRange + (counts && side == Judgement.IN_RANGE ? 1 : 0),
                block.sumNanos + (counts ? intervalNanos : 0),
                silent ? side : Judgement.UNJUDGED,
                block.rescues,
                0));
    boolean lost = silent && side.off() && side == block.side;
    return lost ? next.rescued() : next.judged();
  }

  /**
   * The machine once a wait has grown too long in a silent stretch: prompts are to come at once.
   * The same if breaths are prompted anyway.
   */
  public CueFader afterGap() {
    return prompts() ? this : rescued();
  }

  private CueFader with(Block next) {
    return new CueFader(plan, level, goodBlocks, next);
  }

  private CueFader rescued() {
    return block.rescues + 1 >= MOST_RESCUES
        ? new CueFader(plan, Math.max(0, level - 1), 0, Block.NEW)
        : with(block.rescued(1, RESCUE_BREATHS));
  }

  /** The next block if this one is complete; this one otherwise. */
  private CueFader judged() {
    boolean complete =
        block.rescueLeft == 0
            && block.prompted >= PROMPTED[level]
            && (level == 0 || block.judged >= SILENT[level]);
    if (!complete) {
      return this;
    }
    int good = isGood() ? goodBlocks + 1 : 0;
    if (good < GOOD_BLOCKS) {
      return new CueFader(plan, level, good, Block.NEW);
    }
    return new CueFader(
        plan, Math.min(HIGHEST, level + 1), 0, level == 0 ? Block.SILENT_FIRST : Block.NEW);
  }

  private boolean isGood() {
    return block.rescues == 0
        && 100 * block.inRange >= LEAST_IN_RANGE_PERCENT * block.judged
        && plan.keepsMean(block.sumNanos / 1e9 / block.judged);
  }

  /**
   * How many breaths at the least, all in range, before the first one is silent.
   *
   * @param level with which the practice begins
   */
  public static int breathsBeforeSilence(int level) {
    return level == 0 ? GOOD_BLOCKS * PROMPTED[0] : PROMPTED[level];
  }

  /** How many breaths of a block are prompted at a level. */
  public static int prompted(int level) {
    return PROMPTED[level];
  }

  /** How many breaths of a block are silent at a level. */
  public static int silent(int level) {
    return SILENT[level];
  }
}
