package squeezewell.desktop.screens;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import squeezewell.desktop.parts.Kit;
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
  private final Kit kit;
  private final Navigator navigator;
  private final StationStore store;
  private final List<Protocol> protocols;
  private final long leadNanos;
  private final JComboBox<Choice<Station>> stations;
  private final JComboBox<Choice<StationMode>> modes = Kit.choices();
  private final JComboBox<Choice<Protocol>> editions;
  private final JTextField seed = new JTextField();
  private final JTextField trainee = new JTextField();
  private final JCheckBox timedSteps = new JCheckBox("What time sets off comes by itself", true);
  private final JPanel summary;
  private final JPanel ways;
  private final JPanel modeWords;
  private final JLabel trouble;
  private final List<JComboBox<Choice<BranchOption>>> chosen = new ArrayList<>();

  private record Choice<T>(T value, String label) {
    @Override
    public String toString() {
      return label;
    }
  }

  private StationsScreen(
      Kit kit, Navigator navigator, StationStore store, List<Protocol> protocols, long leadNanos) {
    this.kit = kit;
    this.navigator = navigator;
    this.store = store;
    this.protocols = protocols;
    this.leadNanos = leadNanos;
    stations = kit.wrappingChoices(Kit.CONTENT_WIDTH);
    editions = kit.wrappingChoices(Kit.CONTENT_WIDTH);
    summary = kit.card();
    ways = kit.column();
    modeWords = kit.column();
    trouble = kit.label(" ", kit.look().bold(13), kit.look().palette().text());
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
      Kit kit,
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
    JPanel column = kit.column();
    JButton back = kit.button("Back", 110, e -> navigator.toSetup());
    back.setMnemonic('B');
    column.add(back);
    column.add(kit.gap(12));
    column.add(kit.heading("The whole exercise"));
    column.add(kit.gap(12));
    for (Station station : store.stations()) {
      stations.addItem(new Choice<>(station, StationsView.name(station, store.own())));
    }
    for (StationMode mode : StationMode.values()) {
      modes.addItem(new Choice<>(mode, mode.label()));
    }
    add(column, "Station", 'S', stations, stations);
    column.add(summary);
    column.add(kit.gap(10));
    add(column, "Who is there", 'W', modes, kit.wide(modes));
    column.add(modeWords);
    column.add(kit.gap(10));
    add(column, "Guideline", 'G', editions, editions);
    column.add(ways);
    seed.setText(Long.toString(firstSeed));
    seed.getAccessibleContext().setAccessibleDescription("The same number takes the same ways");
    add(column, "Chance number: the same one takes the same ways", 'C', seed, kit.wide(seed));
    trainee.setText(navigator.settings().trainee());
    add(column, "Name, if you like", 'N', trainee, kit.wide(trainee));
    trouble.setName("trouble");
    column.add(trouble);
    column.add(kit.gap(6));
    JButton start = kit.mainButton("Start the station", Kit.CONTENT_WIDTH, e -> start(onStart));
    start.setName("start");
    start.setMnemonic('T');
    column.add(start);
    column.add(kit.gap(14));
    column.add(kit.note(StationText.PRACTICE_AID));
    column.add(kit.gap(8));
    column.add(kit.note("Stations of your own lie in " + folder + "."));
    for (String problem : store.problems()) {
      column.add(kit.gap(8));
      column.add(kit.note("A station is left out. " + problem));
    }
    column.add(kit.gap(8));
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    stations.addActionListener(e -> stationChanged());
    modes.addActionListener(e -> modeChanged());
    editions.addActionListener(e -> describe());
    stationChanged();
    modeChanged();
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(stations, page));
    return page;
  }

  private void add(JPanel column, String name, char mnemonic, JComponent control, JComponent row) {
    JLabel label = kit.label(name, kit.look().font(13), kit.look().palette().softText());
    label.setLabelFor(control);
    label.setDisplayedMnemonic(mnemonic);
    column.add(label);
    column.add(kit.gap(4));
    column.add(row);
    column.add(kit.gap(10));
  }

  private Station station() {
    return stations.getItemAt(Math.max(0, stations.getSelectedIndex())).value();
  }

  private StationMode mode() {
    return modes.getItemAt(Math.max(0, modes.getSelectedIndex())).value();
  }

  private void stationChanged() {
    String before =
        editions.getSelectedIndex() < 0
            ? navigator.settings().lastChoice().protocolId()
            : editions.getItemAt(editions.getSelectedIndex()).value().id();
    editions.removeAllItems();
    for (Protocol protocol : StationsView.editions(station(), protocols)) {
      Choice<Protocol> choice = new Choice<>(protocol, Phrases.edition(protocol));
      editions.addItem(choice);
      if (protocol.id().equals(before)) {
        editions.setSelectedItem(choice);
      }
    }
    fillWays();
    describe();
  }

  private void modeChanged() {
    modeWords.removeAll();
    modeWords.add(kit.note(StationsView.mode(mode())));
    fillWays();
    modeWords.revalidate();
    modeWords.repaint();
  }

  /** Only one who does not do the exercise chooses the way: else nothing would come unforeseen. */
  private void fillWays() {
    ways.removeAll();
    chosen.clear();
    if (mode().hasExaminer()) {
      for (StationBranch branch : station().branches()) {
        JComboBox<Choice<BranchOption>> box = kit.wrappingChoices(Kit.CONTENT_WIDTH);
        box.addItem(new Choice<>(null, "By chance"));
        for (StationBranch.Way way : branch.ways()) {
          box.addItem(new Choice<>(new BranchOption(branch.id(), way.id()), way.words()));
        }
        chosen.add(box);
        add(ways, branch.words(), '\0', box, box);
      }
    }
    if (mode() == StationMode.INSTRUCTOR) {
      timedSteps.setOpaque(false);
      timedSteps.setFont(kit.look().font(14));
      Dimension size = new Dimension(kit.look().px(Kit.CONTENT_WIDTH), kit.look().px(48));
      timedSteps.setPreferredSize(size);
      timedSteps.setMinimumSize(size);
      timedSteps.setMaximumSize(size);
      timedSteps.setAlignmentX(JComponent.LEFT_ALIGNMENT);
      ways.add(timedSteps);
      ways.add(kit.gap(6));
    }
    ways.revalidate();
    ways.repaint();
  }

  private void describe() {
    summary.removeAll();
    for (String line : StationsView.lines(station())) {
      JTextArea text =
          kit.text(line, kit.look().font(15), kit.look().palette().text(), kit.cardTextWidth());
      summary.add(text);
      summary.add(kit.gap(4));
    }
    if (editions.getSelectedIndex() >= 0) {
      summary.add(
          kit.text(
              StationsView.rhythm(
                  station(), editions.getItemAt(editions.getSelectedIndex()).value()),
              kit.look().font(13),
              kit.look().palette().softText(),
              kit.cardTextWidth()));
    }
    summary.revalidate();
    summary.repaint();
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
      BranchOption way = box.getItemAt(Math.max(0, box.getSelectedIndex())).value();
      if (way != null) {
        wanted.add(way);
      }
    }
    try {
      StationSetup setup =
          StationSetup.of(station(), mode(), wanted, number.getAsLong())
              .withTimedSteps(mode() != StationMode.INSTRUCTOR || timedSteps.isSelected());
      Protocol edition = editions.getItemAt(editions.getSelectedIndex()).value();
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
