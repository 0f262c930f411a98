package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Choice;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.Settings;
import squeezewell.files.StationStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Protocol;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationSetup;
import squeezewell.station.run.StationText;

/** Where a station is chosen. */
public final class StationsScreen {
  private final Widgets kit;
  private final Navigator navigator;
  private final StationStore store;
  private final List<Protocol> protocols;
  private final long leadNanos;
  private final JComboBox<Choice<Station>> stations;
  private final JComboBox<Choice<StationMode>> modes = Widgets.choices();
  private final JComboBox<Choice<Protocol>> editions;
  private final JTextField seed = new JTextField();
  private final JTextField trainee = new JTextField();
  private final JCheckBox timedSteps;
  private final Column summary;
  private final Column ways;
  private final Column modeWords;
  private final JLabel trouble;
  private final List<JComboBox<Choice<BranchOption>>> chosen = new ArrayList<>();

  private StationsScreen(
      Widgets kit,
      Navigator navigator,
      StationStore store,
      List<Protocol> protocols,
      long leadNanos) {
    this.kit = kit;
    this.navigator = navigator;
    this.store = store;
    this.protocols = protocols;
    this.leadNanos = leadNanos;
    stations = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
    editions = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
    timedSteps =
        kit.tick("What time sets off comes by itself", kit.look().font(14), Widgets.CONTENT_WIDTH);
    timedSteps.setSelected(true);
    summary = kit.card();
    ways = kit.column();
    modeWords = kit.column();
    trouble = kit.boldLabel(" ", 13);
  }

  /**
   * Builds the screen.
   *
   * @param store the stations there are, and what is wrong with others
   * @param protocols the editions to choose from
   * @param leadNanos how long sound needs to be ready
   * @param firstSeed the chance number offered
   * @param folder where the user's own stations lie, for people
   * @param start runs a station
   */
  public static JScrollPane build(
      Widgets kit,
      Navigator navigator,
      StationStore store,
      List<Protocol> protocols,
      long leadNanos,
      long firstSeed,
      String folder,
      Consumer<StationChoice> start) {
    return new StationsScreen(kit, navigator, store, protocols, leadNanos)
        .build(firstSeed, folder, start);
  }

  private JScrollPane build(long firstSeed, String folder, Consumer<StationChoice> onStart) {
    Column column = kit.column();
    JButton back = kit.back(navigator::toSetup);
    column.put(back, 12);
    column.heading("The whole exercise", 12);
    stations.setModel(
        Choice.model(store.stations(), s -> StationsView.name(s, store.own()), s -> false));
    modes.setModel(Choice.model(List.of(StationMode.values()), StationMode::label, mode -> false));
    column.put(kit.named("Station", 'S', stations));
    column.put(summary, 10);
    column.put(kit.named("Who is there", 'W', kit.wide(modes)));
    column.put(modeWords, 10);
    column.put(kit.named("Guideline", 'G', editions));
    column.put(ways);
    seed.setText(Long.toString(firstSeed));
    seed.getAccessibleContext().setAccessibleDescription("The same number takes the same ways");
    column.put(kit.named("Chance number: the same one takes the same ways", 'C', kit.wide(seed)));
    trainee.setText(navigator.settings().trainee());
    column.put(kit.named("Name, if you like", 'N', kit.wide(trainee)));
    trouble.setName("trouble");
    column.put(trouble, 6);
    JButton start =
        kit.mainButton("Start the station", 'T', Widgets.CONTENT_WIDTH, () -> start(onStart));
    start.setName("start");
    column.put(start, 14);
    column.note(StationText.PRACTICE_AID).gap(8);
    column.note("Stations of your own lie in " + folder + ".");
    for (String problem : store.problems()) {
      column.gap(8).note("A station is left out. " + problem);
    }
    column.gap(8).note(Phrases.CAUTION + " Not a medical device.");
    stations.addActionListener(e -> stationChanged());
    modes.addActionListener(e -> modeChanged());
    editions.addActionListener(e -> describe());
    stationChanged();
    modeChanged();
    return kit.page(column, stations);
  }

  private Station station() {
    return Choice.of(stations);
  }

  private StationMode mode() {
    return Choice.of(modes);
  }

  private void stationChanged() {
    String before =
        editions.getSelectedIndex() < 0
            ? navigator.settings().lastChoice().protocolId()
            : Choice.of(editions).id();
    editions.setModel(
        Choice.model(
            StationsView.editions(station(), protocols),
            Phrases::edition,
            protocol -> protocol.id().equals(before)));
    fillWays();
    describe();
  }

  private void modeChanged() {
    modeWords.refill(() -> modeWords.note(StationsView.mode(mode())));
    fillWays();
  }

  /** Only one who does not do the exercise chooses the way: else nothing would come unforeseen. */
  private void fillWays() {
    chosen.clear();
    ways.refill(this::addWays);
  }

  private void addWays() {
    if (mode().hasExaminer()) {
      for (StationBranch branch : station().branches()) {
        JComboBox<Choice<BranchOption>> box = kit.wrappingChoices(Widgets.CONTENT_WIDTH);
        box.addItem(new Choice<>(null, "By chance"));
        for (StationBranch.Way way : branch.ways()) {
          box.addItem(new Choice<>(new BranchOption(branch.id(), way.id()), way.words()));
        }
        chosen.add(box);
        ways.put(kit.named(branch.words(), '\0', box));
      }
    }
    if (mode() == StationMode.INSTRUCTOR) {
      ways.put(timedSteps, 6);
    }
  }

  private void describe() {
    summary.refill(
        () -> {
          StationsView.lines(station()).forEach(line -> summary.plain(line, 15).gap(4));
          if (editions.getSelectedIndex() >= 0) {
            summary.note(StationsView.rhythm(station(), Choice.of(editions)));
          }
        });
  }

  private void start(Consumer<StationChoice> onStart) {
    OptionalLong number = StationsView.seed(seed.getText());
    if (!number.isPresent()) {
      say("Chance number: a whole number of at most nine digits", seed);
      return;
    }
    if (editions.getSelectedIndex() < 0) {
      say("No edition has a rhythm for this station", editions);
      return;
    }
    List<BranchOption> wanted = new ArrayList<>();
    for (JComboBox<Choice<BranchOption>> box : chosen) {
      BranchOption way = Choice.of(box);
      if (way != null) {
        wanted.add(way);
      }
    }
    try {
      StationSetup setup =
          StationSetup.of(station(), mode(), wanted, number.getAsLong())
              .withTimedSteps(mode() != StationMode.INSTRUCTOR || timedSteps.isSelected());
      Protocol edition = Choice.of(editions);
      navigator.keep(navigator.settings().withTrainee(Settings.nameOf(trainee.getText())));
      onStart.accept(
          new StationChoice(
              station(),
              setup,
              edition,
              StationPractice.plan(
                  station(), edition, StationsView.guidance(station(), edition).get(), leadNanos)));
    } catch (BadInputException e) {
      say(e.getMessage(), stations);
    }
  }

  private void say(String why, JComponent where) {
    trouble.setText(why);
    where.requestFocusInWindow();
  }
}
