package squeezewell.desktop.screens.practice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.Today;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.words.Wording;

/** What the practice screen says and offers. Pure. */
final class PracticeView {
  static final Wording WORDS = Wording.beside(PracticeView.class);

  private PracticeView() {}

  /**
   * A situation to choose.
   *
   * @param situation what was found
   * @param guidance what the edition asks for; empty if it asks for nothing
   * @param label in few words
   */
  record Scene(Situation situation, Optional<Guidance> guidance, String label) {}

  /**
   * The situations of a patient, those that an edition lacks too.
   *
   * @param now what is chosen: of rhythms that hold from an age on only that one is there
   */
  static List<Scene> scenes(Protocol edition, PatientGroup patient, Guidance now) {
    List<Scene> scenes = new ArrayList<>();
    for (Situation situation : Situation.values()) {
      List<Guidance> there =
          edition.guidance().stream()
              .filter(g -> g.patient() == patient && g.situation() == situation)
              .filter(g -> g.fromAge().isEmpty() || g.equals(now))
              .toList();
      List<String> labels = there.stream().map(PracticeView::label).toList();
      for (Guidance guidance : there) {
        String label = label(guidance);
        boolean alone = Collections.frequency(labels, label) == 1;
        scenes.add(
            new Scene(situation, Optional.of(guidance), alone ? label : longer(label, guidance)));
      }
      if (there.isEmpty() && patient.situations().contains(situation)) {
        scenes.add(new Scene(situation, Optional.empty(), label(situation)));
      }
    }
    return scenes;
  }

  private static String label(Guidance guidance) {
    return guidance.rhythm() instanceof Rhythm.CompressionCycle cycle
        ? WORDS.say(
            "situation.arrest-no-advanced-airway", cycle.perCycle(), cycle.breathsPerCycle())
        : label(guidance.situation());
  }

  private static String label(Situation situation) {
    String missing = "situation." + situation.id() + ".missing";
    return WORDS.say(WORDS.has(missing) ? missing : "situation." + situation.id());
  }

  private static String longer(String label, Guidance guidance) {
    if (guidance.fromAge().isPresent()) {
      return WORDS.say("situation.aged", label, guidance.fromAge().get().words());
    }
    return switch (guidance.rescuers()) {
      case 0 -> label;
      case 1 -> WORDS.say("situation.alone", label);
      default -> WORDS.say("situation.several", label, guidance.rescuers());
    };
  }

  /** The label of what is chosen, as the chips have it. */
  static String label(Protocol edition, Guidance guidance) {
    return scenes(edition, guidance.patient(), guidance).stream()
        .filter(scene -> scene.guidance().filter(guidance::equals).isPresent())
        .map(Scene::label)
        .findFirst()
        .orElseGet(() -> label(guidance));
  }

  static String title(Guidance guidance, int minutes) {
    return WORDS.say("start.title", guidance.patient().label(), minutes);
  }

  static String line(Protocol edition, Guidance guidance) {
    return WORDS.say("start.line", label(edition, guidance), Phrases.shortRhythm(guidance));
  }

  static Sign picture(PatientGroup patient) {
    return switch (patient) {
      case ADULT -> Sign.ADULT;
      case CHILD -> Sign.CHILD;
      case INFANT -> Sign.INFANT;
      case NEWBORN -> Sign.NEWBORN;
    };
  }

  /** The patients of the program, old to young. */
  static List<PatientGroup> patients() {
    return Arrays.asList(PatientGroup.values());
  }

  /** The first edition that has a situation of a patient; the newest come first. */
  static Optional<Protocol> other(
      List<Protocol> protocols, PatientGroup patient, Situation situation) {
    return protocols.stream()
        .filter(p -> !p.local())
        .filter(p -> p.find(patient, situation).isPresent())
        .max(java.util.Comparator.comparing(p -> p.supersededBy().isEmpty()));
  }

  /**
   * The card of what to practice today.
   *
   * @param eyebrow what it is about
   * @param title the most important thing
   * @param text why, in a sentence or two
   */
  record Card(String eyebrow, String title, String text) {}

  /** What to practice today; for somebody who has practiced nothing the first step. */
  static Card today(Optional<Today> today) {
    return today
        .map(
            t ->
                new Card(
                    WORDS.say("today." + t.advice().prompting().word()),
                    WORDS.say("today.title", t.last().headline()),
                    String.join(" ", t.advice().lines())))
        .orElseGet(
            () ->
                new Card(
                    WORDS.say("today.first"),
                    WORDS.say("today.first.title"),
                    WORDS.say("today.first.text")));
  }
}
