package squeezewell.desktop.screens.practice;

import java.awt.Component;
import java.awt.Dimension;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JTextField;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.Chip;
import squeezewell.desktop.parts.Fold;
import squeezewell.desktop.parts.Lines;
import squeezewell.desktop.parts.Page;
import squeezewell.desktop.parts.PushButton;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.parts.Stack;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.Today;
import squeezewell.files.LastChoice;
import squeezewell.files.Settings;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Wording;

/**
 * Where a practice is chosen and begun. The last choice is one press away, and everything else
 * changes that one card.
 */
public final class PracticeScreen {
  private static final Wording WORDS = PracticeView.WORDS;
  private static final long MINUTE = 60_000_000_000L;
  private static final long COUNT_IN = 3_000_000_000L;
  private static final List<Integer> MINUTES = List.of(2, 3, 5, 10);
  private static final int FIRST_MINUTES = 2;

  private final Look look;
  private final Sheets sheets;
  private final Navigator navigator;
  private final List<Protocol> protocols;
  private final long leadNanos;
  private final Stack startWords;
  private final Stack today;
  private final Stack choices;
  private final PushButton startButton;
  private final Fold options;

  /** What stands in the options' sheet, where there is room for it. */
  private final Stack inPlace;

  private LastChoice choice;

  /** What was chosen, where an edition has several rhythms for one choice, by age. */
  private Optional<Guidance> exact = Optional.empty();

  private String name;
  private boolean anew;
  private boolean changed;
  private PromptsView past = new PromptsView(RecordBook.of(List.of()), ZoneId.systemDefault());
  private Optional<Today> advice = Optional.empty();

  private PracticeScreen(
      Look look, Sheets sheets, Navigator navigator, List<Protocol> protocols, long leadNanos) {
    this.look = look;
    this.sheets = sheets;
    this.navigator = navigator;
    this.protocols = protocols;
    this.leadNanos = leadNanos;
    Settings settings = navigator.settings();
    this.choice = settings.lastChoice();
    this.name = settings.trainee();
    this.startWords = new Stack(look, Stack.Ground.DEEP, 0);
    this.today = new Stack(look, Stack.Ground.CARD, 16);
    this.choices = new Stack(look);
    this.startButton =
        PushButton.of(look, PushButton.Kind.ON_DEEP, WORDS.say("start"), Sign.PRACTICE, this::start)
            .high(60);
    startButton.setName("start");
    this.inPlace = new Stack(look);
    this.options = Fold.to(look, Sign.LIST, WORDS.say("options"), "", "", () -> openOptions());
    options.setName("options");
  }

  /**
   * Builds the screen.
   *
   * @param protocols the editions to choose from, at least one
   * @param problems what is wrong with local protocols; empty if nothing
   * @param leadNanos how long sound needs to be ready
   */
  public static JComponent build(
      Look look,
      Sheets sheets,
      Navigator navigator,
      List<Protocol> protocols,
      List<String> problems,
      long leadNanos) {
    return new PracticeScreen(look, sheets, navigator, protocols, leadNanos).build(problems);
  }

  private JComponent build(List<String> problems) {
    show();
    Stack start = new Stack(look, Stack.Ground.DEEP, 16).put(startWords).gap(12).put(startButton);
    Stack first = new Stack(look).put(start).gap(12).put(today);
    Stack second = new Stack(look).put(choices).gap(8).put(options).put(inPlace).gap(8);
    problems.forEach(problem -> second.soft(WORDS.say("problem", problem), 14).gap(8));
    second.soft(WORDS.say("caution"), 12);
    JComponent bar =
        Page.bar(
            look,
            WORDS.say("title"),
            null,
            PushButton.sign(look, Sign.SETTINGS, WORDS.say("settings"), navigator::toSettings));
    readPast();
    return new Page(look, bar, first, second, new Stack(look))
        .either(inPlace, options)
        .startOn(startButton);
  }

  private void readPast() {
    navigator.readBook(
        (book, zone) -> {
          past = new PromptsView(book, zone);
          show();
        });
    navigator.readToday(
        name,
        told -> {
          advice = told;
          show();
        });
  }

  private Protocol edition() {
    return protocols.stream()
        .filter(p -> p.id().equals(choice.protocolId()))
        .findFirst()
        .orElse(protocols.get(0));
  }

  /** The rhythm of the choice; where the edition has none for it, its first. */
  private Guidance guidance() {
    List<Guidance> all = edition().guidance();
    return exact.filter(all::contains).or(() -> choice.among(all)).orElse(all.get(0));
  }

  private PromptsView.Way way() {
    List<PromptsView.Way> ways = past.choices(name, guidance());
    return ways.stream()
        .filter(w -> w.prompting() == choice.prompting())
        .filter(w -> w.anew() == anew || ways.stream().noneMatch(PromptsView.Way::anew))
        .findFirst()
        .orElse(ways.get(0));
  }

  private void choose(LastChoice next) {
    changed = true;
    choice = next;
    show();
  }

  private void choose(Protocol edition, Guidance guidance) {
    exact = Optional.of(guidance);
    choose(
        new LastChoice(
            edition.id(),
            guidance.patient(),
            guidance.situation(),
            guidance.rescuers(),
            choice.minutes(),
            choice.prompting()));
  }

  private void show() {
    Guidance guidance = guidance();
    Protocol edition = edition();
    boolean same = !changed && navigator.settings().cautionSeenAt().isPresent();
    startWords.refill(
        () ->
            startWords
                .soft(WORDS.say(same ? "start.same" : "start.chosen"), 14)
                .gap(2)
                .bold(PracticeView.title(guidance, choice.minutes()), 28)
                .gap(2)
                .soft(PracticeView.line(edition, guidance), 16));
    PracticeView.Card card = PracticeView.today(advice);
    PushButton use =
        PushButton.of(look, PushButton.Kind.TONAL, WORDS.say("today.use"), this::useToday);
    use.setName("use");
    today.refill(
        () ->
            today.put(
                Lines.with(
                    look,
                    12,
                    new Stack(look)
                        .eyebrow(card.eyebrow())
                        .gap(2)
                        .bold(card.title(), 20)
                        .gap(2)
                        .soft(card.text(), 14),
                    use)));
    choices.refill(this::fillChoices);
    options.end(
        WORDS.say(
            "options.line",
            Phrases.edition(edition),
            name.isEmpty() ? WORDS.say("options.no-name") : name,
            promptsLabel(way()).toLowerCase(Locale.ROOT)));
    inPlace.refill(() -> fillOptions(inPlace, () -> {}));
  }

  private void fillChoices() {
    Guidance now = guidance();
    choices.bold(WORDS.say("patient"), 14).gap(6);
    List<Chip<PatientGroup>> patients =
        Chip.oneOf(
            look,
            PracticeView.patients(),
            PatientGroup::label,
            PracticeView::picture,
            this::choosePatient);
    for (Chip<PatientGroup> chip : patients) {
      chip.setSelected(chip.value() == now.patient());
      chip.setName("patient-" + chip.value().id());
      chip.dimmed(edition().guidance().stream().noneMatch(g -> g.patient() == chip.value()));
    }
    choices.put(Lines.even(look, 8, patients.toArray(new Component[0])));
    choices.gap(12).bold(WORDS.say("situation"), 14).gap(6);
    List<Chip<PracticeView.Scene>> scenes =
        Chip.oneOf(
            look,
            PracticeView.scenes(edition(), now.patient(), now),
            PracticeView.Scene::label,
            scene -> null,
            scene ->
                scene
                    .guidance()
                    .ifPresentOrElse(
                        g -> choose(edition(), g), () -> offer(now.patient(), scene.situation())));
    for (Chip<PracticeView.Scene> chip : scenes) {
      chip.setSelected(chip.value().guidance().filter(now::equals).isPresent());
      chip.dimmed(chip.value().guidance().isEmpty());
      chip.setName("situation-" + chip.value().label());
    }
    choices.put(Lines.of(look, 8, scenes.toArray(new Component[0])));
    List<Integer> lengths = new ArrayList<>(MINUTES);
    if (!lengths.contains(choice.minutes())) {
      lengths.set(lengths.size() - 1, choice.minutes());
      lengths.sort(null);
    }
    List<Chip<Integer>> minutes =
        Chip.oneOf(look, lengths, String::valueOf, m -> null, m -> choose(withMinutes(m)));
    minutes.forEach(chip -> chip.setSelected(chip.value() == choice.minutes()));
    minutes.forEach(chip -> chip.setName("minutes-" + chip.value()));
    Stack label = new Stack(look).bold(WORDS.say("minutes"), 14);
    label.setPreferredSize(new Dimension(look.px(64), look.px(20)));
    choices
        .gap(12)
        .put(Lines.before(look, 8, label, Lines.even(look, 8, minutes.toArray(new Component[0]))));
  }

  private LastChoice withMinutes(int minutes) {
    return new LastChoice(
        choice.protocolId(),
        choice.patient(),
        choice.situation(),
        choice.rescuers(),
        minutes,
        choice.prompting());
  }

  private void choosePatient(PatientGroup patient) {
    Guidance now = guidance();
    AgeWeightView.rhythm(edition(), patient, now)
        .ifPresentOrElse(g -> choose(edition(), g), () -> offer(patient, patient.usualSituation()));
  }

  /** Says that the edition lacks something, and offers one that has it. */
  private void offer(PatientGroup patient, Situation situation) {
    Optional<Protocol> other = PracticeView.other(protocols, patient, situation);
    String edition = Phrases.edition(edition());
    String lacks =
        WORDS.say("missing.text", patient.label(), situation.label())
            + " "
            + other
                .map(p -> WORDS.say("missing.other", Phrases.edition(p)))
                .orElseGet(() -> WORDS.say("missing.none"));
    boolean take =
        sheets.ask(
            WORDS.say("missing", edition),
            lacks,
            WORDS.say("missing.keep", edition),
            other.map(p -> WORDS.say("missing.use", Phrases.edition(p))).orElse(""));
    if (take) {
      choose(other.get(), other.get().find(patient, situation).get());
    } else {
      show();
    }
  }

  private void useToday() {
    anew = false;
    exact = Optional.empty();
    choose(
        advice
            .map(Today::choice)
            .orElseGet(
                () ->
                    new LastChoice(
                        protocols.get(0).id(),
                        PatientGroup.ADULT,
                        Situation.PULSE_NO_BREATHING,
                        FIRST_MINUTES)));
  }

  private static String promptsLabel(PromptsView.Way way) {
    return way.startLevel() > 0
        ? WORDS.say("prompts.fading.level", way.startLevel())
        : WORDS.say("prompts." + way.prompting().word());
  }

  /** Prompts, guideline, name, age and targets; a choice acts at once. */
  private void openOptions() {
    Stack content = new Stack(look);
    Sheets.Sheet[] sheet = new Sheets.Sheet[1];
    fillOptions(content, () -> sheet[0].close());
    sheet[0] = sheets.open(WORDS.say("options"), content, () -> {});
  }

  private void fillOptions(Stack content, Runnable close) {
    content.bold(WORDS.say("prompts"), 16).gap(6);
    List<PromptsView.Way> ways = past.choices(name, guidance());
    List<Chip<PromptsView.Way>> chips =
        Chip.oneOf(look, ways, PracticeScreen::promptsLabel, w -> null, this::choosePrompts);
    PromptsView.Way now = way();
    chips.forEach(chip -> chip.setSelected(chip.value().equals(now)));
    chips.forEach(chip -> chip.setName("prompts-" + promptsLabel(chip.value())));
    content.put(Lines.of(look, 8, chips.toArray(new Component[0]))).gap(6);
    Stack meaning = new Stack(look);
    explainPrompts(meaning);
    chips.forEach(chip -> chip.addActionListener(e -> explainPrompts(meaning)));
    content.put(meaning).gap(12);
    row(content, close, Sign.INFO, "guideline", Phrases.edition(edition()), this::openGuidelines);
    row(content, close, Sign.PERSON, "name", name, this::openName);
    row(content, close, Sign.PERSON, "age", "", this::openAge);
    row(content, close, Sign.CLOCK, "targets", "", this::openTargets);
    row(content, close, Sign.SCREEN, "projector", "", navigator::toggleProjector);
  }

  private void row(
      Stack content, Runnable close, Sign sign, String key, String end, Runnable leads) {
    Fold row =
        Fold.to(
            look,
            sign,
            WORDS.say(key),
            WORDS.say(key + ".line"),
            end,
            () -> {
              close.run();
              leads.run();
            });
    row.setName(key);
    content.put(row);
  }

  private void choosePrompts(PromptsView.Way way) {
    anew = way.anew();
    choose(
        new LastChoice(
            choice.protocolId(),
            choice.patient(),
            choice.situation(),
            choice.rescuers(),
            choice.minutes(),
            way.prompting()));
  }

  private void explainPrompts(Stack meaning) {
    meaning.refill(() -> meaning.softs(past.lines(name, guidance(), way()), 14, 4));
  }

  private void openGuidelines() {
    Stack content = new Stack(look);
    Sheets.Sheet sheet = sheets.open(WORDS.say("guideline"), content, () -> {});
    for (Protocol protocol : protocols) {
      String title = Phrases.edition(protocol);
      Optional<Guidance> same = choice.among(protocol.guidance());
      Fold row =
          Fold.to(
              look,
              protocol.id().equals(edition().id()) ? Sign.TICK : null,
              protocol.supersededBy().isEmpty()
                  ? title
                  : WORDS.say("guideline.superseded", title, protocol.supersededBy()),
              "",
              "",
              () -> {
                sheet.close();
                choose(protocol, same.orElse(protocol.guidance().get(0)));
              });
      row.setName("edition-" + protocol.id());
      content.put(row);
    }
    content
        .gap(12)
        .put(
            PushButton.of(
                look,
                PushButton.Kind.TONAL,
                WORDS.say("library"),
                () -> {
                  sheet.close();
                  navigator.toLibrary();
                }));
    content.revalidate();
  }

  private void openName() {
    Stack content = new Stack(look);
    JTextField field = new JTextField(name);
    Sheets.Sheet sheet = sheets.open(WORDS.say("name"), content, () -> {});
    Runnable take =
        () -> {
          sheet.close();
          name = Settings.nameOf(field.getText());
          navigator.keep(navigator.settings().withTrainee(name));
          advice = Optional.empty();
          readPast();
          show();
        };
    field.setName("trainee");
    field.addActionListener(e -> take.run());
    content
        .field(WORDS.say("name.ask"), field)
        .gap(12)
        .put(PushButton.of(look, PushButton.Kind.FILLED, WORDS.say("name.done"), take));
    content.revalidate();
    field.requestFocusInWindow();
  }

  private void openAge() {
    AgeSheet.open(
        look,
        sheets,
        edition(),
        guidance(),
        (aged, group) -> {
          Optional<Guidance> rhythm = AgeWeightView.rhythm(aged, group, guidance());
          rhythm.ifPresent(g -> choose(edition(), g));
          return AgeWeightView.chosen(aged, group, rhythm);
        });
  }

  private void openTargets() {
    Stack content = new Stack(look);
    Guidance guidance = guidance();
    PlanView.lines(guidance).forEach(line -> content.text(line, 16).gap(6));
    PlanView.missing(edition(), guidance.patient()).ifPresent(l -> content.gap(6).bold(l, 14));
    PlanView.local(edition(), guidance, protocols).forEach(l -> content.gap(6).bold(l, 14));
    for (Citation citation : PlanView.sources(guidance)) {
      content.gap(6).soft(WORDS.say("targets.source", citation.line()), 14);
    }
    sheets.open(WORDS.say("targets"), content, () -> {});
  }

  private void start() {
    Guidance guidance = guidance();
    LastChoice chosen =
        new LastChoice(
            edition().id(),
            guidance.patient(),
            guidance.situation(),
            guidance.rescuers(),
            choice.minutes(),
            choice.prompting());
    navigator.keep(navigator.settings().withTrainee(name).withLastChoice(chosen));
    PromptsView.Way way = way();
    PracticePlan plan =
        PracticePlan.of(edition(), guidance, COUNT_IN, chosen.minutes() * MINUTE, leadNanos)
            .with(way.prompting());
    boolean fades = way.prompting() == Prompting.FADING;
    navigator.toLive(edition(), fades ? plan.withStartLevel(way.startLevel()) : plan);
  }
}
