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
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import javax.swing.SwingWorker;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.CautionScreen;
import squeezewell.desktop.screens.EquipmentScreen;
import squeezewell.desktop.screens.FirstDebrief;
import squeezewell.desktop.screens.LibraryScreen;
import squeezewell.desktop.screens.LiveScreen;
import squeezewell.desktop.screens.LocalProtocolsScreen;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.PastScreen;
import squeezewell.desktop.screens.ProtocolEditScreen;
import squeezewell.desktop.screens.ReplayScreen;
import squeezewell.desktop.screens.SettingsScreen;
import squeezewell.desktop.screens.SetupScreen;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.desktop.screens.StationRunScreen;
import squeezewell.desktop.screens.StationsScreen;
import squeezewell.files.HomeFolder;
import squeezewell.files.LastChoice;
import squeezewell.files.LocalProtocolFile;
import squeezewell.files.ProtocolStore;
import squeezewell.files.SessionStore;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.files.StationStore;
import squeezewell.files.Theme;
import squeezewell.input.BadInputException;
import squeezewell.kit.KitLibrary;
import squeezewell.live.PracticeSound;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.session.Session;
import squeezewell.trainee.RecordBook;

/** The window of the simulated phone: one screen at a time. Used on the event thread. */
final class PhoneWindow extends JFrame implements Navigator, Stage {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 412;
  private static final int HEIGHT = 892;
  private static final long MOST_CHANCE = 1_000_000;

  private final transient HomeFolder home;
  private final transient SettingsFile settingsFile;
  private final transient Debriefs debriefs;
  private final transient StationDesk stations;
  private transient Settings settings;
  private transient Kit kit;
  private double liveScale = 1;
  private double replayScale = 1;
  private transient Runnable current = this::toSetup;
  private transient BooleanSupplier mayLeave = () -> true;
  private transient Optional<LiveSession> live = Optional.empty();
  private transient Optional<ReplaySession> replay = Optional.empty();
  private transient Optional<ProjectorWindow> projector = Optional.empty();

  PhoneWindow(HomeFolder home, Settings settings) {
    super("Squeezewell");
    this.home = home;
    this.settingsFile = new SettingsFile(home.settingsFile());
    this.settings = settings;
    this.debriefs = new Debriefs(home, this, this, this::showReplay);
    this.stations = new StationDesk(home, this::stationEnded, this::toggleProjector);
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
            resized();
          }
        });
    applyLook();
  }

  /** Shows the window with its first screen. */
  void open() {
    if (settings.cautionSeenAt().isPresent()) {
      toSetup();
    } else {
      showScreen(CautionScreen.build(kit, "I understand", this::cautionRead));
    }
    setVisible(true);
    FirstDebrief.prepareInBackground(
        kit, this, () -> live.isEmpty() && replay.isEmpty() && stations.running().isEmpty());
  }

  private void cautionRead() {
    keep(settings.withCautionSeenAt(Instant.now()));
    toSetup();
  }

  private void applyLook() {
    Palette palette = settings.theme() == Theme.DARK ? Palette.darkTheme() : Palette.lightTheme();
    Look look = new Look(palette, settings.textSizePercent() / 100.0);
    look.install();
    kit = new Kit(look);
    Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
    Insets frame = getInsets();
    int width = look.px(WIDTH) + frame.left + frame.right;
    int height = look.px(HEIGHT) + frame.top + frame.bottom;
    setSize(Math.min(width, screen.width), Math.min(height, screen.height));
    setMinimumSize(new Dimension(Math.min(width, 330), 480));
  }

  /** Large type must not push the pad or the column off a small screen in mid-practice. */
  private Kit liveKit() {
    return stations.running().isPresent()
        ? fitted(StationRunScreen.LEAST_WIDTH, StationRunScreen.LEAST_HEIGHT)
        : fitted(LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
  }

  private Kit replayKit() {
    return fitted(ReplayScreen.LEAST_WIDTH, ReplayScreen.LEAST_HEIGHT);
  }

  private Kit fitted(int leastWidth, int leastHeight) {
    Insets frame = getInsets();
    return new Kit(
        kit.look()
            .fitting(
                getWidth() - frame.left - frame.right,
                getHeight() - frame.top - frame.bottom,
                leastWidth,
                leastHeight));
  }

  private void resized() {
    if (live.isPresent() && liveKit().look().scale() != liveScale) {
      showLive(live.get());
    } else if (stations.running().isPresent() && liveKit().look().scale() != liveScale) {
      showStation(stations.running().get());
    }
    if (replay.isPresent() && replayKit().look().scale() != replayScale) {
      showReplay(replay.get());
    }
  }

  private void showStation(StationSession session) {
    Kit fitted = liveKit();
    liveScale = fitted.look().scale();
    StationRunScreen screen = session.screen(fitted);
    showScreen(screen);
    mayLeave = this::mayEndStation;
    screen.open();
  }

  private void showLive(LiveSession session) {
    Kit fitted = liveKit();
    liveScale = fitted.look().scale();
    LiveScreen screen = session.screen(fitted);
    showScreen(screen);
    screen.open();
  }

  private void showReplay(ReplaySession session) {
    current = () -> showReplay(session);
    Kit fitted = replayKit();
    replayScale = fitted.look().scale();
    ReplayScreen screen = session.screen(fitted);
    replay.filter(r -> r != session).ifPresent(ReplaySession::close);
    replay = Optional.empty();
    showScreen(screen);
    replay = Optional.of(session);
    screen.open();
  }

  @Override
  public Kit kit() {
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
    replay.ifPresent(ReplaySession::close);
    replay = Optional.empty();
    mayLeave = () -> true;
    getContentPane().removeAll();
    getContentPane().setBackground(kit.look().palette().ground());
    getContentPane().add(screen, BorderLayout.CENTER);
    revalidate();
    repaint();
  }

  @Override
  public Settings settings() {
    return settings;
  }

  @Override
  public void keep(Settings next) {
    Settings before = settings;
    settings = next;
    try {
      settingsFile.write(next);
    } catch (BadInputException | IOException e) {
      Dialogs.tell(this, "Settings could not be saved", e.getMessage());
    }
    boolean look =
        before.theme() != next.theme() || before.textSizePercent() != next.textSizePercent();
    if (look) {
      Component owner = getFocusOwner();
      applyLook();
      current.run();
      giveBackFocus(owner == null ? null : owner.getName());
    }
    live.ifPresent(l -> l.apply(next));
    replay.ifPresent(r -> r.apply(next));
    stations.running().ifPresent(s -> s.apply(next));
  }

  /** A person who changes the look goes on from the control that changed it. */
  private void giveBackFocus(String name) {
    if (name != null) {
      SwingUtilities.invokeLater(
          () -> named(getContentPane(), name).ifPresent(Component::requestFocusInWindow));
    }
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

  @Override
  public void toSetup() {
    current = this::toSetup;
    ProtocolStore store = ProtocolStore.read(home);
    showScreen(
        SetupScreen.build(
            kit, this, store.protocols(), store.problems(), PracticeSound.leadNanos()));
  }

  @Override
  public void toSettings() {
    current = this::toSettings;
    showScreen(SettingsScreen.build(kit, this, kind -> PracticeSound.preview(kind, settings)));
  }

  @Override
  public void toCautions() {
    current = this::toCautions;
    JScrollPane page = CautionScreen.build(kit, "Back", this::toSettings);
    showScreen(kit.withBackKeys(page, this::toSettings));
  }

  @Override
  public void toPast() {
    current = this::toPast;
    showScreen(PastScreen.build(kit, this, debriefs::readPast));
  }

  @Override
  public void readBook(BiConsumer<RecordBook, ZoneId> told) {
    new SwingWorker<RecordBook, Void>() {
      @Override
      protected RecordBook doInBackground() throws BadInputException {
        return new SessionStore(home).book();
      }

      @Override
      protected void done() {
        try {
          told.accept(get(), home.zone());
        } catch (ExecutionException e) {
          // The list of past practices says why; a practice begins without what was before.
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }.execute();
  }

  @Override
  public void toStations() {
    current = this::toStations;
    JScrollPane page =
        StationsScreen.build(
            kit,
            this,
            StationStore.read(home),
            ProtocolStore.read(home).protocols(),
            PracticeSound.leadNanos(),
            Math.floorMod(System.nanoTime(), MOST_CHANCE),
            home.stations().toString(),
            this::startStation);
    showScreen(kit.withBackKeys(page, this::toSetup));
  }

  private void startStation(StationChoice choice) {
    StationSession session = stations.start(choice, settings);
    current = this::toStations;
    showStation(session);
    stations.openConsole(kit, getBounds());
  }

  private void stationEnded(StationSession session) {
    toDebrief(session.kept().session(), session.kept().path().orElse(null));
  }

  @Override
  public void toLibrary() {
    current = this::toLibrary;
    LastChoice last = settings.lastChoice();
    JScrollPane page =
        LibraryScreen.build(
            kit, this, ProtocolStore.read(home).protocols(), last.patient(), last.situation());
    showScreen(kit.withBackKeys(page, this::toSetup));
  }

  @Override
  public void toEquipment() {
    current = this::toEquipment;
    JScrollPane page = EquipmentScreen.build(kit, this, KitLibrary.builtIn());
    showScreen(kit.withBackKeys(page, this::toSetup));
  }

  @Override
  public void toLocalProtocols() {
    current = this::toLocalProtocols;
    showScreen(LocalProtocolsScreen.build(kit, this, ProtocolStore.read(home)));
  }

  @Override
  public void toCopy(Protocol protocol) {
    Set<String> taken = ProtocolStore.read(home).ids();
    showEditor(
        ProtocolDraft.copyOf(protocol, taken, LocalDate.now(home.zone()).getYear()),
        new LocalProtocolSaver(home));
  }

  @Override
  public void toEdit(Path file) {
    try {
      LocalProtocolFile opened = LocalProtocolFile.open(file);
      Set<String> taken = ProtocolStore.read(home).ids();
      showEditor(
          ProtocolDraft.edit(opened.protocol(), taken), new LocalProtocolSaver(home, opened));
    } catch (BadInputException e) {
      Dialogs.tell(this, "This protocol can't be edited", e.getMessage());
      toLocalProtocols();
    }
  }

  private void showEditor(ProtocolDraft draft, LocalProtocolSaver saver) {
    ProtocolEditScreen editor =
        ProtocolEditScreen.build(
            kit, draft, saver.hasFile(), saver::save, this::mayLose, this::toLocalProtocols);
    current = this::toLocalProtocols;
    showScreen(editor.page());
    mayLeave = editor::mayLeave;
  }

  private boolean mayLose() {
    return Dialogs.mayGo(this, "What you changed is not saved. Leave without saving?", "Not saved");
  }

  private boolean mayEndStation() {
    return Dialogs.mayGo(
        this, "A station runs. Leaving ends it; what was recorded is kept.", "Station");
  }

  @Override
  public void toLive(Protocol protocol, PracticePlan plan) {
    live.ifPresent(LiveSession::close);
    LiveSession session =
        LiveSession.start(
            home, settings, protocol, plan, next -> SwingUtilities.invokeLater(() -> ended(next)));
    live = Optional.of(session);
    current = this::toSetup;
    showLive(session);
  }

  private void ended(LiveSession session) {
    if (!live.isPresent() || !live.get().equals(session)) {
      return;
    }
    session.closeScreen();
    live = Optional.empty();
    toDebrief(session.kept().session(), session.kept().path().orElse(null));
  }

  @Override
  public void openDebrief(Path file) {
    debriefs.open(file);
  }

  @Override
  public void openReplay(Path file) {
    debriefs.openReplay(file);
  }

  @Override
  public void toDebrief(Session session, Path file) {
    debriefs.show(session);
  }

  @Override
  public void toComparison(Path a, Path b) {
    debriefs.compare(a, b);
  }

  @Override
  public void toggleProjector() {
    if (projector.isPresent() && projector.get().isDisplayable()) {
      projector.get().dispose();
      projector = Optional.empty();
      return;
    }
    ProjectorWindow window = new ProjectorWindow(() -> live, stations::running, getBounds());
    projector = Optional.of(window);
    window.open();
    toFront();
  }

  private void quit() {
    if (!mayLeave.getAsBoolean()) {
      return;
    }
    live.ifPresent(LiveSession::close);
    live = Optional.empty();
    replay.ifPresent(ReplaySession::close);
    replay = Optional.empty();
    stations.close();
    projector.ifPresent(ProjectorWindow::dispose);
    dispose();
  }
}
