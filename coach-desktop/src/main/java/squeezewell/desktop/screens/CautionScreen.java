package squeezewell.desktop.screens;

import java.util.List;
import javax.swing.JButton;
import javax.swing.JScrollPane;
import squeezewell.desktop.parts.Column;
import squeezewell.desktop.parts.Widgets;

/** The cautions, shown before the first practice and on request. */
public final class CautionScreen {
  private static final List<String> CAUTIONS =
      List.of(
          "This is a training aid for practice on a manikin. It is not a medical device and must"
              + " not be used on, near or for a patient.",
          "Do not use it in an emergency. If someone is not breathing, call for help and start"
              + " resuscitation as you were taught.",
          "Follow your local protocols, your course and your medical direction. Where they differ"
              + " from what you see here, they are right.",
          "Guidelines change. Each screen and report names the edition that it follows.",
          "A steady rhythm does not prove that a breath went in. Watch the chest rise, and let it"
              + " fall.",
          "Practise without oxygen where you can. Clean masks, valves and manikin parts between"
              + " learners.");

  private CautionScreen() {}

  /**
   * Builds the screen.
   *
   * @param kit makes the parts
   * @param buttonText what the button says
   * @param onRead told when the person has read it
   */
  public static JScrollPane build(Widgets kit, String buttonText, Runnable onRead) {
    Column column = kit.column();
    column.put(kit.softLabel("Squeezewell", 15), 8);
    column.heading("Before you practise", 16);
    CAUTIONS.forEach(caution -> column.put(kit.card().plain(caution, 15), 8));
    column.gap(8);
    JButton button = kit.mainButton(buttonText, 'U', Widgets.CONTENT_WIDTH, onRead);
    column.put(button);
    return kit.page(column, button);
  }
}
