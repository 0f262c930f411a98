package squeezewell.desktop.screens.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Command;
import squeezewell.desktop.screens.live.LiveFace.Ground;
import squeezewell.desktop.screens.live.LiveFace.Vessel;
import squeezewell.protocol.Judgement;

/**
 * What the live screen says. Limits: 5 to 7 s a breath, 5 to 10 s a check of AHA 2025 and its
 * course texts; 10 s without a breath is our own rule.
 */
class FacesTest {
  private static LiveFace face(LiveScenes.Still practice) {
    return Faces.of(practice.state(), "AHA 2025", practice.nowNanos());
  }

  private static LiveFace scene(String name) {
    return face(LiveScenes.all().get(name));
  }

  @Test
  void feedbackIsThatOfTheLastWholeIntervalAndGoesWhenItIsOld() {
    LiveFace late = scene("release-late");
    assertThat(late.feedback().orElseThrow())
        .isEqualTo(new LiveFace.Feedback(Judgement.SLOW, "Late", "7.3 s"));
    LiveFace early = scene("release-early");
    assertThat(early.feedback().orElseThrow().word()).isEqualTo("Early");
    // Seven seconds after the last breath its interval says nothing of the present.
    assertThat(face(LiveScenes.adult().breaths(1, 0.1, 6.1).until(13.0)).feedback()).isPresent();
    assertThat(face(LiveScenes.adult().breaths(1, 0.1, 6.1).until(13.2)).feedback()).isEmpty();
  }

  @Test
  void theGroundChangesOnlyWhereTheBagMustRestOrABreathIsMissing() {
    Map<String, LiveScenes.Still> all = LiveScenes.all();
    all.forEach(
        (name, practice) -> {
          Ground ground = face(practice).ground();
          switch (name) {
            case "check", "child-check", "suction", "rhythm-check" ->
                assertThat(ground).as(name).isEqualTo(Ground.REST);
            case "decide", "missing", "suction-over" ->
                assertThat(ground).as(name).isEqualTo(Ground.GAP);
            default -> assertThat(ground).as(name).isEqualTo(Ground.PLAIN);
          }
        });
    assertThat(face(LiveScenes.adult().breaths(1, 0.1).until(11)).ground()).isEqualTo(Ground.PLAIN);
    assertThat(face(LiveScenes.adult().breaths(1, 0.1).until(11.2)).ground()).isEqualTo(Ground.GAP);
  }

  @Test
  void theTestBetraysNothing() {
    LiveFace at42 = scene("test");
    assertThat(at42.clock()).isEqualTo("Test");
    assertThat(at42.strip()).isEmpty();
    assertThat(at42.feedback()).isEmpty();
    assertThat(at42.ribbon()).isFalse();
    assertThat(at42.count()).isEmpty();
    // However long it lasts and whatever was done, it looks the same.
    LiveScenes.Still practice = LiveScenes.all().get("test");
    assertThat(face(practice.breaths(1, 45, 47, 49).until(80))).isEqualTo(at42);
  }

  @Test
  void aCheckCountsItsSecondsAndSaysWhatEndsIt() {
    LiveFace check = scene("check");
    assertThat(check.word()).isEqualTo("Check pulse");
    assertThat(check.count()).isEqualTo("6");
    assertThat(check.cells().orElseThrow().done()).isEqualTo(6);
    assertThat(check.cells().orElseThrow().of()).isEqualTo(10);
    assertThat(check.cells().orElseThrow().least()).isEqualTo(5);
    assertThat(check.below().get(0).text()).isEqualTo("The next squeeze ends the check.");
    LiveFace over = scene("decide");
    assertThat(over.word()).isEqualTo("Decide now");
    assertThat(over.below().get(0).text()).isEqualTo("Not sure? No pulse: start CPR.");
    assertThat(scene("child-check").hint()).startsWith("Carotid or femoral");
    assertThat(scene("rhythm-check").cells().orElseThrow().least()).isZero();
  }

  @Test
  void compressionsFillTheVesselSlatBySlat() {
    assertThat(scene("compress").vessel().orElseThrow()).isInstanceOf(Vessel.Slats.class);
    assertThat(scene("compress").feedback().orElseThrow().value()).isEqualTo("110/min");
    assertThat(scene("cycle-breath").note()).startsWith("of 2").contains("hands off");
    assertThat(scene("cycle-breath").vessel().orElseThrow()).isInstanceOf(Vessel.Tide.class);
  }

  @Test
  void aMissingBreathIsCountedAndTheLimitTold() {
    LiveFace missing = scene("missing");
    assertThat(missing.word()).isEqualTo("Squeeze now");
    // The last squeeze ended at 13.1 s, the present is 25.4 s.
    assertThat(missing.count()).isEqualTo("12");
    assertThat(missing.more().get(0).text()).isEqualTo("limit 10 s");
    assertThat(missing.more().get(1).text()).isEqualTo("2 prompts missed");
  }

  @Test
  void newbornBreathsAreToldAsARate() {
    LiveFace newborn = scene("newborn");
    // One every 1.3 s is 46 a minute.
    assertThat(newborn.feedback().orElseThrow().value()).isEqualTo("46/min");
    assertThat(newborn.detail()).startsWith("ventilation");
  }

  @Test
  void fadingShowsItsLevelWhilePromptsRest() {
    LiveFace fading = scene("fading");
    assertThat(fading.word()).isEqualTo("On your own");
    assertThat(fading.steps().orElseThrow().level()).isEqualTo(3);
    assertThat(fading.feedback()).isPresent();
    assertThat(fading.vessel().orElseThrow()).isInstanceOf(Vessel.Hatched.class);
  }

  @Test
  void whatWasFoundCanBeTakenBackForAWhile() {
    assertThat(scene("changed").advice()).isPresent();
    assertThat(scene("changed").noted()).startsWith("Noted:");
    LiveScenes.Still later = LiveScenes.all().get("changed").until(50);
    assertThat(face(later).noted()).isEmpty();
    assertThat(face(later).advice()).isEmpty();
  }

  @Test
  void aPauseTellsHowItWentSoFar() {
    LiveFace paused = scene("paused");
    assertThat(paused.word()).isEqualTo("Paused");
    assertThat(paused.beside().get(1).text()).isEqualTo("4 of 4");
    assertThat(face(LiveScenes.adult().at(2, Command.PAUSE).until(3)).beside()).isEmpty();
  }

  /** At most twelve words stand on the screen for the hands, those of buttons left out. */
  @Test
  void fewWordsStandOnTheScreen() {
    LiveScenes.all()
        .forEach(
            (name, practice) -> {
              LiveFace face = face(practice);
              String words =
                  face.word()
                      + " "
                      + face.note()
                      + " "
                      + face.feedback().map(LiveFace.Feedback::word).orElse("");
              assertThat(words.trim().split("[ ·]+").length).as(name).isLessThanOrEqualTo(12);
            });
  }
}
