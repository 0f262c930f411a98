package squeezewell.desktop.screens;

import java.util.Optional;
import squeezewell.live.LiveStation;
import squeezewell.station.file.StationPhase;
import squeezewell.station.run.StationState;

/**
 * What a class sees of a running station: what the trainee sees too, and nothing more. Findings
 * that nobody has found, critical faults and how tasks are judged stay with the instructor. Pure.
 *
 * @param clock what is left of the phase
 * @param phase the phase, and whether its clock stands
 * @param title above what the examiner said
 * @param text what the examiner said last; before that the case
 * @param next what is expected next or goes on; empty if nothing is
 * @param how how that stands, in words
 * @param oxygen what is left of the oxygen; empty before it flows
 */
public record StationProjectorView(
    String clock, String phase, String title, String text, String next, String how, String oxygen) {
  /** The view of a station at an instant of session time. */
  public static StationProjectorView of(LiveStation.Now at, long nowNanos) {
    StationState state = at.station();
    StationRunView run = StationRunView.of(state, nowNanos);
    boolean silent = run.examiner().isEmpty();
    Optional<StationItem> next = run.next();
    return new StationProjectorView(
        run.left(),
        state.clockStopped() ? "Clock stopped" : state.phase().label(),
        silent ? state.station().title() : run.examinerWhen(),
        silent ? theCase(state) : run.examiner(),
        next.map(StationItem::lead).orElse(""),
        next.map(StationItem::status).orElse(""),
        run.oxygen());
  }

  private static String theCase(StationState state) {
    return state.phase() == StationPhase.PREPARATION
        ? state.station().setting()
        : state.station().patient() + ".";
  }
}
