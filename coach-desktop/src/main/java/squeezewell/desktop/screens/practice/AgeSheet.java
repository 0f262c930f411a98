package squeezewell.desktop.screens.practice;

import java.awt.Component;
import java.util.List;
import java.util.function.BiFunction;
import javax.swing.JTextField;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Chip;
import squeezewell.desktop.parts.Lines;
import squeezewell.desktop.parts.PushButton;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.parts.Stack;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.words.Wording;

/** The sheet that finds the patient by an age or a weight. */
final class AgeSheet {
  private static final Wording WORDS = PracticeView.WORDS;

  private final Look look;
  private final Protocol edition;
  private final BiFunction<Protocol, PatientGroup, String> choose;
  private final JTextField number = new JTextField();
  private final Stack answer;
  private AgeWeightView.Unit unit = AgeWeightView.Unit.YEARS;

  private AgeSheet(Look look, Protocol edition, BiFunction<Protocol, PatientGroup, String> choose) {
    this.look = look;
    this.edition = edition;
    this.choose = choose;
    this.answer = new Stack(look);
  }

  /**
   * Opens it.
   *
   * @param edition the edition whose limits count
   * @param choose takes a group of an edition as the patient and says in a sentence what was chosen
   */
  static void open(
      Look look,
      Sheets sheets,
      Protocol edition,
      Guidance now,
      BiFunction<Protocol, PatientGroup, String> choose) {
    new AgeSheet(look, edition, choose).open(sheets);
  }

  private void open(Sheets sheets) {
    number.setName("age-or-weight");
    number.addActionListener(e -> find());
    List<Chip<AgeWeightView.Unit>> units =
        Chip.oneOf(
            look,
            List.of(AgeWeightView.Unit.values()),
            AgeWeightView.Unit::toString,
            u -> null,
            u -> unit = u);
    units.get(0).setSelected(true);
    Stack content =
        new Stack(look)
            .field(WORDS.say("age.number"), number)
            .gap(8)
            .put(Lines.of(look, 8, units.toArray(new Component[0])))
            .gap(12)
            .put(PushButton.of(look, PushButton.Kind.FILLED, WORDS.say("age.find"), this::find))
            .put(answer);
    sheets.open(WORDS.say("age"), content, () -> {});
    number.requestFocusInWindow();
  }

  private void find() {
    AgeWeightView found = AgeWeightView.of(edition, number.getText(), unit);
    number.getAccessibleContext().setAccessibleDescription(found.text());
    List<PatientGroup> possible = found.possible();
    answer.refill(
        () -> {
          answer.gap(8).text(found.text(), 16);
          if (possible.size() == 1) {
            answer.gap(8).bold(choose.apply(found.edition(), possible.get(0)), 16);
          } else if (!possible.isEmpty()) {
            Component[] buttons =
                possible.stream().map(g -> button(found, g)).toArray(Component[]::new);
            answer.gap(8).put(Lines.even(look, 8, buttons));
          }
        });
  }

  private PushButton button(AgeWeightView found, PatientGroup group) {
    PushButton button =
        PushButton.of(
            look,
            PushButton.Kind.OUTLINED,
            group.label(),
            () -> {
              answer.refill(
                  () ->
                      answer
                          .gap(8)
                          .text(found.text(), 16)
                          .gap(8)
                          .bold(choose.apply(found.edition(), group), 16));
              number.requestFocusInWindow();
            });
    button.setName("take-" + group.id());
    return button;
  }
}
