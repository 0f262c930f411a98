package squeezewell.session;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.cue.Control;
import squeezewell.cue.Course;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.ClinicalFinding;

/** Walks through the events of a session and follows the findings in them. */
final class FindingWalk {
  private final List<Control> controls = new ArrayList<>();
  private final List<NotedFinding> noted = new ArrayList<>();

  /** Places in {@link #noted} of the findings that stand, the last on top. */
  private final Deque<Integer> standing = new ArrayDeque<>();

  private Course course;

  private FindingWalk(PracticePlan plan) {
    course = Course.of(plan);
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
    if (event.what() == What.FINDING) {
      // Other words are a free remark, which changes nothing.
      ClinicalFinding.of(event.detail()).ifPresent(found -> find(event, found));
    } else if (event.what() == What.FINDING_UNDONE) {
      undo(event);
    } else {
      event
          .what()
          .control(event.detail())
          .ifPresent(kind -> controls.add(new Control(event.atNanos(), kind)));
    }
  }

  private void find(SessionEvent event, ClinicalFinding found) {
    Course next = course.after(found);
    standing.push(noted.size());
    noted.add(new NotedFinding(event.number(), event.atNanos(), found, course, next, OptionalLong.empty()));
    moveTo(next, event.atNanos());
  }

  private void undo(SessionEvent event) {
    boolean last =
        !standing.isEmpty()
            && event.detail().equals(Integer.toString(noted.get(standing.peek()).number()));
    if (last) {
      int place = standing.pop();
      noted.set(place, noted.get(place).takenBack(event.atNanos()));
      moveTo(course.undone(), event.atNanos());
    }
  }

  private void moveTo(Course next, long atNanos) {
    Optional<Control> control = next.controlFrom(course, atNanos);
    control.ifPresent(controls::add);
    course = next;
  }
}
