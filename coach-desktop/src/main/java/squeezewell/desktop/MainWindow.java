package squeezewell.desktop;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.Toolkit;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.CautionScreen;
import squeezewell.desktop.screens.FirstDebrief;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.files.Theme;
import squeezewell.session.SavingTrouble;

/** The window of the simulated phone: one screen at a time. Used on the event thread. */
final class MainWindow extends JFrame implements Stage {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 412;
  private static final int HEIGHT = 892;

  private final transient SettingsFile settingsFile;
  private final transient PhoneNavigator navigator;
  private transient Settings settings;
  private transient Widgets kit;
  private transient Runnable current;
  private transient BooleanSupplier mayLeave = () -> true;

  MainWindow(HomeFolder home, Settings settings) {
    super("Squeezewell");
    this.settingsFile = new SettingsFile(home.settingsFile(), settings);
    this.settings = settings;
    this.navigator = new PhoneNavigator(home, this);
    this.current = navigator::toSetup;
    setIconImages(WindowIcon.sizes());
    setDefaultCloseOperation(DO_NOTHING_ON_CLOSE);
    addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent e) {
            quit();
          }
        });
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent e) {
            navigator.running().resized();
          }
        });
    applyLook();
  }

  /** Leads from screen to screen. */
  PhoneNavigator navigator() {
    return navigator;
  }

  /** Shows the window with its first screen. */
  void open() {
    navigator.running().watchInput();
    if (settings.cautionSeenAt().isPresent()) {
      navigator.toSetup();
    } else {
      showScreen(CautionScreen.build(kit, "I understand", this::cautionRead));
    }
    setVisible(true);
    FirstDebrief.prepareInBackground(kit, this, navigator.running()::isNothing);
  }

  private void cautionRead() {
    keep(settings.withCautionSeenAt(Instant.now()));
    navigator.toSetup();
  }

  private void applyLook() {
    Palette palette = settings.theme() == Theme.DARK ? Palette.darkTheme() : Palette.lightTheme();
    Look look = new Look(palette, settings.textSizePercent() / 100.0);
    look.install();
    kit = new Widgets(look);
    Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
    Insets frame = getInsets();
    int width = look.px(WIDTH) + frame.left + frame.right;
    int height = look.px(HEIGHT) + frame.top + frame.bottom;
    setSize(Math.min(width, screen.width), Math.min(height, screen.height));
    setMinimumSize(new Dimension(Math.min(width, 330), 480));
  }

  @Override
  public Widgets fittedKit(int leastWidth, int leastHeight) {
    Insets frame = getInsets();
    return new Widgets(
        kit.look()
            .fitting(
                getWidth() - frame.left - frame.right,
                getHeight() - frame.top - frame.bottom,
                leastWidth,
                leastHeight));
  }

  @Override
  public Widgets kit() {
    return kit;
  }

  @Override
  public JFrame window() {
    return this;
  }

  @Override
  public void remember(Runnable again) {
    current = again;
  }

  @Override
  public void again() {
    current.run();
  }

  @Override
  public void showScreen(JComponent screen) {
    showScreen(screen, () -> true);
  }

  @Override
  public void showScreen(JComponent screen, BooleanSupplier leaving) {
    navigator.running().leaveReplay();
    mayLeave = leaving;
    getContentPane().removeAll();
    getContentPane().setBackground(kit.look().palette().ground());
    getContentPane().add(screen, BorderLayout.CENTER);
    revalidate();
    repaint();
  }

  @Override
  public Settings inForce() {
    return settings;
  }

  @Override
  public void keep(Settings next) {
    Settings before = settings;
    settings = next;
    try {
      settingsFile.write(next);
    } catch (IOException e) {
      Dialogs.tell(this, "Settings could not be saved", SavingTrouble.reason(e));
    }
    boolean look =
        before.theme() != next.theme() || before.textSizePercent() != next.textSizePercent();
    if (look) {
      Optional<String> focused = Optional.ofNullable(getFocusOwner()).map(Component::getName);
      applyLook();
      current.run();
      focused.ifPresent(this::giveBackFocus);
    }
    navigator.running().apply(next);
  }

  /** A person who changes the look goes on from the control that changed it. */
  private void giveBackFocus(String name) {
    SwingUtilities.invokeLater(
        () -> named(getContentPane(), name).ifPresent(Component::requestFocusInWindow));
  }

  private static Optional<Component> named(Container in, String name) {
    for (Component part : in.getComponents()) {
      if (name.equals(part.getName())) {
        return Optional.of(part);
      }
      if (part instanceof Container inner) {
        Optional<Component> found = named(inner, name);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private void quit() {
    if (!mayLeave.getAsBoolean()) {
      return;
    }
    navigator.running().close();
    dispose();
  }
}
