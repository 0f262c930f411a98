package squeezewell.session;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.cue.Control;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.PatientChange;

/** Walks through the events of a session and follows the findings in them. */
final class FindingWalk {
  private final List<Control> controls = new ArrayList<>();
  private final List<NotedFinding> noted = new ArrayList<>();

  /** Places in {@link #noted} of the findings that stand, the last on top. */
  private final Deque<Integer> standing = new ArrayDeque<>();

  private PatientCourse course;

  private FindingWalk(PracticePlan plan) {
    course = PatientCourse.of(plan);
  }

  static FindingWalk through(PracticePlan plan, List<SessionEvent> events) {
    FindingWalk walk = new FindingWalk(plan);
    events.forEach(walk::step);
    return walk;
  }

  /** What changed the prompts, in order. */
  List<Control> controls() {
    return List.copyOf(controls);
  }

  /** What was found, in order. */
  List<NotedFinding> findings() {
    return List.copyOf(noted);
  }

  private void step(SessionEvent event) {
    Fact fact = event.fact();
    if (fact instanceof Fact.Found found) {
      find(event, found.finding());
    } else if (fact.type() == EventType.FINDING_UNDONE) {
      undo(event.atNanos(), ((Fact.Correction) fact).event());
    } else {
      fact.control().ifPresent(kind -> controls.add(new Control(event.atNanos(), kind)));
    }
  }

  private void find(SessionEvent event, PatientChange found) {
    PatientCourse next = course.after(found);
    standing.push(noted.size());
    noted.add(
        new NotedFinding(
            event.number(), event.atNanos(), found, course, next, OptionalLong.empty()));
    moveTo(next, event.atNanos());
  }

  private void undo(long atNanos, int number) {
    if (!standing.isEmpty() && noted.get(standing.peek()).number() == number) {
      int place = standing.pop();
      noted.set(place, noted.get(place).takenBack(atNanos));
      moveTo(course.undone(), atNanos);
    }
  }

  private void moveTo(PatientCourse next, long atNanos) {
    Optional<Control> control = next.controlFrom(course, atNanos);
    control.ifPresent(controls::add);
    course = next;
  }
}
