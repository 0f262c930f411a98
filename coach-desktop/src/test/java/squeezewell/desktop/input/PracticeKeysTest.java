package squeezewell.desktop.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.JTree;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What the keys of a practice mean, told to the listener as events would tell them. */
class PracticeKeysTest {
  private static final long SECOND = 1_000_000_000L;
  private static final char UNDEFINED = KeyEvent.CHAR_UNDEFINED;

  private final List<String> told = new ArrayList<>();
  private final JPanel source = new JPanel();
  private final List<Long> compressedAt = new ArrayList<>();
  private final PracticeKeys.Listener listener =
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
        public void compressed(long nanoTime) {
          told.add("compression");
          compressedAt.add(nanoTime);
        }

        @Override
        public void action(PracticeKeys.Action action, long nanoTime) {
          told.add(action.name());
        }

        @Override
        public void finishWasShort() {
          told.add("FINISH_SHORT");
        }

        @Override
        public void digit(int digit, long nanoTime) {
          told.add("digit " + digit);
        }
      };
  private PracticeKeys keys =
      new PracticeKeys(
          new EventTime(), List.of(KeyEvent.VK_CONTROL, KeyEvent.VK_S), false, listener);

  /** One that an event told how the clocks stand. */
  private static EventTime learned() {
    EventTime time = new EventTime();
    time.nanoTimeOf(System.currentTimeMillis());
    return time;
  }

  @AfterEach
  void stop() {
    keys.ignore();
  }

  private boolean press(int key, int modifiers) {
    return send(KeyEvent.KEY_PRESSED, System.currentTimeMillis(), modifiers, key);
  }

  private boolean send(int id, long whenMillis, int modifiers, int key) {
    return keys.dispatchKeyEvent(
        new KeyEvent(source, id, whenMillis, modifiers, key, KeyEvent.CHAR_UNDEFINED));
  }

  @Test
  void aPedalThatIsAControlKeySqueezes() {
    assertThat(press(KeyEvent.VK_CONTROL, InputEvent.CTRL_DOWN_MASK)).isTrue();
    assertThat(told).containsExactly("squeeze");
    keys.ignore();
    assertThat(told).containsExactly("squeeze", "end");
  }

  @Test
  void whatIsTypedIntoAFieldIsTextAndNoKeyOfThePractice() {
    JTextField field = new JTextField();
    assertThat(send(field, KeyEvent.KEY_PRESSED, KeyEvent.VK_SPACE, ' ')).isFalse();
    assertThat(send(field, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, ' ')).isFalse();
    // S is bound as a pedal here.
    for (char key : new char[] {'P', '1', 'S'}) {
      assertThat(send(field, KeyEvent.KEY_PRESSED, key, key)).isFalse();
    }
    assertThat(send(field, KeyEvent.KEY_PRESSED, KeyEvent.VK_END, UNDEFINED)).isFalse();
    assertThat(told).isEmpty();
  }

  @Test
  void aPedalOnAKeyThatTypesNothingSqueezesInAFieldToo() {
    JTextField field = new JTextField();
    assertThat(send(field, KeyEvent.KEY_PRESSED, KeyEvent.VK_CONTROL, UNDEFINED)).isTrue();
    assertThat(send(field, KeyEvent.KEY_RELEASED, KeyEvent.VK_CONTROL, UNDEFINED)).isTrue();
    keys.ignore();
    assertThat(told).containsExactly("squeeze", "end");
  }

  @Test
  void enterAndEscapeLeaveAField() throws Exception {
    for (int key : new int[] {KeyEvent.VK_ENTER, KeyEvent.VK_ESCAPE}) {
      boolean[] left = {false};
      JTextField field =
          new JTextField() {
            private static final long serialVersionUID = 1L;

            @Override
            public void transferFocus() {
              left[0] = true;
            }
          };
      // What the field does at Enter it still does.
      assertThat(send(field, KeyEvent.KEY_PRESSED, key, (char) key))
          .isEqualTo(key == KeyEvent.VK_ESCAPE);
      SwingUtilities.invokeAndWait(() -> {});
      assertThat(left[0]).isTrue();
    }
    assertThat(told).isEmpty();
  }

  @Test
  void spaceSqueezesOnEachKindOfControlAndPressesNone() {
    List<JComponent> controls =
        List.of(
            new JButton(),
            new JCheckBox(),
            new JRadioButton(),
            new JToggleButton(),
            new JComboBox<String>(),
            new JList<String>(),
            new JTable(),
            new JTree(),
            new JSlider(),
            new JTabbedPane(),
            new JScrollPane());
    for (JComponent control : controls) {
      told.clear();
      assertThat(send(control, KeyEvent.KEY_PRESSED, KeyEvent.VK_SPACE, ' ')).isTrue();
      assertThat(send(control, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, ' ')).isTrue();
      assertThat(send(control, KeyEvent.KEY_RELEASED, KeyEvent.VK_SPACE, ' ')).isTrue();
      keys.settle(System.nanoTime() + SECOND);
      assertThat(told).as(control.getClass().getSimpleName()).containsExactly("squeeze", "end");
    }
  }

  @Test
  void whatALetterPedalTypesIsNotSeenByAListThatHasTheFocus() {
    JList<String> list = new JList<>();
    assertThat(send(list, KeyEvent.KEY_PRESSED, KeyEvent.VK_S, 's')).isTrue();
    assertThat(send(list, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, 's')).isTrue();
    assertThat(send(list, KeyEvent.KEY_PRESSED, KeyEvent.VK_X, 'x')).isFalse();
    assertThat(send(list, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, 'x')).isFalse();
  }

  @Test
  void finishIsHeldAndAShortPressSaysSo() {
    keys.holdFinish(0);
    keys.letGoFinish(SECOND - 1);
    assertThat(told).containsExactly("FINISH_SHORT");
    told.clear();
    keys.holdFinish(2 * SECOND);
    keys.settle(3 * SECOND - 1);
    assertThat(told).isEmpty();
    keys.settle(3 * SECOND + 7);
    keys.letGoFinish(4 * SECOND);
    assertThat(told).containsExactly("FINISH");
  }

  @Test
  void aTapOnTheKeyEndFinishesNothing() {
    send(source, KeyEvent.KEY_PRESSED, KeyEvent.VK_END, UNDEFINED);
    send(source, KeyEvent.KEY_RELEASED, KeyEvent.VK_END, UNDEFINED);
    keys.settle(System.nanoTime() + HeldKeys.REPEAT_WITHIN_NANOS * 2);
    assertThat(told).containsExactly("FINISH_SHORT");
  }

  private boolean send(Component to, int kind, int key, char typed) {
    return keys.dispatchKeyEvent(new KeyEvent(to, kind, System.currentTimeMillis(), 0, key, typed));
  }

  @Test
  void furtherLettersAreToldAndTakeNothingFromThePracticeOrItsPedals() {
    assertThat(press(KeyEvent.VK_A, 0)).isFalse();
    keys.alsoLetters("APS", (letter, at) -> told.add("letter " + letter));
    assertThat(press(KeyEvent.VK_A, 0)).isTrue();
    assertThat(press(KeyEvent.VK_P, 0)).isTrue();
    // S is bound as a pedal here.
    assertThat(press(KeyEvent.VK_S, 0)).isTrue();
    assertThat(told).containsExactly("letter A", "PULSE_CHECK", "squeeze");
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
  void findingsHaveAKeyAndADigitEachOnBothKeyboards() {
    press(KeyEvent.VK_F, 0);
    press(KeyEvent.VK_1, 0);
    press(KeyEvent.VK_NUMPAD9, 0);
    press(KeyEvent.VK_Z, 0);
    assertThat(press(KeyEvent.VK_0, 0)).isFalse();
    assertThat(told).containsExactly("FINDINGS", "digit 1", "digit 9", "UNDO_FINDING");
    assertThat(PracticeKeys.isTaken(KeyEvent.VK_5)).isTrue();
    assertThat(PracticeKeys.isTaken(KeyEvent.VK_NUMPAD5)).isTrue();
    assertThat(PracticeKeys.isTaken(KeyEvent.VK_F)).isTrue();
    assertThat(PracticeKeys.isTaken(KeyEvent.VK_NUMPAD0)).isFalse();
  }

  @Test
  void otherKeysAreLeftToTheWindow() {
    assertThat(press(KeyEvent.VK_TAB, 0)).isFalse();
    assertThat(told).isEmpty();
  }

  @Test
  void withoutCompressionsTheKeyIsLeftToTheWindow() {
    assertThat(press(KeyEvent.VK_C, 0)).isFalse();
    assertThat(told).isEmpty();
  }

  @Test
  void eachPressIsOneCompressionHoweverLongItIsHeld() {
    keys = new PracticeKeys(learned(), List.of(), true, listener);
    press(KeyEvent.VK_TAB, 0);
    long from = System.currentTimeMillis() - 110;
    // A held key repeats: as presses alone, or each with a release before it.
    assertThat(send(KeyEvent.KEY_PRESSED, from, 0, KeyEvent.VK_C)).isTrue();
    send(KeyEvent.KEY_PRESSED, from + 20, 0, KeyEvent.VK_C);
    send(KeyEvent.KEY_RELEASED, from + 40, 0, KeyEvent.VK_C);
    send(KeyEvent.KEY_PRESSED, from + 40, 0, KeyEvent.VK_C);
    assertThat(told).containsExactly("compression");
    send(KeyEvent.KEY_RELEASED, from + 50, 0, KeyEvent.VK_C);
    send(KeyEvent.KEY_PRESSED, from + 110, 0, KeyEvent.VK_C);
    assertThat(told).containsExactly("compression", "compression");
  }

  @Test
  void aCompressionBearsTheTimeOfItsPressAndNotOfItsHandling() {
    keys = new PracticeKeys(learned(), List.of(), true, listener);
    press(KeyEvent.VK_TAB, 0);
    long before = System.nanoTime();
    send(KeyEvent.KEY_PRESSED, System.currentTimeMillis() - 200, 0, KeyEvent.VK_C);
    assertThat(compressedAt.get(0)).isBetween(before - 250_000_000L, before - 100_000_000L);
  }

  @Test
  void theBagIsSqueezedWhileTheChestIsCompressed() {
    keys = new PracticeKeys(learned(), List.of(), true, listener);
    press(KeyEvent.VK_SPACE, 0);
    press(KeyEvent.VK_C, 0);
    keys.ignore();
    assertThat(told).containsExactly("squeeze", "compression", "end");
  }

  @Test
  void aKeyThatIsBoundToThePedalIsNoCompressionAndIsNotOfferedAsOne() {
    keys = new PracticeKeys(new EventTime(), List.of(KeyEvent.VK_C), true, listener);
    press(KeyEvent.VK_C, 0);
    assertThat(told).containsExactly("squeeze");
    assertThat(keys.compressionHint()).isEqualTo("touch");
    assertThat(PracticeKeys.isTaken(KeyEvent.VK_C)).isTrue();
  }
}
