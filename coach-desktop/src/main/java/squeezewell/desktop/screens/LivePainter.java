package squeezewell.desktop.screens;

import java.util.List;
import squeezewell.coach.CoachState;
import squeezewell.cue.Segment;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.live.Shown;
import squeezewell.protocol.Judgement;

/**
 * Shows a practice, running or played back, on the tide column, the words and the ribbon. One call
 * is one frame.
 */
public final class LivePainter {
  /** The ribbon moves some ten pixels a second; more frames than this can't be seen. */
  private static final long RIBBON_FRAME_NANOS = 90_000_000L;

  private final TideColumn tide;
  private final PromptWords words;
  private final Ribbon ribbon;
  private long ribbonDrawnAt = -RIBBON_FRAME_NANOS;

  /**
   * What a window writes in its own places.
   *
   * @param view what stands at this moment
   * @param asked the rhythm in words
   * @param found what was just found; empty if nothing
   */
  public record Lines(LiveView view, String asked, String found) {}

  public LivePainter(TideColumn tide, PromptWords words, Ribbon ribbon) {
    this.tide = tide;
    this.words = words;
    this.ribbon = ribbon;
  }

  /** Shows the present moment of a practice. */
  public Lines paint(Shown practice) {
    return paint(practice.state(), practice.nowNanos());
  }

  /** Shows a practice as it stands at a moment of session time. */
  public Lines paint(CoachState state, long now) {
    LiveView view = LiveView.of(state, now);
    tide.show(view.fill(), view.notch(), view.notches());
    words.show(view.word(), view.count(), view.countNote(), view.interval(), view.judgement());
    if (now - ribbonDrawnAt >= RIBBON_FRAME_NANOS || now < ribbonDrawnAt) {
      ribbonDrawnAt = now;
      ribbon.show(
          LiveView.ribbon(state, now),
          now - LiveView.RIBBON_PAST_NANOS,
          now + LiveView.RIBBON_AHEAD_NANOS);
    }
    String found = FindingsView.told(state, now).map(FindingsView.Told::title).orElse("");
    return new Lines(view, asked(state, now), found);
  }

  private static String asked(CoachState state, long now) {
    Segment segment = state.schedule().stretchAt(now);
    return switch (segment.kind()) {
      case WATCHING -> "no breaths asked for";
      case NO_RATE -> "breaths, no rate here";
      default -> Phrases.shortRhythm(segment.guidance());
    };
  }

  /** Shows that nothing is going on. */
  public void rest() {
    tide.show(0, 0, 0);
    words.show("", "", "", "", Judgement.UNJUDGED);
    ribbon.show(List.of(), 0, 1);
  }
}
