package squeezewell.desktop;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.GraphicsDevice;
import java.awt.GraphicsEnvironment;
import java.awt.Insets;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
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
import squeezewell.files.WindowPlace;
import squeezewell.session.SavingTrouble;

/** The window of the simulated phone: one screen at a time. Used on the event thread. */
final class MainWindow extends JFrame implements Stage {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 412;
  private static final int HEIGHT = 892;
  private static final int LEAST_WIDTH = 360;
  private static final int LEAST_HEIGHT = 640;

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
    place();
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
    Look look = new Look(palette(settings.theme()), settings.textSizePercent() / 100.0);
    look.install();
    kit = new Widgets(look);
    if (sheets == null) {
      sheets = new Sheets(look);
      setContentPane(sheets);
    }
    sheets.look(look);
  }

  private static Palette palette(Theme theme) {
    return switch (theme) {
      case LIGHT -> Palette.lightTheme();
      case DARK -> Palette.darkTheme();
      case HIGH_CONTRAST -> Palette.highContrast(false);
      case HIGH_CONTRAST_DARK -> Palette.highContrast(true);
      case SYSTEM -> {
        Toolkit desktop = Toolkit.getDefaultToolkit();
        Object name = desktop.getDesktopProperty("gnome.Net/ThemeName");
        boolean dark = name != null && name.toString().toLowerCase(Locale.ROOT).contains("dark");
        yield Boolean.TRUE.equals(desktop.getDesktopProperty("win.highContrast.on"))
            ? Palette.highContrast(dark)
            : dark ? Palette.darkTheme() : Palette.lightTheme();
      }
    };
  }

  /** Where it stood last, if a screen is there still; else as large as a phone. */
  private void place() {
    setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
    Optional<Rectangle> last =
        settings
            .window()
            .map(at -> new Rectangle(at.x(), at.y(), at.width(), at.height()))
            .filter(MainWindow::isSeen);
    if (last.isPresent()) {
      setBounds(last.get());
      return;
    }
    Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
    Insets frame = getInsets();
    setSize(
        Math.min(WIDTH + frame.left + frame.right, screen.width),
        Math.min(HEIGHT + frame.top + frame.bottom, screen.height));
  }

  private static boolean isSeen(Rectangle place) {
    Rectangle bar = new Rectangle(place.x, place.y, place.width, 40);
    for (GraphicsDevice device :
        GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices()) {
      Rectangle part = device.getDefaultConfiguration().getBounds().intersection(bar);
      if (part.width >= LEAST_WIDTH / 2 && part.height >= bar.height / 2) {
        return true;
      }
    }
    return false;
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
      double scrolled = scrolled();
      applyLook();
      current.run();
      SwingUtilities.invokeLater(() -> scrollTo(scrolled));
      focused.ifPresent(this::giveBackFocus);
    }
    navigator.running().apply(next);
  }

  /** A person who changes the look goes on from the control that changed it. */
  private void giveBackFocus(String name) {
    SwingUtilities.invokeLater(
        () -> Stack.named(getContentPane(), name).ifPresent(Component::requestFocusInWindow));
  }

  /** How far down the page is, as a share of its length. */
  private double scrolled() {
    return page()
        .map(
            pane -> {
              JScrollBar bar = pane.getVerticalScrollBar();
              return (double) bar.getValue() / Math.max(1, bar.getMaximum());
            })
        .orElse(0.0);
  }

  private void scrollTo(double share) {
    validate();
    page()
        .map(JScrollPane::getVerticalScrollBar)
        .ifPresent(bar -> bar.setValue((int) Math.round(share * bar.getMaximum())));
  }

  private Optional<JScrollPane> page() {
    return Optional.ofNullable(first(shown));
  }

  private static JScrollPane first(Container in) {
    if (in instanceof JScrollPane pane) {
      return pane;
    }
    for (Component part : in.getComponents()) {
      JScrollPane found = part instanceof Container inner ? first(inner) : null;
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private void quit() {
    if (!mayLeave.getAsBoolean()) {
      return;
    }
    if (getExtendedState() == NORMAL) {
      keep(settings.withWindow(new WindowPlace(getX(), getY(), getWidth(), getHeight())));
    }
    navigator.running().close();
    dispose();
  }
}
