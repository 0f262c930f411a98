package squeezewell.desktop;

import java.awt.BorderLayout;
import java.awt.Component;
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
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Navigation;
import squeezewell.desktop.parts.Page;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.parts.Stack;
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
  private transient Optional<Navigation.Place> place = Optional.empty();
  private transient JComponent shown = new JPanel();
  private boolean rail;
  private Sheets sheets;
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
            if (place.isPresent() && rail != isWide()) {
              frame();
            }
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
    if (sheets == null) {
      sheets = new Sheets(look);
      setContentPane(sheets);
    }
    sheets.look(look);
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
  public Sheets sheets() {
    return sheets;
  }

  @Override
  public void showPlace(Navigation.Place where, JComponent screen) {
    show(Optional.of(where), screen, () -> true);
  }

  @Override
  public void showScreen(JComponent screen, BooleanSupplier leaving) {
    show(Optional.empty(), screen, leaving);
  }

  private void show(Optional<Navigation.Place> where, JComponent screen, BooleanSupplier leaving) {
    navigator.running().leaveReplay();
    mayLeave = leaving;
    place = where;
    shown = screen;
    frame();
  }

  private boolean isWide() {
    return getWidth() >= kit.look().px(Page.TWO_PANES);
  }

  /** Puts what is shown into the window, with the places at its foot or side. */
  private void frame() {
    Component focused = getFocusOwner();
    rail = isWide();
    JPanel framed = new JPanel(new BorderLayout());
    framed.setBackground(kit.look().palette().ground());
    framed.add(shown, BorderLayout.CENTER);
    if (place.isPresent()) {
      Navigation places = new Navigation(kit.look(), place.get(), rail, navigator::to);
      JPanel side = new JPanel(new BorderLayout());
      side.setBackground(kit.look().palette().card());
      side.add(places, rail ? BorderLayout.NORTH : BorderLayout.CENTER);
      framed.add(side, rail ? BorderLayout.WEST : BorderLayout.SOUTH);
    }
    sheets.show(framed);
    if (focused != null && SwingUtilities.isDescendingFrom(focused, shown)) {
      focused.requestFocusInWindow();
    }
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
      sheets.tell("Settings could not be saved", SavingTrouble.reason(e));
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
        () -> Stack.named(getContentPane(), name).ifPresent(Component::requestFocusInWindow));
  }

  private void quit() {
    if (!mayLeave.getAsBoolean()) {
      return;
    }
    navigator.running().close();
    dispose();
  }
}
