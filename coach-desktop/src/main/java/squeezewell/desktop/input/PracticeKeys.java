package squeezewell.desktop.input;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.beans.PropertyChangeListener;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.LongConsumer;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.text.JTextComponent;

/**
 * The keys of a running practice. The space bar and the pedals squeeze whatever has the keyboard
 * focus, in every window and dialog of ours, and press no button there, so that nobody has to look
 * for the focus with a mask in hand. The other keys are left to dialogs and to windows that ask for
 * it. In a text field what types a character is text; Enter and Escape leave the field. Used on the
 * event thread only.
 */
public final class PracticeKeys implements KeyEventDispatcher {
  private static final int SETTLE_MILLIS = 5;
  private static final int COMPRESSION_KEY = KeyEvent.VK_C;
  private static final int FINISH_KEY = KeyEvent.VK_END;
  private static final int LAST_DIGIT = 9;

  /** For so long Finish is held, so that no slip ends a practice (our own choice). */
  public static final long HOLD_TO_FINISH_NANOS = 1_000_000_000L;

  private static final Map<Integer, Action> ACTION_KEYS =
      Map.of(
          KeyEvent.VK_P, Action.PULSE_CHECK,
          KeyEvent.VK_S, Action.SUCTION,
          KeyEvent.VK_ESCAPE, Action.PAUSE,
          KeyEvent.VK_BACK_SPACE, Action.RETRACT_BREATH,
          KeyEvent.VK_F, Action.FINDINGS,
          KeyEvent.VK_Z, Action.UNDO_FINDING,
          KeyEvent.VK_M, Action.MUTE);

  private static final String LEFT_ALONE = "squeezewell.leftAlone";

  private final Map<Integer, HeldKeys> pressHolds = new HashMap<>();
  private final Set<Integer> squeezeKeys;
  private final EventTime time;
  private final Listener listener;
  private final HeldKeys squeeze;
  private final Timer settle = new Timer(SETTLE_MILLIS, e -> settle());
  private final PropertyChangeListener focusLeft = e -> focusChanged(e.getNewValue());

  /** Since when Finish is held. */
  private OptionalLong finishSince = OptionalLong.empty();

  /** Whether what the last press types is dealt with, which a list or a button must not see. */
  private boolean typedIsOurs;

  /** What the keys other than the squeeze keys do. */
  public enum Action {
    PULSE_CHECK,
    SUCTION,
    PAUSE,
    /** Its key or button was held long enough. */
    FINISH,
    RETRACT_BREATH,
    FINDINGS,
    UNDO_FINDING,
    MUTE
  }

  /** Told what a person did, with the reading of {@link System#nanoTime()} at which they did it. */
  public interface Listener {
    void squeezeBegan(long nanoTime);

    void squeezeEnded(long nanoTime);

    /** One compression; told once for each press, however long the key is held. */
    void compressed(long nanoTime);

    void action(Action action, long nanoTime);

    /** Finish was let go too early. */
    void finishWasShort();

    /** A digit from 1 to 9: it chooses among what a screen offers. */
    void digit(int digit, long nanoTime);
  }

  /**
   * The keys of a practice.
   *
   * @param time tells when events happened
   * @param pedalKeys key codes that count as a squeeze besides the space bar
   * @param compressions whether some rhythm that may come has compressions; if not, their key stays
   *     free
   * @param listener told of what happens while {@link #listen} is in force
   */
  public PracticeKeys(
      EventTime time, List<Integer> pedalKeys, boolean compressions, Listener listener) {
    this.time = Objects.requireNonNull(time, "time");
    this.listener = Objects.requireNonNull(listener, "listener");
    squeezeKeys = new HashSet<>(pedalKeys);
    squeezeKeys.add(KeyEvent.VK_SPACE);
    squeeze = new HeldKeys(listener::squeezeBegan, listener::squeezeEnded);
    ACTION_KEYS.forEach((key, action) -> bind(key, at -> listener.action(action, at)));
    bind(FINISH_KEY, new HeldKeys(this::holdFinish, this::letGoFinish));
    if (compressions) {
      bind(COMPRESSION_KEY, listener::compressed);
    }
    for (int digit = 1; digit <= LAST_DIGIT; digit++) {
      int chosen = digit;
      bind(KeyEvent.VK_0 + digit, at -> listener.digit(chosen, at));
      bind(KeyEvent.VK_NUMPAD0 + digit, at -> listener.digit(chosen, at));
    }
    settle.setRepeats(true);
  }

  /** Makes a key do something at each press; what the squeeze has already, it keeps. */
  private void bind(int key, LongConsumer atPress) {
    // What is done at the press has no length.
    bind(key, new HeldKeys(atPress, atEnd -> {}));
  }

  private void bind(int key, HeldKeys held) {
    if (!squeezeKeys.contains(key)) {
      pressHolds.put(key, held);
    }
  }

  /** Finish is pressed, with its key or its button: held on, it ends what runs. */
  public void holdFinish(long nanoTime) {
    finishSince = OptionalLong.of(nanoTime);
    settle.start();
  }

  /** Finish is let go. */
  public void letGoFinish(long nanoTime) {
    if (finishSince.isPresent() && !finishIfHeld(nanoTime)) {
      finishSince = OptionalLong.empty();
      listener.finishWasShort();
    }
  }

  private boolean finishIfHeld(long nanoTime) {
    boolean held =
        finishSince.isPresent() && nanoTime - finishSince.getAsLong() >= HOLD_TO_FINISH_NANOS;
    if (held) {
      long since = finishSince.getAsLong();
      finishSince = OptionalLong.empty();
      listener.action(Action.FINISH, since + HOLD_TO_FINISH_NANOS);
    }
    return held;
  }

  /**
   * The reading of {@link System#nanoTime()} at which an event happened.
   *
   * @param whenMillis the event's stamp
   */
  public long at(long whenMillis) {
    return time.nanoTimeOf(whenMillis);
  }

  /** Whether a key already has a meaning in a practice, so that a pedal can't be bound to it. */
  public static boolean isTaken(int key) {
    boolean digit =
        (key > KeyEvent.VK_0 && key <= KeyEvent.VK_0 + LAST_DIGIT)
            || (key > KeyEvent.VK_NUMPAD0 && key <= KeyEvent.VK_NUMPAD0 + LAST_DIGIT);
    return ACTION_KEYS.containsKey(key)
        || digit
        || key == FINISH_KEY
        || key == COMPRESSION_KEY
        || key == KeyEvent.VK_SPACE
        || key == KeyEvent.VK_TAB
        || key == KeyEvent.VK_ENTER;
  }

  /** Told of a letter that a screen has a use for. */
  public interface LetterListener {
    void letter(char letter, long nanoTime);
  }

  /**
   * Gives letters that have no other meaning a use.
   *
   * @param letters capital letters
   */
  public void alsoLetters(String letters, LetterListener told) {
    for (int i = 0; i < letters.length(); i++) {
      char letter = letters.charAt(i);
      if (!ACTION_KEYS.containsKey((int) letter) && !pressHolds.containsKey((int) letter)) {
        bind(letter, at -> told.letter(letter, at));
      }
    }
  }

  /** Leaves all keys but those that squeeze to a window. */
  public static void leaveOthersAlone(JFrame window) {
    window.getRootPane().putClientProperty(LEFT_ALONE, true);
  }

  private static boolean squeezesOnly(Component source) {
    Window window =
        source == null || source instanceof Window
            ? (Window) source
            : SwingUtilities.windowForComponent(source);
    return window instanceof java.awt.Dialog
        || (window instanceof JFrame frame
            && frame.getRootPane().getClientProperty(LEFT_ALONE) != null);
  }

  /** Starts to listen. */
  public void listen() {
    KeyboardFocusManager manager = KeyboardFocusManager.getCurrentKeyboardFocusManager();
    manager.addKeyEventDispatcher(this);
    manager.addPropertyChangeListener("activeWindow", focusLeft);
  }

  /** Stops listening; a hold that is going on ends. */
  public void ignore() {
    KeyboardFocusManager manager = KeyboardFocusManager.getCurrentKeyboardFocusManager();
    manager.removeKeyEventDispatcher(this);
    manager.removePropertyChangeListener("activeWindow", focusLeft);
    settle.stop();
    squeeze.releaseAll(System.nanoTime());
    Optional.ofNullable(pressHolds.get(FINISH_KEY))
        .filter(HeldKeys::isDown)
        .ifPresent(held -> new HeldOn(FINISH_KEY).swallow());
  }

  /** Carries out an action that a button stands for. */
  public void act(Action action, long nanoTime) {
    listener.action(action, nanoTime);
  }

  /** What to hold, in words. */
  public String squeezeHint() {
    return squeezeKeys.size() > 1 ? "space bar, pedal or touch" : "space bar or touch";
  }

  /** What to press for a compression, in words. */
  public String compressionHint() {
    return squeezeKeys.contains(COMPRESSION_KEY) ? "touch" : "C or touch";
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent e) {
    Component source = e.getComponent();
    if (e.getID() == KeyEvent.KEY_TYPED) {
      return typedIsOurs;
    }
    boolean pressed = e.getID() == KeyEvent.KEY_PRESSED;
    boolean text = source instanceof JTextComponent field && field.isEditable();
    boolean ours =
        text ? inText(e, pressed) : take(e, pressed, squeezesOnly(source) ? squeezes(e) : held(e));
    if (pressed) {
      typedIsOurs = ours;
    }
    return ours;
  }

  /** What types a character is text; a pedal on another key squeezes. */
  private boolean inText(KeyEvent e, boolean pressed) {
    int key = e.getKeyCode();
    boolean leaves = key == KeyEvent.VK_ENTER || key == KeyEvent.VK_ESCAPE;
    if (leaves && pressed) {
      // After what the field itself does at Enter.
      SwingUtilities.invokeLater(e.getComponent()::transferFocus);
      return key == KeyEvent.VK_ESCAPE;
    }
    boolean typing =
        e.getKeyChar() != KeyEvent.CHAR_UNDEFINED && !Character.isISOControl(e.getKeyChar());
    boolean ours = take(e, pressed, pressed && typing ? null : squeezes(e));
    return ours && !typing;
  }

  private HeldKeys squeezes(KeyEvent e) {
    return squeezeKeys.contains(e.getKeyCode()) ? squeeze : null;
  }

  private HeldKeys held(KeyEvent e) {
    HeldKeys squeezes = squeezes(e);
    return squeezes == null ? pressHolds.get(e.getKeyCode()) : squeezes;
  }

  private boolean take(KeyEvent e, boolean pressed, HeldKeys held) {
    int modifiers = KeyEvent.CTRL_DOWN_MASK | KeyEvent.ALT_DOWN_MASK | KeyEvent.META_DOWN_MASK;
    // A pedal may well be a control key, which then stands among its own modifiers.
    boolean combined = held != squeeze && (e.getModifiersEx() & modifiers) != 0;
    if (held == null || (pressed && combined)) {
      return false;
    }
    long at = at(e.getWhen());
    if (pressed) {
      held.pressed(e.getKeyCode(), at);
    } else {
      held.released(e.getKeyCode(), at);
      settle.start();
    }
    return true;
  }

  private void settle() {
    settle(System.nanoTime());
  }

  /** Lets time pass. */
  void settle(long now) {
    OptionalLong pending = squeeze.settle(now);
    boolean more = pending.isPresent();
    finishIfHeld(now);
    more |= finishSince.isPresent();
    for (HeldKeys held : pressHolds.values()) {
      more |= held.settle(now).isPresent();
    }
    if (!more) {
      settle.stop();
    }
  }

  private void focusChanged(Object newWindow) {
    if (newWindow == null) {
      long now = System.nanoTime();
      squeeze.releaseAll(now);
      pressHolds.values().forEach(h -> h.releaseAll(now));
    }
  }
}
