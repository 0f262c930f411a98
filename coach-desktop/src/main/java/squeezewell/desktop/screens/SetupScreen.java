package squeezewell.desktop.screens;

import java.awt.Component;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.DefaultComboBoxModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.parts.Choice;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Quantities;

/** Where a practice is set up: patient, guideline, length. */
public final class SetupScreen {
  private static final long MINUTE = 60_000_000_000L;
  private static final int BY_AGE_WIDTH = 100;
  private static final int GAP = 8;
  private static final int HALF_WIDTH = (Widgets.CONTENT_WIDTH - GAP) / 2;
  private static final long COUNT_IN = 3_000_000_000L;
  private static final List<Integer> MINUTES = List.of(1, 2, 3, 5, 10, 15, 20, 30, 60);

  private final Widgets kit;
  private final Navigator navigator;
  private final List<Protocol> protocols;
  private final long leadNanos;
  private final JComboBox<Choice<Guidance>> patients;
  private final JComboBox<Choice<Protocol>> editions;
  private final JComboBox<Choice<Integer>> lengths = Widgets.choices();
  private final JComboBox<PromptsView.Way> prompts;
  private final JTextField trainee = new JTextField();
  private final Column summary;
  private Prompting wish = Prompting.THROUGHOUT;
  private PromptsView past = new PromptsView(RecordBook.of(List.of()), ZoneId.systemDefault());

  private SetupScreen(Widgets kit, Navigator navigator, List<Protocol> protocols, long leadNanos) {
    this.kit = kit;
    this.navigator = navigator;
    this.protocols = protocols;
    this.leadNanos = leadNanos;
    this.summary = kit.card();
    this.editions = kit.wrappingChoices(HALF_WIDTH);
    this.prompts = kit.wrappingChoices(HALF_WIDTH);
    this.patients = kit.wrappingChoices(Widgets.CONTENT_WIDTH - BY_AGE_WIDTH - GAP);
  }

  /**
   * Builds the screen.
   *
   * @param protocols the editions to choose from, at least one
   * @param problems what is wrong with local protocols; empty if nothing
   * @param leadNanos how long sound needs to be ready
   */
  public static JScrollPane build(
      Widgets kit,
      Navigator navigator,
      List<Protocol> protocols,
      List<String> problems,
      long leadNanos) {
    return new SetupScreen(kit, navigator, protocols, leadNanos).build(problems);
  }

  private JScrollPane build(List<String> problems) {
    Settings settings = navigator.settings();
    Column column = kit.column();
    column.put(kit.softLabel("Squeezewell", 15), 4);
    column.heading("Practise the rhythm", 12);
    String lastEdition = settings.lastChoice().protocolId();
    editions.setModel(Choice.model(protocols, Phrases::edition, p -> p.id().equals(lastEdition)));
    fillPatients(settings.lastChoice());
    fillLengths(settings.lastChoice().minutes());
    AgeWeightPart byAge = new AgeWeightPart(kit, BY_AGE_WIDTH, this::edition, this::take);
    column.put(
        halves(
            kit.named("Guideline", 'G', editions),
            kit.named("Length", 'L', kit.control(lengths, HALF_WIDTH))));
    patients.setAlignmentY(Component.CENTER_ALIGNMENT);
    byAge.toggle().setAlignmentY(Component.CENTER_ALIGNMENT);
    column.put(kit.named("Patient", 'P', patients, kit.row(GAP, patients, byAge.toggle())));
    column.put(byAge.fold());
    trainee.setText(settings.trainee());
    fillPrompts(settings.lastChoice().prompting());
    trainee.addActionListener(e -> start());
    JComponent name = kit.named("Name, if you like", 'N', kit.control(trainee, HALF_WIDTH));
    column.put(halves(kit.named("Prompts", 'O', prompts), name), 4);
    JButton start = kit.mainButton("Start", 'S', Widgets.CONTENT_WIDTH, this::start);
    start.setName("start");
    column.put(start, GAP);
    JButton stations = link("Stations", 'I', navigator::toStations);
    column.put(halves(stations, link("Kit", 'K', navigator::toEquipment)), 14);
    // What is chosen makes it longer or shorter, so nothing above it moves.
    column.subheading("What you will be asked for", 6);
    column.put(summary, 14);
    JButton before = link("Past practices", 'T', navigator::toPast);
    column.put(halves(before, link("Guidelines", 'U', navigator::toLibrary)), GAP);
    JButton sound = link("Sound and display", 'D', navigator::toSettings);
    JButton projector = link("Projector window", 'W', navigator::toggleProjector);
    column.put(halves(sound, projector), 12);
    for (String problem : problems) {
      column.note("A local protocol is left out. " + problem).gap(8);
    }
    column.note(Phrases.CAUTION + " Not a medical device.");
    editions.addActionListener(
        e -> {
          fillPatients(now());
          fillPrompts(prompting());
          byAge.again();
          describe();
        });
    patients.addActionListener(e -> offerAgain());
    prompts.addActionListener(e -> describe());
    Widgets.onFocusLost(trainee, this::offerAgain);
    describe();
    navigator.readBook(
        (book, zone) -> {
          past = new PromptsView(book, zone);
          offerAgain();
        });
    return kit.page(column, start);
  }

  /** Who practises, or what was practised before, may change what is offered. */
  private void offerAgain() {
    fillPrompts(prompting());
    describe();
  }

  private JButton link(String text, char mnemonic, Runnable leads) {
    return kit.button(text, mnemonic, HALF_WIDTH, leads);
  }

  /** Two halves beside each other; they begin at the same height, however high they are. */
  private JPanel halves(JComponent left, JComponent right) {
    left.setAlignmentY(Component.TOP_ALIGNMENT);
    right.setAlignmentY(Component.TOP_ALIGNMENT);
    return kit.row(GAP, left, right);
  }

  private void fillPatients(LastChoice last) {
    List<Guidance> all = edition().guidance();
    Optional<Guidance> before = last.among(all);
    patients.setModel(
        Choice.model(
            all, Guidance::words, guidance -> before.filter(guidance::equals).isPresent()));
  }

  private void fillLengths(int lastMinutes) {
    List<Integer> minutes = new ArrayList<>(MINUTES);
    if (!minutes.contains(lastMinutes)) {
      minutes.add(lastMinutes);
      minutes.sort(null);
    }
    lengths.setModel(
        Choice.model(minutes, m -> Quantities.count(m, "minute"), m -> m == lastMinutes));
  }

  /** Where prompts can't fall silent there is only one choice, and the wish is kept for later. */
  private void fillPrompts(Prompting wanted) {
    wish = wanted;
    Optional<PromptsView.Way> before = Optional.ofNullable(chosenPrompts());
    List<PromptsView.Way> choices = past.choices(name(), guidance());
    Optional<PromptsView.Way> same =
        before.filter(c -> c.prompting() == wanted && choices.contains(c) && c.anew());
    Optional<PromptsView.Way> first =
        choices.stream().filter(c -> c.prompting() == wanted).findFirst();
    prompts.setModel(new DefaultComboBoxModel<>(choices.toArray(new PromptsView.Way[0])));
    same.or(() -> first).ifPresent(prompts::setSelectedItem);
    prompts.setEnabled(choices.size() > 1);
  }

  private PromptsView.Way chosenPrompts() {
    return (PromptsView.Way) prompts.getSelectedItem();
  }

  private Prompting prompting() {
    return prompts.getItemCount() > 1 ? chosenPrompts().prompting() : wish;
  }

  private String name() {
    return Settings.nameOf(trainee.getText());
  }

  private Protocol edition() {
    return Choice.of(editions);
  }

  private Guidance guidance() {
    return Choice.of(patients);
  }

  /** What is chosen now, to be offered by another edition too. */
  private LastChoice now() {
    Guidance guidance = guidance();
    return new LastChoice(
        edition().id(),
        guidance.patient(),
        guidance.situation(),
        guidance.rescuers(),
        Choice.of(lengths),
        prompting());
  }

  /** Takes a group as the patient; the sentence that says what was chosen. */
  private String take(Protocol aged, PatientGroup group) {
    Optional<Guidance> rhythm = AgeWeightView.rhythm(aged, group, guidance());
    for (int i = 0; i < patients.getItemCount(); i++) {
      if (rhythm.filter(patients.getItemAt(i).value()::equals).isPresent()) {
        patients.setSelectedIndex(i);
      }
    }
    return AgeWeightView.chosen(aged, group, rhythm);
  }

  private void describe() {
    Guidance guidance = guidance();
    summary.refill(
        () -> {
          SetupView.lines(guidance).forEach(line -> summary.plain(line, 15).gap(4));
          past.lines(name(), guidance, chosenPrompts())
              .forEach(line -> summary.plain(line, 15).gap(4));
          if (!edition().supersededBy().isEmpty()) {
            summary.bold("Superseded by " + edition().supersededBy() + ".", 13);
          }
          SetupView.missing(edition(), guidance.patient())
              .ifPresent(words -> summary.bold(words, 13));
          SetupView.local(edition(), guidance, protocols)
              .forEach(line -> summary.gap(2).bold(line, 13));
          summary.gap(4);
          for (Citation citation : SetupView.sources(guidance)) {
            summary.soft("Source: " + citation.line(), 12).gap(2);
          }
        });
  }

  private void start() {
    LastChoice chosen = now();
    navigator.keep(navigator.settings().withTrainee(name()).withLastChoice(chosen));
    PracticePlan plan =
        PracticePlan.of(edition(), guidance(), COUNT_IN, chosen.minutes() * MINUTE, leadNanos)
            .with(chosen.prompting());
    boolean fades = plan.prompting() == Prompting.FADING;
    navigator.toLive(edition(), fades ? plan.withStartLevel(chosenPrompts().startLevel()) : plan);
  }
}
