package squeezewell.desktop.screens;

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
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.trainee.PastPractice;
import squeezewell.trainee.RecordBook;

class SetupScreenTest {
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
                  case "toLive":
                    started.set((PracticePlan) words[1]);
                    return null;
                  default:
                    throw new AssertionError(method);
                }
              });

  private JScrollPane screen() {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    return SetupScreen.build(kit, navigator, GuidelineLibrary.editions(), List.of(), 0);
  }

  private static Stream<Component> all(Component part) {
    return part instanceof Container container
        ? Stream.concat(
            Stream.of(part), Stream.of(container.getComponents()).flatMap(SetupScreenTest::all))
        : Stream.of(part);
  }

  private static Optional<Component> named(Component screen, String name) {
    return all(screen).filter(c -> name.equals(c.getName())).findFirst();
  }

  private static void press(Component screen, String name) {
    ((JButton) named(screen, name).orElseThrow()).doClick(0);
  }

  private static void find(Component screen, String typed) {
    JTextField number = (JTextField) named(screen, "age-or-weight").orElseThrow();
    number.setText(typed);
    number.postActionEvent();
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
    JComboBox<?> prompts =
        all(screen)
            .filter(c -> c instanceof JComboBox<?> box && box.getItemCount() == 4)
            .map(c -> (JComboBox<?>) c)
            .findFirst()
            .orElseThrow();
    assertThat(prompts.getSelectedItem().toString()).endsWith("from level 2");
    prompts.setSelectedIndex(prompts.getSelectedIndex() + 1);
    assertThat(prompts.getSelectedItem().toString()).endsWith("from the beginning");
    startedWith(screen);
    assertThat(started.get().startLevel()).isZero();
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
    JScrollPane screen = screen();
    press(screen, "by-age");
    find(screen, "5");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.CHILD);
  }

  @Test
  void whereTwoGroupsFitNothingChangesUntilThePersonChooses() {
    JScrollPane screen = screen();
    press(screen, "by-age");
    find(screen, "10");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.ADULT);
    press(screen, "take-child");
    assertThat(startedWith(screen).patient()).isEqualTo(PatientGroup.CHILD);
    assertThat(named(screen, "take-adult")).isEmpty();
  }

  @Test
  void foldedItTakesNoRoomAndTheListStillChooses() {
    JScrollPane screen = screen();
    Component number = named(screen, "age-or-weight").orElseThrow();
    assertThat(shown(number)).isFalse();
    press(screen, "by-age");
    assertThat(shown(number)).isTrue();
    press(screen, "by-age");
    assertThat(shown(number)).isFalse();
  }

  /** Whatever is chosen, on a phone of 412 by 892, with the age's field folded out too. */
  @Test
  void startStationsAndKitAreSeenWithoutScrolling() {
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
        JScrollPane screen = screen();
        screen.setSize(412, 892);
        press(screen, "by-age");
        find(screen, "10");
        layOut(screen);
        layOut(screen);
        for (String text : List.of("Start", "Stations", "Kit")) {
          Component button = button(screen, text);
          Rectangle place =
              SwingUtilities.convertRectangle(button.getParent(), button.getBounds(), screen);
          assertThat(new Rectangle(412, 892).contains(place))
              .as("%s of %s, %s at %s", text, edition.id(), guidance.situation(), place)
              .isTrue();
        }
      }
    }
  }

  @Test
  void largeTypeNeedsNoScrollingSideways() {
    for (double scale : new double[] {1, 1.5, 2}) {
      Widgets kit = new Widgets(new Look(Palette.lightTheme(), scale));
      JScrollPane screen =
          SetupScreen.build(kit, navigator, GuidelineLibrary.editions(), List.of(), 0);
      assertThat(screen.getViewport().getView().getPreferredSize().width)
          .isLessThanOrEqualTo(kit.look().px(412) - kit.look().px(Widgets.SCROLL_BAR));
    }
  }

  @Test
  void inAHighWindowTheRowsStayAsTheyAre() {
    JScrollPane screen = screen();
    screen.setSize(412, 892);
    layOut(screen);
    int before = top(screen, "Stations");
    screen.setSize(412, 2_000);
    layOut(screen);
    assertThat(top(screen, "Stations")).isEqualTo(before);
  }

  private static int top(JScrollPane screen, String text) {
    Component button = button(screen, text);
    return SwingUtilities.convertPoint(button, 0, 0, screen).y;
  }

  private static Component button(Component screen, String text) {
    return all(screen)
        .filter(c -> c instanceof JButton button && button.getText().equals(text))
        .findFirst()
        .orElseThrow();
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
    JScrollPane screen = screen();
    press(screen, "by-age");
    find(screen, "16");
    assertThat(named(screen, "take-child")).isPresent();
    JComboBox<?> editions =
        all(screen)
            .filter(JComboBox.class::isInstance)
            .map(c -> (JComboBox<?>) c)
            .findFirst()
            .orElseThrow();
    for (int i = 0; i < editions.getItemCount(); i++) {
      if (editions.getItemAt(i).toString().equals("AHA 2020")) {
        editions.setSelectedIndex(i);
      }
    }
    Guidance guidance = startedWith(screen);
    assertThat(guidance.patient()).isEqualTo(PatientGroup.ADULT);
    assertThat(guidance.situation()).isEqualTo(Situation.ARREST_ADVANCED_AIRWAY);
  }
}
