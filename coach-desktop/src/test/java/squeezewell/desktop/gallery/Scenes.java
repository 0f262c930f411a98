package squeezewell.desktop.gallery;

import java.lang.reflect.Proxy;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import javax.swing.JComponent;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.parts.Stack;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.live.LiveScenes;
import squeezewell.desktop.screens.practice.PracticeScreen;
import squeezewell.desktop.screens.settings.SettingsScreen;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.trainee.RecordBook;

/** All states of all screens that are worth looking at. */
final class Scenes {
  private Scenes() {}

  static List<Scene> all() {
    List<Scene> scenes = new ArrayList<>();
    scenes.add(practice("practice-first", Settings.defaults(), ""));
    LastChoice newborn =
        new LastChoice("aha-2025", PatientGroup.NEWBORN, Situation.NEWBORN_VENTILATION, 1, 2);
    scenes.add(practice("practice-newborn", Settings.defaults().withLastChoice(newborn), ""));
    scenes.add(practice("practice-options", Settings.defaults(), "options"));
    scenes.addAll(LiveScenes.scenes());
    scenes.add(
        new Scene(
            "settings",
            look -> SettingsScreen.build(look, navigator(Settings.defaults()), kind -> {})));
    return scenes;
  }

  private static Scene practice(String name, Settings settings, String press) {
    return new Scene(
        name,
        look -> {
          Sheets sheets = new Sheets(look);
          sheets.show(
              PracticeScreen.build(
                  look, sheets, navigator(settings), GuidelineLibrary.editions(), List.of(), 0));
          return sheets;
        },
        screen -> press(screen, press));
  }

  private static void press(JComponent screen, String name) {
    if (!name.isEmpty()) {
      ((javax.swing.AbstractButton) Stack.named(screen, name).orElseThrow()).doClick(0);
    }
  }

  /** Knows the settings and an empty record, and leads nowhere. */
  static Navigator navigator(Settings settings) {
    AtomicReference<Settings> kept = new AtomicReference<>(settings);
    return (Navigator)
        Proxy.newProxyInstance(
            Navigator.class.getClassLoader(),
            new Class<?>[] {Navigator.class},
            (proxy, method, words) -> {
              switch (method.getName()) {
                case "settings" -> {
                  return kept.get();
                }
                case "keep" -> kept.set((Settings) words[0]);
                case "readBook" -> {
                  @SuppressWarnings("unchecked")
                  BiConsumer<RecordBook, ZoneId> told = (BiConsumer<RecordBook, ZoneId>) words[0];
                  told.accept(RecordBook.of(List.of()), ZoneOffset.UTC);
                }
                default -> {
                  // Leads nowhere.
                }
              }
              return null;
            });
  }

  /** The look that a variant asks for. */
  static Look look(Variant variant) {
    return new Look(variant.palette(), variant.text());
  }
}
