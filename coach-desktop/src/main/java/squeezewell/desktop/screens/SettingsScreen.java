package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.Box;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Kit;
import squeezewell.files.Settings;
import squeezewell.files.SoundLevel;
import squeezewell.files.Theme;

/** Sound, display and the pedal key. */
public final class SettingsScreen {
  private final Kit kit;
  private final Navigator navigator;
  private final Consumer<String> preview;

  private SettingsScreen(Kit kit, Navigator navigator, Consumer<String> preview) {
    this.kit = kit;
    this.navigator = navigator;
    this.preview = preview;
  }

  /**
   * Builds the screen.
   *
   * @param preview plays the sound of a kind once
   */
  public static JScrollPane build(Kit kit, Navigator navigator, Consumer<String> preview) {
    return new SettingsScreen(kit, navigator, preview).build();
  }

  private JScrollPane build() {
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> navigator.toSetup());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.heading("Sound and display"));
    column.add(kit.gap(14));
    column.add(kit.subheading("Sound"));
    column.add(kit.gap(6));
    for (String kind : Settings.SOUND_KINDS) {
      if (!kind.equals("compression")) {
        column.add(level(kind));
        column.add(kit.gap(8));
      }
    }
    column.add(labelled("Counts", 'C', countStyle()));
    column.add(kit.gap(14));
    column.add(kit.subheading("Display"));
    column.add(kit.gap(6));
    column.add(labelled("Theme", 'T', theme()));
    column.add(kit.gap(8));
    column.add(labelled("Text size", 'X', textSize()));
    column.add(kit.gap(14));
    column.add(kit.subheading("Pedal"));
    column.add(kit.gap(6));
    column.add(pedal());
    column.add(kit.gap(18));
    JButton cautions =
        kit.button("Read the cautions", Kit.CONTENT_WIDTH, e -> navigator.toCautions());
    cautions.setMnemonic('R');
    column.add(cautions);
    column.add(kit.gap(10));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(back, page));
    return kit.withBackKeys(page, navigator::toSetup);
  }

  private Settings settings() {
    return navigator.settings();
  }

  private JPanel level(String kind) {
    JPanel block = kit.column();
    SoundLevel level = settings().soundLevels().get(kind);
    String name = name(kind);
    JLabel label = kit.label(name, kit.look().font(15), kit.look().palette().text());
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
    JButton hear = kit.button("Hear", 76, e -> preview.accept(kind));
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
    block.add(label);
    JPanel row = kit.row();
    row.add(slider);
    row.add(Box.createHorizontalStrut(kit.look().px(16)));
    row.add(mute);
    row.add(Box.createHorizontalStrut(kit.look().px(16)));
    row.add(hear);
    block.add(row);
    return block;
  }

  private static String name(String kind) {
    return switch (kind) {
      case "examiner" -> "Examiner's voice, in a station";
      case "done" -> "What was done, in a replay";
      default -> kind.substring(0, 1).toUpperCase(Locale.ROOT) + kind.substring(1);
    };
  }

  private void keepLevel(String kind, double volume, boolean muted) {
    navigator.keep(settings().withSoundLevel(kind, new SoundLevel(volume, muted)));
  }

  private void size(JComponent part, int width, int height) {
    Dimension size = new Dimension(kit.look().px(width), kit.look().px(height));
    part.setPreferredSize(size);
    part.setMinimumSize(size);
    part.setMaximumSize(size);
    part.setAlignmentY(Component.CENTER_ALIGNMENT);
  }

  private JComponent labelled(String name, char mnemonic, JComponent control) {
    JPanel block = kit.column();
    JLabel label = kit.label(name, kit.look().font(13), kit.look().palette().softText());
    label.setLabelFor(control);
    label.setDisplayedMnemonic(mnemonic);
    block.add(label);
    block.add(kit.gap(4));
    block.add(kit.wide(control));
    return block;
  }

  private JComponent countStyle() {
    JComboBox<String> box = Kit.choices();
    for (String style : Settings.COUNT_STYLES) {
      box.addItem(
          switch (style) {
            case "sound" -> "Soft sounds";
            case "spoken" -> "Spoken numbers";
            default -> "Silent";
          });
    }
    box.setSelectedIndex(Settings.COUNT_STYLES.indexOf(settings().countStyle()));
    box.addActionListener(
        e ->
            navigator.keep(
                settings().withCountStyle(Settings.COUNT_STYLES.get(box.getSelectedIndex()))));
    return box;
  }

  private JComponent theme() {
    List<Theme> themes = List.of(Theme.values());
    JComboBox<String> box = Kit.choices();
    for (Theme theme : themes) {
      String word = theme.word();
      box.addItem(word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
    }
    box.setName("theme");
    box.setSelectedIndex(themes.indexOf(settings().theme()));
    box.addActionListener(
        e -> navigator.keep(settings().withTheme(themes.get(box.getSelectedIndex()))));
    return box;
  }

  private JComponent textSize() {
    JComboBox<String> box = Kit.choices();
    for (int percent : Settings.TEXT_SIZES_PERCENT) {
      box.addItem(percent + " %");
    }
    box.setName("text size");
    box.setSelectedIndex(Settings.TEXT_SIZES_PERCENT.indexOf(settings().textSizePercent()));
    box.addActionListener(
        e ->
            navigator.keep(
                settings()
                    .withTextSizePercent(Settings.TEXT_SIZES_PERCENT.get(box.getSelectedIndex()))));
    return box;
  }

  private JComponent pedal() {
    JPanel block = kit.column();
    JLabel now = kit.label(boundKeys(), kit.look().font(15), kit.look().palette().text());
    JButton bind = kit.button("Bind a key", 181, null);
    JButton clear = kit.button("Forget keys", 181, null);
    bind.addActionListener(
        e -> {
          bind.setText("Press the pedal");
          bind.requestFocusInWindow();
        });
    bind.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent e) {
            if (!bind.getText().equals("Press the pedal")) {
              return;
            }
            e.consume();
            bind.setText("Bind a key");
            now.setText(bound(e.getKeyCode()));
          }
        });
    bind.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusLost(FocusEvent e) {
            bind.setText("Bind a key");
          }
        });
    clear.addActionListener(
        e -> {
          navigator.keep(settings().withPedalKeys(List.of()));
          now.setText(boundKeys());
        });
    block.add(
        kit.note(
            "Many pedals act as a keyboard key. Bind it, and it counts as a squeeze for as"
                + " long as it is held."));
    block.add(kit.gap(6));
    block.add(now);
    block.add(kit.gap(8));
    JPanel row = kit.row();
    row.add(bind);
    row.add(Box.createHorizontalStrut(kit.look().px(10)));
    row.add(clear);
    block.add(row);
    return block;
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
