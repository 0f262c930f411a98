package squeezewell.desktop;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javax.swing.JScrollPane;
import javax.swing.SwingWorker;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.parts.Navigation;
import squeezewell.desktop.screens.CautionScreen;
import squeezewell.desktop.screens.EquipmentScreen;
import squeezewell.desktop.screens.LibraryScreen;
import squeezewell.desktop.screens.LocalProtocolsScreen;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.PastScreen;
import squeezewell.desktop.screens.ProtocolEditScreen;
import squeezewell.desktop.screens.StationsScreen;
import squeezewell.desktop.screens.Today;
import squeezewell.desktop.screens.practice.PracticeScreen;
import squeezewell.desktop.screens.settings.SettingsScreen;
import squeezewell.equipment.EquipmentReader;
import squeezewell.files.HomeFolder;
import squeezewell.files.LastChoice;
import squeezewell.files.LocalProtocolFile;
import squeezewell.files.ProtocolStore;
import squeezewell.files.SessionStore;
import squeezewell.files.Settings;
import squeezewell.files.StationStore;
import squeezewell.input.BadInputException;
import squeezewell.live.PracticeSound;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.session.Session;
import squeezewell.trainee.RecordBook;

/** Which screen follows which in the window of the simulated phone. Used on the event thread. */
final class PhoneNavigator implements Navigator {
  private static final long MOST_CHANCE = 1_000_000;

  private final HomeFolder home;
  private final Stage stage;
  private final Debriefs debriefs;
  private final Running running;
  private final List<Protocol> editions = GuidelineLibrary.editions();

  /**
   * @param home where practices and protocols lie
   * @param stage where screens are shown
   */
  PhoneNavigator(HomeFolder home, Stage stage) {
    this.home = home;
    this.stage = stage;
    this.running = new Running(home, stage, this::toDebrief);
    this.debriefs = new Debriefs(home, stage, this, running::show);
  }

  /** What runs in the window. */
  Running running() {
    return running;
  }

  private ProtocolStore protocols() {
    return ProtocolStore.read(home, editions);
  }

  @Override
  public Settings settings() {
    return stage.inForce();
  }

  @Override
  public void keep(Settings next) {
    stage.keep(next);
  }

  @Override
  public void toSetup() {
    stage.remember(this::toSetup);
    ProtocolStore store = protocols();
    stage.showPlace(
        Navigation.Place.PRACTICE,
        PracticeScreen.build(
            stage.kit().look(),
            stage.sheets(),
            this,
            store.protocols(),
            store.problems(),
            PracticeSound.leadNanos()));
  }

  /** To one of the places that can be reached from everywhere. */
  void to(Navigation.Place place) {
    switch (place) {
      case PRACTICE -> toSetup();
      case STATIONS -> toStations();
      case HISTORY -> toPast();
      case EQUIPMENT -> toEquipment();
    }
  }

  @Override
  public void toSettings() {
    stage.remember(this::toSettings);
    stage.showScreen(
        SettingsScreen.build(
            stage.kit().look(), this, kind -> PracticeSound.preview(kind, settings())));
  }

  @Override
  public void toCautions() {
    stage.remember(this::toCautions);
    JScrollPane page = CautionScreen.build(stage.kit(), "Back", this::toSettings);
    stage.showScreen(stage.kit().withBackKeys(page, this::toSettings));
  }

  @Override
  public void toPast() {
    stage.remember(this::toPast);
    stage.showPlace(
        Navigation.Place.HISTORY, PastScreen.build(stage.kit(), this, debriefs::readPast));
  }

  @Override
  public void readBook(BiConsumer<RecordBook, ZoneId> told) {
    // The list of past practices says why one can't be read; a practice begins without it.
    read(
        () -> new SessionStore(home).bookUpTo(Instant.now()),
        book -> told.accept(book, home.zone()));
  }

  @Override
  public void readToday(String trainee, Consumer<Optional<Today>> told) {
    read(() -> debriefs.today(trainee), told);
  }

  private static <T> void read(Callable<T> work, Consumer<T> told) {
    new SwingWorker<T, Void>() {
      @Override
      protected T doInBackground() throws Exception {
        return work.call();
      }

      @Override
      protected void done() {
        try {
          told.accept(get());
        } catch (ExecutionException e) {
          // Whoever asked goes on without it.
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }.execute();
  }

  @Override
  public void toStations() {
    stage.remember(this::toStations);
    JScrollPane page =
        StationsScreen.build(
            stage.kit(),
            this,
            StationStore.read(home),
            protocols().protocols(),
            PracticeSound.leadNanos(),
            Math.floorMod(System.nanoTime(), MOST_CHANCE),
            home.stations().toString(),
            choice -> running.start(settings(), choice));
    stage.showPlace(Navigation.Place.STATIONS, stage.kit().withBackKeys(page, this::toSetup));
  }

  @Override
  public void toLibrary() {
    stage.remember(this::toLibrary);
    LastChoice last = settings().lastChoice();
    JScrollPane page =
        LibraryScreen.build(
            stage.kit(), this, protocols().protocols(), last.patient(), last.situation());
    stage.showScreen(stage.kit().withBackKeys(page, this::toSetup));
  }

  @Override
  public void toEquipment() {
    stage.remember(this::toEquipment);
    JScrollPane page = EquipmentScreen.build(stage.kit(), this, EquipmentReader.builtIn());
    stage.showPlace(Navigation.Place.EQUIPMENT, stage.kit().withBackKeys(page, this::toSetup));
  }

  @Override
  public void toLocalProtocols() {
    stage.remember(this::toLocalProtocols);
    stage.showScreen(LocalProtocolsScreen.build(stage.kit(), this, protocols()));
  }

  @Override
  public void toCopy(Protocol protocol) {
    ProtocolStore store = protocols();
    int year = LocalDate.now(home.zone()).getYear();
    showEditor(
        ProtocolDraft.copyOf(protocol, store.baseOf(protocol), store.ids(), year),
        new LocalProtocolSaver(home));
  }

  @Override
  public void toEdit(Path file) {
    try {
      LocalProtocolFile opened = LocalProtocolFile.open(file);
      ProtocolStore store = protocols();
      Optional<Protocol> base = store.baseOf(opened.protocol());
      showEditor(
          ProtocolDraft.edit(opened.protocol(), base, store.ids()),
          new LocalProtocolSaver(home, opened));
    } catch (BadInputException e) {
      stage.sheets().tell("This protocol can't be edited", e.getMessage());
      toLocalProtocols();
    }
  }

  private void showEditor(ProtocolDraft draft, LocalProtocolSaver saver) {
    ProtocolEditScreen editor =
        ProtocolEditScreen.build(
            stage.kit(),
            draft,
            saver.hasFile(),
            saver::save,
            this::mayLose,
            this::toLocalProtocols);
    stage.remember(this::toLocalProtocols);
    stage.showScreen(editor.page(), editor::mayLeave);
  }

  private boolean mayLose() {
    return stage
        .sheets()
        .ask("Discard your changes?", "What you changed is not saved.", "Keep editing", "Discard");
  }

  @Override
  public void toLive(Protocol protocol, PracticePlan plan) {
    stage.remember(this::toSetup);
    running.start(settings(), protocol, plan);
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
  public void toDebrief(Session session) {
    debriefs.show(session);
  }

  @Override
  public void toComparison(Path a, Path b) {
    debriefs.compare(a, b);
  }

  @Override
  public void toggleProjector() {
    running.toggleProjector();
  }
}
