package squeezewell.desktop.screens;

import java.awt.Component;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.Box;
import javax.swing.DefaultComboBoxModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.parts.Kit;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.report.SideBySide;
import squeezewell.trainee.RecordBook;

/** Where a practice is set up: patient, guideline, length. */
public final class SetupScreen {
  private static final long MINUTE = 60_000_000_000L;
  private static final int BY_AGE_WIDTH = 100;
  private static final int GAP = 8;
  private static final int HALF_WIDTH = (Kit.CONTENT_WIDTH - GAP) / 2;
  private static final long COUNT_IN = 3_000_000_000L;
  private static final List<Integer> MINUTES = List.of(1, 2, 3, 5, 10, 15, 20, 30, 60);

  private final Kit kit;
  private final Navigator navigator;
  private final List<Protocol> protocols;
  private final long leadNanos;
  private final JComboBox<Choice<Guidance>> patients;
  private final JComboBox<Choice<Protocol>> editions;
  private final JComboBox<Choice<Integer>> lengths = Kit.choices();
  private final JComboBox<PromptsView.Choice> prompts;
  private final JTextField trainee = new JTextField();
  private final JPanel summary;
  private Prompting wish = Prompting.THROUGHOUT;
  private PromptsView past = new PromptsView(RecordBook.of(List.of()), ZoneId.systemDefault());

  private record Choice<T>(T value, String label) {
    @Override
    public String toString() {
      return label;
    }
  }

  private SetupScreen(Kit kit, Navigator navigator, List<Protocol> protocols, long leadNanos) {
    this.kit = kit;
    this.navigator = navigator;
    this.protocols = protocols;
    this.leadNanos = leadNanos;
    this.summary = kit.card();
    this.editions = kit.wrappingChoices(HALF_WIDTH);
    this.prompts = kit.wrappingChoices(HALF_WIDTH);
    this.patients = kit.wrappingChoices(Kit.CONTENT_WIDTH - BY_AGE_WIDTH - GAP);
  }

  /**
   * Builds the screen.
   *
   * @param protocols the editions to choose from, at least one
   * @param problems what is wrong with local protocols; empty if nothing
   * @param leadNanos how long sound needs to be ready
   */
  public static JScrollPane build(
      Kit kit,
      Navigator navigator,
      List<Protocol> protocols,
      List<String> problems,
      long leadNanos) {
    return new SetupScreen(kit, navigator, protocols, leadNanos).build(problems);
  }

  private JScrollPane build(List<String> problems) {
    Settings settings = navigator.settings();
    JPanel column = kit.column();
    column.add(kit.label("Squeezewell", kit.look().font(15), kit.look().palette().softText()));
    column.add(kit.gap(4));
    column.add(kit.heading("Practise the rhythm"));
    column.add(kit.gap(12));
    fillEditions(settings.lastChoice());
    fillPatients(settings.lastChoice());
    fillLengths(settings.lastChoice().minutes());
    AgeWeightPart byAge = new AgeWeightPart(kit, BY_AGE_WIDTH, this::edition, this::take);
    JPanel first = kit.row();
    add(first, named("Guideline", 'G', editions, editions));
    add(first, named("Length", 'L', lengths, kit.control(lengths, HALF_WIDTH)));
    column.add(first);
    JPanel row = kit.row();
    row.add(patients);
    row.add(Box.createHorizontalStrut(kit.look().px(GAP)));
    row.add(byAge.toggle());
    patients.setAlignmentY(Component.CENTER_ALIGNMENT);
    byAge.toggle().setAlignmentY(Component.CENTER_ALIGNMENT);
    column.add(named("Patient", 'P', patients, row));
    column.add(byAge.fold());
    trainee.setText(settings.trainee());
    fillPrompts(settings.lastChoice().prompting());
    trainee.addActionListener(e -> start());
    JPanel second = kit.row();
    add(second, named("Prompts", 'O', prompts, prompts));
    add(second, named("Name, if you like", 'N', trainee, kit.control(trainee, HALF_WIDTH)));
    column.add(second);
    column.add(kit.gap(4));
    JButton start = kit.mainButton("Start", Kit.CONTENT_WIDTH, e -> start());
    start.setName("start");
    start.setMnemonic('S');
    column.add(start);
    column.add(kit.gap(GAP));
    column.add(
        links(
            link("Stations", 'I', navigator::toStations),
            link("Kit", 'K', navigator::toEquipment)));
    column.add(kit.gap(14));
    // What is chosen makes it longer or shorter, so nothing above it moves.
    column.add(kit.subheading("What you will be asked for"));
    column.add(kit.gap(6));
    column.add(summary);
    column.add(kit.gap(14));
    column.add(
        links(
            link("Past practices", 'T', navigator::toPast),
            link("Guidelines", 'U', navigator::toLibrary)));
    column.add(kit.gap(GAP));
    column.add(
        links(
            link("Sound and display", 'D', navigator::toSettings),
            link("Projector window", 'W', navigator::toggleProjector)));
    column.add(kit.gap(12));
    for (String problem : problems) {
      column.add(kit.note("A local protocol is left out. " + problem));
      column.add(kit.gap(8));
    }
    column.add(kit.note(Phrases.CAUTION + " Not a medical device."));
    editions.addActionListener(
        e -> {
          fillPatients(now());
          fillPrompts(prompting());
          byAge.again();
          describe();
        });
    patients.addActionListener(
        e -> {
          fillPrompts(prompting());
          describe();
        });
    prompts.addActionListener(e -> describe());
    trainee.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusLost(FocusEvent e) {
            offerAgain();
          }
        });
    describe();
    navigator.readBook(
        (book, zone) -> {
          past = new PromptsView(book, zone);
          offerAgain();
        });
    JScrollPane page = kit.page(column);
    page.addAncestorListener(Focus.on(start, page));
    return page;
  }

  /** Who practises, or what was practised before, may change what is offered. */
  private void offerAgain() {
    fillPrompts(prompting());
    describe();
  }

  private JButton link(String text, char mnemonic, Runnable leads) {
    JButton button = kit.button(text, HALF_WIDTH, e -> leads.run());
    button.setMnemonic(mnemonic);
    return button;
  }

  private JPanel links(JButton left, JButton right) {
    JPanel row = kit.row();
    add(row, left);
    add(row, right);
    return row;
  }

  /** Adds one of two halves to a row; they begin at the same height, however high they are. */
  private void add(JPanel row, JComponent half) {
    if (row.getComponentCount() > 0) {
      row.add(Box.createHorizontalStrut(kit.look().px(GAP)));
    }
    half.setAlignmentY(Component.TOP_ALIGNMENT);
    row.add(half);
  }

  private JPanel named(String name, char mnemonic, JComponent control, JComponent shown) {
    JPanel block = kit.column();
    JLabel label = kit.label(name, kit.look().font(13), kit.look().palette().softText());
    label.setLabelFor(control);
    label.setDisplayedMnemonic(mnemonic);
    block.add(label);
    block.add(kit.gap(4));
    block.add(shown);
    block.add(kit.gap(10));
    return block;
  }

  private void fillEditions(LastChoice last) {
    DefaultComboBoxModel<Choice<Protocol>> model = new DefaultComboBoxModel<>();
    for (Protocol protocol : protocols) {
      Choice<Protocol> choice = new Choice<>(protocol, Phrases.edition(protocol));
      model.addElement(choice);
      if (protocol.id().equals(last.protocolId())) {
        model.setSelectedItem(choice);
      }
    }
    editions.setModel(model);
  }

  private void fillPatients(LastChoice last) {
    DefaultComboBoxModel<Choice<Guidance>> model = new DefaultComboBoxModel<>();
    Optional<Guidance> before = last.among(edition().guidance());
    for (Guidance guidance : edition().guidance()) {
      PatientGroup group = guidance.patient();
      SideBySide.Choice named =
          new SideBySide.Choice(group, guidance.situation(), guidance.rescuers());
      Choice<Guidance> choice = new Choice<>(guidance, named.toString());
      model.addElement(choice);
      if (before.filter(guidance::equals).isPresent()) {
        model.setSelectedItem(choice);
      }
    }
    patients.setModel(model);
  }

  private void fillLengths(int lastMinutes) {
    List<Integer> minutes = new ArrayList<>(MINUTES);
    if (!minutes.contains(lastMinutes)) {
      minutes.add(lastMinutes);
      minutes.sort(null);
    }
    for (int each : minutes) {
      Choice<Integer> choice = new Choice<>(each, each == 1 ? "1 minute" : each + " minutes");
      lengths.addItem(choice);
      if (each == lastMinutes) {
        lengths.setSelectedItem(choice);
      }
    }
  }

  /** Where prompts can't fall silent there is only one choice, and the wish is kept for later. */
  private void fillPrompts(Prompting wanted) {
    wish = wanted;
    Optional<PromptsView.Choice> before = Optional.ofNullable(chosenPrompts());
    List<PromptsView.Choice> choices = past.choices(name(), guidance());
    Optional<PromptsView.Choice> same =
        before.filter(c -> c.prompting() == wanted && choices.contains(c) && againFromNothing(c));
    Optional<PromptsView.Choice> first =
        choices.stream().filter(c -> c.prompting() == wanted).findFirst();
    prompts.setModel(new DefaultComboBoxModel<>(choices.toArray(new PromptsView.Choice[0])));
    same.or(() -> first).ifPresent(prompts::setSelectedItem);
    prompts.setEnabled(choices.size() > 1);
  }

  /** Whether fading anew was chosen where going on from last time was offered. */
  private static boolean againFromNothing(PromptsView.Choice choice) {
    return choice.startLevel() == 0 && !choice.label().equals(choice.prompting().label());
  }

  private PromptsView.Choice chosenPrompts() {
    return (PromptsView.Choice) prompts.getSelectedItem();
  }

  private Prompting prompting() {
    return prompts.getItemCount() > 1 ? chosenPrompts().prompting() : wish;
  }

  private String name() {
    return Settings.nameOf(trainee.getText());
  }

  private Protocol edition() {
    return editions.getItemAt(editions.getSelectedIndex()).value();
  }

  private Guidance guidance() {
    return patients.getItemAt(Math.max(0, patients.getSelectedIndex())).value();
  }

  /** What is chosen now, to be offered by another edition too. */
  private LastChoice now() {
    Guidance guidance = guidance();
    int minutes = lengths.getItemAt(lengths.getSelectedIndex()).value();
    return new LastChoice(
        edition().id(),
        guidance.patient(),
        guidance.situation(),
        guidance.rescuers(),
        minutes,
        prompting());
  }

  /** Takes a group as the patient; the sentence that says what was chosen. */
  private String take(PatientGroup group) {
    Optional<Guidance> rhythm = AgeWeightView.rhythm(edition(), group, guidance());
    for (int i = 0; i < patients.getItemCount(); i++) {
      if (rhythm.filter(patients.getItemAt(i).value()::equals).isPresent()) {
        patients.setSelectedIndex(i);
      }
    }
    return AgeWeightView.chosen(edition(), group, rhythm);
  }

  private void describe() {
    summary.removeAll();
    Guidance guidance = guidance();
    for (String line : SetupView.lines(guidance)) {
      summary.add(
          kit.text(line, kit.look().font(15), kit.look().palette().text(), kit.cardTextWidth()));
      summary.add(kit.gap(4));
    }
    for (String line : past.lines(name(), guidance, chosenPrompts())) {
      summary.add(
          kit.text(line, kit.look().font(15), kit.look().palette().text(), kit.cardTextWidth()));
      summary.add(kit.gap(4));
    }
    SetupView.missing(edition(), guidance.patient())
        .ifPresent(
            words ->
                summary.add(
                    kit.text(
                        words,
                        kit.look().bold(13),
                        kit.look().palette().text(),
                        kit.cardTextWidth())));
    for (String line : SetupView.local(edition(), guidance, protocols)) {
      summary.add(kit.gap(2));
      summary.add(
          kit.text(line, kit.look().bold(13), kit.look().palette().text(), kit.cardTextWidth()));
    }
    summary.add(kit.gap(4));
    for (Citation citation : SetupView.sources(guidance)) {
      summary.add(source(citation));
      summary.add(kit.gap(2));
    }
    summary.revalidate();
    summary.repaint();
  }

  private JComponent source(Citation citation) {
    return kit.text(
        "Source: " + citation.line(),
        kit.look().font(12),
        kit.look().palette().softText(),
        kit.cardTextWidth());
  }

  private void start() {
    LastChoice chosen = now();
    navigator.keep(
        navigator
            .settings()
            .withTrainee(Settings.nameOf(trainee.getText()))
            .withLastChoice(chosen));
    PracticePlan plan =
        PracticePlan.of(edition(), guidance(), COUNT_IN, chosen.minutes() * MINUTE, leadNanos)
            .with(chosen.prompting());
    boolean fades = plan.prompting() == Prompting.FADING;
    navigator.toLive(edition(), fades ? plan.withStartLevel(chosenPrompts().startLevel()) : plan);
  }
}
