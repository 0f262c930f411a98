package squeezewell.desktop.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What the keys of a practice mean, told to the listener as events would tell them. */
class PracticeKeysTest {
  private final List<String> told = new ArrayList<>();
  private final JPanel source = new JPanel();
  private final PracticeKeys keys =
      new PracticeKeys(
          List.of(KeyEvent.VK_CONTROL, KeyEvent.VK_S),
          new PracticeKeys.Listener() {
            @Override
            public void squeezeBegan(long nanoTime) {
              told.add("squeeze");
            }

            @Override
            public void squeezeEnded(long nanoTime) {
              told.add("end");
            }

            @Override
            public void action(PracticeKeys.Action action, long nanoTime) {
              told.add(action.name());
            }
          });

  @AfterEach
  void stop() {
    keys.ignore();
  }

  private boolean press(int key, int modifiers) {
    return keys.dispatchKeyEvent(
        new KeyEvent(
            source,
            KeyEvent.KEY_PRESSED,
            System.currentTimeMillis(),
            modifiers,
            key,
            KeyEvent.CHAR_UNDEFINED));
  }

  @Test
  void aPedalThatIsAControlKeySqueezes() {
    assertThat(press(KeyEvent.VK_CONTROL, InputEvent.CTRL_DOWN_MASK)).isTrue();
    assertThat(told).containsExactly("squeeze");
    keys.ignore();
    assertThat(told).containsExactly("squeeze", "end");
  }

  @Test
  void anActionNeedsItsKeyAloneAndOnceAHold() {
    assertThat(press(KeyEvent.VK_P, InputEvent.ALT_DOWN_MASK)).isFalse();
    assertThat(press(KeyEvent.VK_P, 0)).isTrue();
    assertThat(press(KeyEvent.VK_P, 0)).isTrue();
    assertThat(told).containsExactly("PULSE_CHECK");
  }

  @Test
  void aKeyThatIsBoundToThePedalIsNoActionAnyMore() {
    press(KeyEvent.VK_S, 0);
    assertThat(told).containsExactly("squeeze");
  }

  @Test
  void otherKeysAreLeftToTheWindow() {
    assertThat(press(KeyEvent.VK_TAB, 0)).isFalse();
    assertThat(told).isEmpty();
  }
}
