package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.Settings;
import squeezewell.files.SoundLevel;
import squeezewell.files.Theme;

/** Sound, display and the pedal key. */
public final class SettingsScreen {
  private final Widgets kit;
  private final Navigator navigator;
  private final Consumer<String> preview;

  private boolean binding;

  private SettingsScreen(Widgets kit, Navigator navigator, Consumer<String> preview) {
    this.kit = kit;
    this.navigator = navigator;
    this.preview = preview;
  }

  /**
   * Builds the screen.
   *
   * @param preview plays the sound of a kind once
   */
  public static JScrollPane build(Widgets kit, Navigator navigator, Consumer<String> preview) {
    return new SettingsScreen(kit, navigator, preview).build();
  }

  private JScrollPane build() {
    Column column = kit.column();
    JButton back = kit.back(navigator::toSetup);
    column.put(back, 12);
    column.heading("Sound and display", 14);
    column.subheading("Sound", 6);
    for (String kind : Settings.SOUND_KINDS) {
      if (!kind.equals("compression")) {
        column.put(level(kind), 8);
      }
    }
    column.put(kit.labelled("Counts", 'C', countStyle()), 14);
    column.subheading("Display", 6);
    column.put(kit.labelled("Theme", 'T', theme()), 8);
    column.put(kit.labelled("Text size", 'X', textSize()), 14);
    column.subheading("Pedal", 6);
    column.put(pedal(), 18);
    JButton cautions =
        kit.button("Read the cautions", 'R', Widgets.CONTENT_WIDTH, navigator::toCautions);
    column.put(cautions, 10);
    column.note(Phrases.CAUTION + " Not a medical device.");
    return kit.page(column, back, navigator::toSetup);
  }

  private Settings settings() {
    return navigator.settings();
  }

  private JPanel level(String kind) {
    SoundLevel level = settings().soundLevels().get(kind);
    String name = name(kind);
    JLabel label = kit.plainLabel(name, 15);
    JSlider slider = new JSlider(0, 100, (int) Math.round(level.volume() * 100));
    slider.setOpaque(false);
    slider.setMajorTickSpacing(25);
    size(kit.comesIntoView(slider), 172, 44);
    label.setLabelFor(slider);
    slider.getAccessibleContext().setAccessibleName(name + ", volume in percent");
    JCheckBox mute = new JCheckBox("Mute", level.muted());
    mute.setOpaque(false);
    mute.setFont(kit.look().font(13));
    mute.getAccessibleContext().setAccessibleName("Mute " + name);
    size(kit.comesIntoView(mute), 76, 44);
    JButton hear = kit.button("Hear", '\0', 76, () -> preview.accept(kind));
    hear.setFont(kit.look().font(13));
    size(hear, 76, 44);
    hear.getAccessibleContext().setAccessibleName("Hear " + name);
    slider.addChangeListener(
        e -> {
          if (!slider.getValueIsAdjusting()) {
            keepLevel(kind, slider.getValue() / 100.0, mute.isSelected());
          }
        });
    mute.addActionListener(e -> keepLevel(kind, slider.getValue() / 100.0, mute.isSelected()));
    return kit.column().put(label).put(kit.row(16, slider, mute, hear));
  }

  private static String name(String kind) {
    return switch (kind) {
      case "examiner" -> "Examiner's voice, in a station";
      case "done" -> "What was done, in a replay";
      default -> Phrases.capital(kind);
    };
  }

  private void keepLevel(String kind, double volume, boolean muted) {
    navigator.keep(settings().withSoundLevel(kind, new SoundLevel(volume, muted)));
  }

  private void size(JComponent part, int width, int height) {
    kit.fixed(part, width, height);
    part.setAlignmentY(Component.CENTER_ALIGNMENT);
  }

  private JComponent box(String name, List<String> words, int now, IntFunction<Settings> chosen) {
    JComboBox<String> box = Widgets.choices();
    words.forEach(box::addItem);
    box.setName(name);
    box.setSelectedIndex(now);
    box.addActionListener(e -> navigator.keep(chosen.apply(box.getSelectedIndex())));
    return box;
  }

  private JComponent countStyle() {
    List<String> styles = Settings.COUNT_STYLES;
    List<String> words = List.of("Soft sounds", "Spoken numbers", "Silent");
    return box(
        null,
        words,
        styles.indexOf(settings().countStyle()),
        i -> settings().withCountStyle(styles.get(i)));
  }

  private JComponent theme() {
    List<Theme> themes = List.of(Theme.values());
    return box(
        "theme",
        themes.stream().map(theme -> Phrases.capital(theme.word())).toList(),
        themes.indexOf(settings().theme()),
        i -> settings().withTheme(themes.get(i)));
  }

  private JComponent textSize() {
    List<Integer> sizes = Settings.TEXT_SIZES_PERCENT;
    return box(
        "text size",
        sizes.stream().map(percent -> percent + " %").toList(),
        sizes.indexOf(settings().textSizePercent()),
        i -> settings().withTextSizePercent(sizes.get(i)));
  }

  private JComponent pedal() {
    JLabel now = kit.plainLabel(boundKeys(), 15);
    JButton bind = kit.button("Bind a key", '\0', 181, () -> {});
    bind.addActionListener(
        e -> {
          binding = true;
          bind.setText("Press the pedal");
          bind.requestFocusInWindow();
        });
    bind.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent e) {
            if (!binding) {
              return;
            }
            e.consume();
            binding = false;
            bind.setText("Bind a key");
            now.setText(bound(e.getKeyCode()));
          }
        });
    Widgets.onFocusLost(
        bind,
        () -> {
          binding = false;
          bind.setText("Bind a key");
        });
    Runnable forget =
        () -> {
          navigator.keep(settings().withPedalKeys(List.of()));
          now.setText(boundKeys());
        };
    return kit.column()
        .note(
            "Many pedals act as a keyboard key. Bind it, and it counts as a squeeze for as"
                + " long as it is held.")
        .gap(6)
        .put(now, 8)
        .put(kit.row(10, bind, kit.button("Forget keys", '\0', 181, forget)));
  }

  private String bound(int key) {
    if (key == KeyEvent.VK_UNDEFINED || key > Settings.LARGEST_KEY_CODE) {
      return "That key has no code of its own.";
    }
    if (PracticeKeys.isTaken(key)) {
      return KeyEvent.getKeyText(key) + " already has a meaning.";
    }
    List<Integer> keys = new ArrayList<>(settings().pedalKeys());
    if (!keys.contains(key) && keys.size() < Settings.MOST_PEDAL_KEYS) {
      keys.add(key);
      navigator.keep(settings().withPedalKeys(keys));
    }
    return boundKeys();
  }

  private String boundKeys() {
    List<Integer> keys = settings().pedalKeys();
    return keys.isEmpty()
        ? "No key bound."
        : "Bound: " + keys.stream().map(KeyEvent::getKeyText).collect(Collectors.joining(", "));
  }
}
