package squeezewell.desktop.screens.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.lang.reflect.Proxy;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JScrollBar;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.screens.Navigator;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.trainee.PastPractice;
import squeezewell.trainee.RecordBook;

class PracticeScreenTest {
  private final AtomicReference<Settings> settings = new AtomicReference<>(Settings.defaults());
  private final AtomicReference<PracticePlan> started = new AtomicReference<>();

  private final AtomicReference<RecordBook> book = new AtomicReference<>(RecordBook.of(List.of()));

  private final Navigator navigator =
      (Navigator)
          Proxy.newProxyInstance(
              Navigator.class.getClassLoader(),
              new Class<?>[] {Navigator.class},
              (proxy, method, words) -> {
                switch (method.getName()) {
                  case "settings":
                    return settings.get();
                  case "keep":
                    settings.set((Settings) words[0]);
                    return null;
                  case "readBook":
                    @SuppressWarnings("unchecked")
                    BiConsumer<RecordBook, ZoneId> told = (BiConsumer<RecordBook, ZoneId>) words[0];
                    told.accept(book.get(), ZoneOffset.UTC);
                    return null;
                  case "readToday":
                    return null;
                  case "toLive":
                    started.set((PracticePlan) words[1]);
                    return null;
                  default:
                    throw new AssertionError(method);
                }
              });

  private final Look look = new Look(Palette.lightTheme(), 1);
  private final Sheets sheets = new Sheets(look);

  private Sheets screen() {
    return screen(look, 412, 892);
  }

  private Sheets screen(Look inLook, int width, int height) {
    inLook.install();
    sheets.look(inLook);
    sheets.show(
        PracticeScreen.build(inLook, sheets, navigator, GuidelineLibrary.editions(), List.of(), 0));
    sheets.setSize(width, height);
    // Once for the width, once for what follows from it.
    layOut(sheets);
    layOut(sheets);
    return sheets;
  }

  private static Stream<Component> all(Component part) {
    return part instanceof Container container
        ? Stream.concat(
            Stream.of(part), Stream.of(container.getComponents()).flatMap(PracticeScreenTest::all))
        : Stream.of(part);
  }

  private static Optional<Component> named(Component screen, String name) {
    return all(screen).filter(c -> name.equals(c.getName())).findFirst();
  }

  private static void press(Component screen, String name) {
    ((AbstractButton) named(screen, name).orElseThrow()).doClick(0);
  }

  private static void find(Component screen, String typed) {
    if (named(screen, "age-or-weight").isEmpty()) {
      press(screen, "options");
      ((AbstractButton) lastNamed(screen, "age")).doClick(0);
    }
    JTextField number = (JTextField) named(screen, "age-or-weight").orElseThrow();
    number.setText(typed);
    number.postActionEvent();
  }

  /** The one in the sheet, which lies over the screen. */
  private static Component lastNamed(Component screen, String name) {
    return all(screen)
        .filter(c -> name.equals(c.getName()))
        .filter(c -> shown(c))
        .findFirst()
        .orElseThrow();
  }

  private Guidance startedWith(Component screen) {
    press(screen, "start");
    return started.get().guidance();
  }

  /** AHA 2020, pediatric basic life support: 30 to 2 alone, 15 to 2 with two rescuers. */
  @Test
  void theNumberOfRescuersOfLastTimeIsOfferedAgain() {
    for (int rescuers : new int[] {1, 2}) {
      LastChoice last =
          new LastChoice(
              "aha-2020", PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, rescuers, 3);
      settings.set(Settings.defaults().withLastChoice(last));
      assertThat(startedWith(screen()).rescuers()).isEqualTo(rescuers);
      assertThat(settings.get().lastChoice()).isEqualTo(last);
    }
  }

  /** From level 1 to level 3 in one practice: next is level 2. */
  @Test
  void fadingGoesOnFromLastTimeUnlessItIsToBeginAnew() {
    LastChoice last =
        new LastChoice(
            "aha-2025", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0, 3, Prompting.FADING);
    settings.set(Settings.defaults().withLastChoice(last).withTrainee("Ann"));
    Guidance adult = startedWith(screen());
    assertThat(started.get().startLevel()).isZero();
    book.set(
        RecordBook.of(
            List.of(
                new PastPractice(
                    Instant.parse("2026-03-01T10:00:00Z"),
                    Instant.parse("2026-03-01T10:02:00Z"),
                    "Ann",
                    adult,
                    Prompting.FADING,
                    1,
                    3,
                    Optional.empty()))));
    Component screen = screen();
    assertThat(texts(screen))
        .anyMatch(t -> t.startsWith("Last time, 1 Mar 2026, you ended at level 3 of 5. You begin"));
    startedWith(screen);
    assertThat(started.get().startLevel()).isEqualTo(2);
    press(screen, "prompts-Fading");
    startedWith(screen);
    assertThat(started.get().startLevel()).isZero();
    press(screen, "prompts-Fading, from level 2");
    startedWith(screen);
    assertThat(started.get().startLevel()).isEqualTo(2);
    // What somebody else held does not count.
    settings.set(Settings.defaults().withLastChoice(last).withTrainee("Bob"));
    startedWith(screen());
    assertThat(started.get().startLevel()).isZero();
  }

  private static List<String> texts(Component screen) {
    return all(screen)
        .filter(c -> c instanceof JTextComponent)
        .map(c -> ((JTextComponent) c).getText())
        .toList();
  }

  @Test
  void promptsAreChosenKeptAndOfferedOnlyWhereTheyMayFallSilent() {
    LastChoice last =
        new LastChoice(
            "aha-2025", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0, 3, Prompting.FADING);
    settings.set(Settings.defaults().withLastChoice(last));
    assertThat(startedWith(screen()).patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(started.get().prompting()).isEqualTo(Prompting.FADING);
    assertThat(settings.get().lastChoice()).isEqualTo(last);
    // Compressions are prompted throughout; what was wished is kept for the next steady rhythm.
    settings.set(
        Settings.defaults()
            .withLastChoice(
                new LastChoice(
                    "aha-2025",
                    PatientGroup.ADULT,
                    Situation.ARREST_NO_ADVANCED_AIRWAY,
                    0,
                    3,
                    Prompting.NONE)));
    press(screen(), "start");
    assertThat(started.get().prompting()).isEqualTo(Prompting.THROUGHOUT);
    assertThat(settings.get().lastChoice().prompting()).isEqualTo(Prompting.NONE);
  }

  @Test
  void anAgeChoosesThePatient() {
    Component screen = screen();
    find(screen, "5");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.CHILD);
  }

  @Test
  void whereTwoGroupsFitNothingChangesUntilThePersonChooses() {
    Component screen = screen();
    find(screen, "10");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.ADULT);
    press(screen, "take-child");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.CHILD);
    assertThat(named(screen, "take-adult")).isEmpty();
  }

  /** ERC 2021, paediatric life support: 15 breaths a minute from 8 years on (from memory). */
  @Test
  void anAgeChoosesTheRhythmWithinTheGroup() {
    settings.set(
        Settings.defaults()
            .withLastChoice(
                new LastChoice(
                    "erc-2021", PatientGroup.CHILD, Situation.PULSE_NO_BREATHING, 0, 2)));
    Component screen = screen();
    find(screen, "9");
    assertThat(startedWith(screen).rhythm().steadyBreaths().get().interval().seconds())
        .isEqualTo(4);
    press(screen, "situation-Pulse, not breathing");
    assertThat(startedWith(screen).rhythm().steadyBreaths().get().interval().seconds())
        .isEqualTo(3);
  }

  @Test
  void chipsChangeTheCardAtOnce() {
    Component screen = screen();
    assertThat(texts(screen)).contains("Adult · 5 min");
    press(screen, "patient-newborn");
    press(screen, "minutes-2");
    assertThat(texts(screen)).contains("Newborn · 2 min", "Your choice");
    Guidance newborn = startedWith(screen);
    assertThat(newborn.situation()).isEqualTo(Situation.NEWBORN_VENTILATION);
    assertThat(started.get().lengthNanos()).isEqualTo(120_000_000_000L);
  }

  @Test
  void whoHasPracticedNothingIsShownTheFirstStep() {
    settings.set(
        Settings.defaults()
            .withLastChoice(
                new LastChoice(
                    "aha-2025", PatientGroup.CHILD, Situation.ARREST_ADVANCED_AIRWAY, 0, 10)));
    Component screen = screen();
    assertThat(texts(screen)).contains("Today: start here");
    press(screen, "use");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(started.get().lengthNanos()).isEqualTo(120_000_000_000L);
  }

  /** Whatever is chosen, on a phone of 412 by 892 less the bar of the places. */
  @Test
  void startAndEveryChoiceAreSeenWithoutScrolling() {
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        settings.set(
            Settings.defaults()
                .withLastChoice(
                    new LastChoice(
                        edition.id(),
                        guidance.patient(),
                        guidance.situation(),
                        guidance.rescuers(),
                        60,
                        Prompting.FADING)));
        Component screen = screen(look, 412, 816);
        Component minutes = named(screen, "minutes-60").orElseThrow();
        Rectangle place =
            SwingUtilities.convertRectangle(minutes.getParent(), minutes.getBounds(), screen);
        assertThat(new Rectangle(412, 816).contains(place))
            .as("%s, %s at %s", edition.id(), guidance.words(), place)
            .isTrue();
      }
    }
  }

  /** Nothing is wider than what holds it, from the smallest window to a tablet. */
  @Test
  void nothingScrollsSidewaysAtAnySizeOfTextOrWindow() {
    for (double scale : new double[] {1, 1.5, 2}) {
      for (int width : new int[] {360, 412, 600, 840, 1280}) {
        Look large = new Look(Palette.lightTheme(), scale);
        Component screen = screen(large, width, 800);
        assertThat(all(screen).filter(c -> shown(c) && c.getParent() != null))
            .allSatisfy(
                c ->
                    assertThat(c.getX() + c.getWidth())
                        .as("%s at %s and %s", c, scale, width)
                        .isLessThanOrEqualTo(c.getParent().getWidth()));
        assertThat(
                all(screen)
                    .filter(AbstractButton.class::isInstance)
                    .filter(c -> shown(c) && !(c.getParent() instanceof JScrollBar)))
            .allSatisfy(c -> assertThat(c.getHeight()).isGreaterThanOrEqualTo(large.px(48)));
      }
    }
  }

  private static void layOut(Container part) {
    part.doLayout();
    for (Component child : part.getComponents()) {
      if (child instanceof Container inner) {
        layOut(inner);
      }
    }
  }

  private static boolean shown(Component part) {
    for (Component each = part; each != null; each = each.getParent()) {
      if (!each.isVisible()) {
        return false;
      }
    }
    return true;
  }

  /**
   * ERC 2021: a child to 18 years; AHA: an adult from 14 years on at the latest, our own choice.
   */
  @Test
  void anotherEditionJudgesTheAgeAgainAndKeepsTheSituation() {
    settings.set(
        Settings.defaults()
            .withLastChoice(
                new LastChoice(
                    "erc-2021", PatientGroup.CHILD, Situation.ARREST_ADVANCED_AIRWAY, 0, 2)));
    Component screen = screen();
    find(screen, "16");
    assertThat(named(screen, "take-child")).isPresent();
    settings.set(
        Settings.defaults()
            .withLastChoice(
                new LastChoice(
                    "aha-2020", PatientGroup.CHILD, Situation.ARREST_ADVANCED_AIRWAY, 0, 2)));
    screen = screen();
    find(screen, "16");
    Guidance guidance = startedWith(screen);
    assertThat(guidance.patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(guidance.situation()).isEqualTo(Situation.ARREST_ADVANCED_AIRWAY);
  }
}
