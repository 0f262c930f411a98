package squeezewell.desktop.screens;

import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.Widgets;

/** The screen of what is done with the keys of a practice, which listen while it is shown. */
public abstract class KeyedScreen extends RunScreen {
  private static final long serialVersionUID = 1L;
  private static final long TELL_NANOS = 3_000_000_000L;

  private long finishShortAt = System.nanoTime() - TELL_NANOS;
  final transient PracticeKeys keys;

  KeyedScreen(Widgets kit, PracticeKeys keys, SoundLine sound, int top, int bottom) {
    super(kit, sound, top, bottom);
    this.keys = keys;
  }

  @Override
  public final void open() {
    keys.listen();
    super.open();
  }

  @Override
  public final void close() {
    super.close();
    keys.ignore();
  }

  /** A button that does what a key does. */
  final ActionButton action(String text, String key, PracticeKeys.Action action) {
    ActionButton button = new ActionButton(look, text, key);
    button.addActionListener(e -> keys.act(action, keys.at(e.getWhen())));
    return button;
  }

  /** The button that ends what runs when it is held. */
  final ActionButton finishButton() {
    ActionButton button = new ActionButton(look, "Finish", "hold End");
    button.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent e) {
            keys.holdFinish(keys.at(e.getWhen()));
          }

          @Override
          public void mouseReleased(MouseEvent e) {
            keys.letGoFinish(keys.at(e.getWhen()));
          }
        });
    return button;
  }

  @Override
  public final void finishWasShort() {
    finishShortAt = System.nanoTime();
  }

  /** Ends a frame with what is to be told. */
  final void tellOrHint(String text) {
    boolean hint = System.nanoTime() - finishShortAt < TELL_NANOS;
    tell(hint ? "Hold to finish" : text);
  }
}
