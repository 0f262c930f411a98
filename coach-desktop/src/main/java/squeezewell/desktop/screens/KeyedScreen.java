package squeezewell.desktop.screens;

import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.Widgets;

/** The screen of what is done with the keys of a practice, which listen while it is shown. */
public abstract class KeyedScreen extends RunScreen {
  private static final long serialVersionUID = 1L;

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
}
