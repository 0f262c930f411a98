package squeezewell.desktop.screens.settings;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.swing.JComponent;
import javax.swing.JSlider;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.Chip;
import squeezewell.desktop.parts.Fold;
import squeezewell.desktop.parts.Lines;
import squeezewell.desktop.parts.Page;
import squeezewell.desktop.parts.PushButton;
import squeezewell.desktop.parts.Stack;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.Phrases;
import squeezewell.files.Comfort;
import squeezewell.files.Settings;
import squeezewell.files.SoundLevel;
import squeezewell.files.Theme;
import squeezewell.words.Wording;

/** Sound, display, pedal and keys. A choice acts at once. */
public final class SettingsScreen {
  private static final Wording WORDS = Wording.beside(SettingsScreen.class);

  /** What most people change; the others are folded. */
  private static final List<String> FIRST_SOUNDS = List.of("squeeze", "voice");

  private final Look look;
  private final Navigator navigator;
  private final Consumer<String> preview;
  private final Stack pedal;
  private boolean assigning;

  private SettingsScreen(Look look, Navigator navigator, Consumer<String> preview) {
    this.look = look;
    this.navigator = navigator;
    this.preview = preview;
    pedal = new Stack(look, Stack.Ground.CARD, 16);
  }

  /**
   * Builds the screen.
   *
   * @param preview plays the sound of a kind once
   */
  public static JComponent build(Look look, Navigator navigator, Consumer<String> preview) {
    return new SettingsScreen(look, navigator, preview).build();
  }

  private JComponent build() {
    Stack sound = new Stack(look);
    Stack display = new Stack(look);
    sound.eyebrow(say("sound")).gap(4);
    FIRST_SOUNDS.forEach(kind -> sound.put(level(kind)).gap(8));
    List<String> others =
        Settings.SOUND_KINDS.stream()
            .filter(kind -> !FIRST_SOUNDS.contains(kind) && !kind.equals("compression"))
            .toList();
    sound.put(
        Fold.over(
            look,
            say("sounds"),
            say("sounds.more", others.size()),
            inside -> others.forEach(kind -> inside.put(level(kind)).gap(8))));
    sound.gap(8).soft(say("counts"), 16).gap(4);
    sound.put(
        chips(
            "counts",
            Settings.COUNT_STYLES,
            style -> say("counts." + style),
            settings().countStyle(),
            style -> settings().withCountStyle(style)));
    display.eyebrow(say("display")).gap(4);
    display.put(
        chips(
            "theme",
            List.of(Theme.values()),
            theme -> say("theme." + theme.word()),
            settings().theme(),
            theme -> settings().withTheme(theme)));
    display.gap(8).soft(say("text"), 16).gap(4);
    display.put(
        chips(
            "text",
            Settings.TEXT_SIZES_PERCENT,
            percent -> say("text.percent", percent),
            settings().textSizePercent(),
            percent -> settings().withTextSizePercent(percent)));
    display.gap(16).eyebrow(say("pedal")).gap(4).put(pedal);
    showPedal(boundKeys());
    display.gap(8);
    Comfort now = settings().comfort();
    display.put(toggle("touch", now.touchSqueezes(), on -> comfort(c -> with(c, on, 't')))).gap(4);
    display.put(toggle("motion", now.reducedMotion(), on -> comfort(c -> with(c, on, 'm')))).gap(4);
    display.put(toggle("left", now.leftHanded(), on -> comfort(c -> with(c, on, 'l')))).gap(8);
    display.put(
        Fold.to(
            look, Sign.INFO, say("cautions"), say("cautions.second"), "", navigator::toCautions));
    Stack foot = new Stack(look).gap(8).soft(Phrases.CAUTION, 12);
    JComponent bar = Page.bar(look, say("title"), navigator::toSetup);
    return new Page(look, bar, sound.gap(16), display, foot);
  }

  private static String say(String key, Object... values) {
    return WORDS.say(key, values);
  }

  private Settings settings() {
    return navigator.settings();
  }

  private static Comfort with(Comfort c, boolean on, char which) {
    return new Comfort(
        which == 'm' ? on : c.reducedMotion(),
        which == 'l' ? on : c.leftHanded(),
        which == 't' ? on : c.touchSqueezes());
  }

  private void comfort(Function<Comfort, Comfort> change) {
    navigator.keep(settings().withComfort(change.apply(settings().comfort())));
  }

  private <T> JComponent chips(
      String name, List<T> values, Function<T, String> text, T now, Function<T, Settings> chosen) {
    List<Chip<T>> chips =
        Chip.oneOf(look, values, text, value -> null, v -> navigator.keep(chosen.apply(v)));
    for (Chip<T> chip : chips) {
      chip.setSelected(chip.value().equals(now));
      chip.setName(name + " " + chip.value());
      chip.getAccessibleContext().setAccessibleDescription(say(name));
    }
    return Lines.of(look, 8, chips.toArray(new Component[0]));
  }

  private JComponent toggle(String name, boolean on, Consumer<Boolean> chosen) {
    List<Chip<Boolean>> chips =
        Chip.oneOf(look, List.of(true, false), v -> say(v ? "on" : "off"), value -> null, chosen);
    for (Chip<Boolean> chip : chips) {
      chip.setSelected(chip.value() == on);
      chip.setName(name + " " + chip.value());
      chip.getAccessibleContext().setAccessibleDescription(say(name));
    }
    Stack label = new Stack(look).gap(12).text(say(name), 17);
    return Lines.with(look, 8, label, chips.get(0), chips.get(1));
  }

  private JComponent level(String kind) {
    SoundLevel level = settings().soundLevels().get(kind);
    String name = say("sound." + kind);
    JSlider slider =
        new JSlider(0, 100, level.muted() ? 0 : (int) Math.round(level.volume() * 100));
    slider.setOpaque(false);
    slider.setPreferredSize(new Dimension(look.px(160), look.px(48)));
    slider.setName("level " + kind);
    slider.getAccessibleContext().setAccessibleName(say("sound.volume", name));
    slider.addChangeListener(
        e -> {
          if (!slider.getValueIsAdjusting()) {
            SoundLevel now = settings().soundLevels().get(kind);
            boolean silent = slider.getValue() == 0;
            double volume = silent ? now.volume() : slider.getValue() / 100.0;
            navigator.keep(settings().withSoundLevel(kind, new SoundLevel(volume, silent)));
          }
        });
    PushButton test =
        PushButton.of(look, PushButton.Kind.TONAL, say("test"), () -> preview.accept(kind));
    test.getAccessibleContext().setAccessibleName(say("test.of", name));
    return new Stack(look).text(name, 16).put(Lines.with(look, 8, slider, test));
  }

  private void showPedal(String now) {
    pedal.refill(
        () -> {
          PushButton assign = PushButton.of(look, PushButton.Kind.TONAL, say("assign"), () -> {});
          assign.setName("assign");
          listen(assign);
          Stack text = new Stack(look, Stack.Ground.NONE, 0).bold(now, 18);
          text.soft(say("pedal.held"), 15);
          pedal.put(Lines.with(look, 8, text, assign));
          if (!settings().pedalKeys().isEmpty()) {
            Runnable forget =
                () -> {
                  navigator.keep(settings().withPedalKeys(List.of()));
                  showPedal(boundKeys());
                };
            pedal.gap(8).put(PushButton.of(look, PushButton.Kind.OUTLINED, say("forget"), forget));
          }
        });
  }

  private void listen(PushButton assign) {
    assign.addActionListener(
        e -> {
          assigning = true;
          assign.setText(say("assign.now"));
          assign.requestFocusInWindow();
          assign.revalidate();
        });
    assign.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent e) {
            if (assigning) {
              e.consume();
              assigning = false;
              showPedal(bound(e.getKeyCode()));
            }
          }
        });
    assign.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusLost(FocusEvent e) {
            assigning = false;
            assign.setText(say("assign"));
          }
        });
  }

  private String bound(int key) {
    if (key == KeyEvent.VK_UNDEFINED || key > Settings.LARGEST_KEY_CODE) {
      return say("pedal.no-code");
    }
    if (PracticeKeys.isTaken(key)) {
      return say("pedal.taken", KeyEvent.getKeyText(key));
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
        ? say("pedal.none")
        : say(
            "pedal.keys",
            keys.size(),
            keys.stream().map(KeyEvent::getKeyText).collect(Collectors.joining(", ")));
  }
}
