package squeezewell.desktop.parts;

import java.awt.Component;
import java.awt.Container;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;

/** Puts parts below each other, each as wide as what holds them. */
public final class Rows {
  private final Container holder;
  private int next;

  /**
   * @param holder what holds the rows; gets its layout here
   */
  public Rows(Container holder) {
    this.holder = holder;
    holder.setLayout(new GridBagLayout());
  }

  /**
   * Adds a row.
   *
   * @param share of the height that is left over, against the shares of the others; 0 for none
   * @param below room below it, in device pixels
   */
  public Rows add(Component part, double share, int below) {
    GridBagConstraints place = new GridBagConstraints();
    place.gridy = next++;
    place.weightx = 1;
    place.weighty = share;
    place.fill = GridBagConstraints.BOTH;
    place.insets = new Insets(0, 0, below, 0);
    holder.add(part, place);
    return this;
  }

  /** Gives a row another share of the height that is left over. */
  public void share(Component part, double share) {
    GridBagLayout layout = (GridBagLayout) holder.getLayout();
    GridBagConstraints place = layout.getConstraints(part);
    place.weighty = share;
    layout.setConstraints(part, place);
  }
}
