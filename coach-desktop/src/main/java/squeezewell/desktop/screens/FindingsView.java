package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.coach.CoachState;
import squeezewell.cue.CareKind;
import squeezewell.cue.PatientCourse;
import squeezewell.protocol.PatientChange;
import squeezewell.session.NotedFinding;

/**
 * What the live screen offers to find, and what it says once something was found. Pure.
 *
 * @param choices what may be found now, at most nine, each with the key of its place, from 1 on
 */
public record FindingsView(List<Offer> choices) {
  /** For so long a screen says what was found and what follows from it (our own choice). */
  static final long TELL_NANOS = 9_000_000_000L;

  private static final int MOST = 9;

  public FindingsView {
    choices = List.copyOf(choices);
  }

  /**
   * Something that may be found.
   *
   * @param finding what
   * @param key the digit that notes it
   * @param label in words
   * @param leads what follows from it, in few words
   */
  public record Offer(PatientChange finding, int key, String label, String leads) {
    /** What a screen reader adds to its label. */
    public String spokenHint() {
      return "Key " + key + ". Then: " + leads;
    }
  }

  /** What a screen reader says when the list is opened. */
  public String spoken() {
    return choices.stream()
        .map(c -> c.key() + ", " + c.label())
        .collect(Collectors.joining("; ", "What was found? ", ""));
  }

  /**
   * What a screen says after a finding.
   *
   * @param title what was found
   * @param text what to do about it, and what the prompts do
   */
  public record Told(String title, String text) {}

  /** What may be found in a practice as it stands. */
  public static FindingsView of(CoachState state) {
    PatientCourse course = state.course();
    List<Offer> choices = new ArrayList<>();
    for (PatientChange finding : course.state().possible()) {
      if (choices.size() < MOST) {
        choices.add(
            new Offer(finding, choices.size() + 1, finding.label(), leads(finding, course)));
      }
    }
    return new FindingsView(choices);
  }

  private static String leads(PatientChange finding, PatientCourse course) {
    PatientCourse next = course.after(finding);
    if (finding == PatientChange.VOMIT) {
      return course.compressesDuringSuction() ? "suction, compress on" : "suction";
    }
    if (next.care() == CareKind.BREATHE_NO_RATE) {
      return "breaths only, no rate here";
    }
    if (!next.covered()) {
      return "no rhythm in this edition";
    }
    if (!next.controlFrom(course, 0).isPresent()) {
      return "rhythm stays";
    }
    return next.care() == CareKind.WATCH ? "watch" : Phrases.shortRhythm(next.guidance());
  }

  /** The choice of a digit. */
  public Optional<Offer> choice(int key) {
    return choices.stream().filter(c -> c.key() == key).findFirst();
  }

  /** What to say at an instant; empty when the last finding is old news. */
  public static Optional<Told> told(CoachState state, long nowNanos) {
    List<NotedFinding> findings = state.findings();
    if (findings.isEmpty()) {
      return Optional.empty();
    }
    NotedFinding last = findings.get(findings.size() - 1);
    if (nowNanos - last.atNanos() > TELL_NANOS || state.finished()) {
      return Optional.empty();
    }
    String label = last.finding().label();
    if (last.undone()) {
      return Optional.of(new Told("Taken back: " + label, "The rhythm of before goes on."));
    }
    return Optional.of(new Told(label, last.after().advice(last.finding()) + rhythm(last)));
  }

  private static String rhythm(NotedFinding noted) {
    PatientCourse after = noted.after();
    if (after.care() == CareKind.BREATHE_NO_RATE) {
      return " Breaths only: this edition gives no rate here, so nothing is prompted. Follow local"
          + " protocol.";
    }
    if (!after.covered()) {
      return " This edition has no rhythm for it here: the prompts stay. Follow local protocol.";
    }
    return noted.changesPrompts() && after.care().prompted()
        ? " Now: " + Phrases.shortRhythm(after.guidance()) + "."
        : "";
  }
}
