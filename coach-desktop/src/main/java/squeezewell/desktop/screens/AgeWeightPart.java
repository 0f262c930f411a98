package squeezewell.desktop.screens;

import java.awt.Rectangle;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;

/** The part of the set-up screen that finds the patient by an age or a weight. It folds. */
final class AgeWeightPart {
  private static final int INNER_WIDTH = Widgets.CONTENT_WIDTH - 28;
  private static final int GAP = 8;

  private final Widgets kit;
  private final Supplier<Protocol> edition;
  private final BiFunction<Protocol, PatientGroup, String> choose;
  private final Column fold;
  private final Column answer;
  private final JTextField number = new JTextField();
  private final JComboBox<AgeWeightView.Unit> unit = Widgets.choices(AgeWeightView.Unit.values());
  private final JButton toggle;

  /**
   * Makes the part, folded.
   *
   * @param edition the edition whose limits count
   * @param choose takes a group of an edition as the patient and says in a sentence what was chosen
   */
  AgeWeightPart(
      Widgets kit,
      int toggleWidth,
      Supplier<Protocol> edition,
      BiFunction<Protocol, PatientGroup, String> choose) {
    this.kit = kit;
    this.edition = edition;
    this.choose = choose;
    this.answer = kit.column();
    this.fold = kit.column();
    this.toggle = kit.button("By age", 'A', toggleWidth, () -> setOpen(!fold.isVisible()));
    toggle.setName("by-age");
    toggle.setToolTipText("Choose the patient by age or weight");
    fill();
    setOpen(false);
  }

  /** The button that folds and unfolds the part. */
  JButton toggle() {
    return toggle;
  }

  /** What unfolds. */
  JComponent fold() {
    return fold;
  }

  /** Judges again, by another edition, what was judged before. */
  void again() {
    if (fold.isVisible() && answer.getComponentCount() > 0) {
      find();
    }
  }

  private void setOpen(boolean open) {
    fold.setVisible(open);
    toggle.setText(open ? "Hide" : "By age");
    toggle
        .getAccessibleContext()
        .setAccessibleName(
            open ? "Hide the choice by age or weight" : "Choose the patient by age or weight");
    if (open) {
      number.requestFocusInWindow();
    }
    fold.revalidate();
  }

  private void fill() {
    Column card = kit.card();
    int half = (INNER_WIDTH - GAP) / 2;
    unit.getAccessibleContext().setAccessibleName("Unit of the age or weight");
    kit.control(number, half);
    JPanel row = kit.row(GAP, number, kit.control(unit, half));
    card.put(kit.labelled("Age or weight", 'E', number, row), 8);
    number.setName("age-or-weight");
    number.addActionListener(e -> find());
    card.put(kit.button("Find the patient", 'F', INNER_WIDTH, this::find)).put(answer);
    fold.put(card, 10);
  }

  private void find() {
    AgeWeightView found =
        AgeWeightView.of(
            edition.get(), number.getText(), (AgeWeightView.Unit) unit.getSelectedItem());
    answer.removeAll();
    say(found.text());
    number.getAccessibleContext().setAccessibleDescription(found.text());
    if (found.possible().size() == 1) {
      say(choose.apply(found.edition(), found.possible().get(0)));
    } else if (!found.possible().isEmpty()) {
      offer(found);
    }
    show();
  }

  private void show() {
    answer.revalidate();
    answer.repaint();
    // Its size is only known once it has been laid out.
    SwingUtilities.invokeLater(
        () -> answer.scrollRectToVisible(new Rectangle(answer.getWidth(), answer.getHeight())));
  }

  private void offer(AgeWeightView found) {
    int count = found.possible().size();
    int width = (INNER_WIDTH - GAP * (count - 1)) / count;
    JButton[] buttons =
        found.possible().stream().map(group -> button(found, group, width)).toArray(JButton[]::new);
    answer.gap(8).put(kit.row(GAP, buttons));
  }

  private JButton button(AgeWeightView found, PatientGroup group, int width) {
    JButton button = kit.button(group.label(), '\0', width, () -> take(found, group));
    button.setName("take-" + group.id());
    return button;
  }

  private void take(AgeWeightView found, PatientGroup group) {
    answer.removeAll();
    say(found.text());
    say(choose.apply(found.edition(), group));
    number.requestFocusInWindow();
    show();
  }

  private void say(String sentences) {
    answer.gap(8).plain(sentences, 14);
  }
}
