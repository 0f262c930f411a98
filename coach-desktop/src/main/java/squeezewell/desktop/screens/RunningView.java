package squeezewell.desktop.screens;

/** A screen of something that runs. Used on the event thread. */
public interface RunningView {
  /** Starts drawing. */
  void open();

  /** Stops drawing. */
  void close();

  /** Finish was let go too early: says for a while how it is done. */
  default void finishWasShort() {}
}
