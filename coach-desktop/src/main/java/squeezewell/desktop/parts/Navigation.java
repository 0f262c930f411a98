package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.GridLayout;
import java.awt.event.KeyEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JPanel;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;

/** The four places of the program: a bar at the foot of a phone, a rail at the side of a tablet. */
public final class Navigation extends JPanel {
  private static final long serialVersionUID = 1L;

  /** Where a person can go from everywhere. */
  public enum Place {
    PRACTICE("Practice", Sign.PRACTICE),
    STATIONS("Stations", Sign.STATIONS),
    HISTORY("History", Sign.HISTORY),
    EQUIPMENT("Equipment", Sign.EQUIPMENT);

    private final String label;
    private final Sign sign;

    Place(String label, Sign sign) {
      this.label = label;
      this.sign = sign;
    }
  }

  private final transient Look look;

  /**
   * The places.
   *
   * @param here where the person is
   * @param rail whether they stand below each other
   */
  public Navigation(Look look, Place here, boolean rail, Consumer<Place> leads) {
    super(rail ? new GridLayout(Place.values().length, 1) : new GridLayout(1, 0));
    this.look = look;
    setBackground(look.palette().card());
    for (Place place : Place.values()) {
      Item item = new Item(place, place == here, rail);
      item.addActionListener(e -> leads.accept(place));
      add(item);
    }
  }

  /** One place. */
  private final class Item extends DrawnButton {
    private static final long serialVersionUID = 1L;

    private final transient Place place;
    private final boolean here;
    private final boolean rail;

    Item(Place place, boolean here, boolean rail) {
      super(Navigation.this.look, place.label);
      this.place = place;
      this.here = here;
      this.rail = rail;
      int number = List.of(Place.values()).indexOf(place) + 1;
      setMnemonic(KeyEvent.VK_0 + number);
      setToolTipText("Alt+" + number);
      getAccessibleContext().setAccessibleDescription(here ? "shown now" : "");
    }

    @Override
    public Dimension getPreferredSize() {
      return new Dimension(look.px(88), look.px(rail ? 84 : 76));
    }

    @Override
    protected void draw(Graphics2D g2, Palette palette) {
      int middle = getWidth() / 2;
      if (here) {
        g2.setColor(palette.mist());
        double width = look.px(64);
        g2.fill(
            new RoundRectangle2D.Double(
                middle - width / 2, look.px(8), width, look.px(34), look.px(24), look.px(24)));
        g2.setColor(palette.deep());
        if (rail) {
          g2.fillRect(0, look.px(8), look.px(4), getHeight() - look.px(16));
        } else {
          g2.fillRect(middle - look.px(32), 0, look.px(64), look.px(4));
        }
      }
      Color colour = here ? palette.onMist() : palette.softText();
      place.sign.paint(g2, middle - look.px(12), look.px(13), look.px(24), colour);
      Font fitted = look.bold(14);
      for (Place other : Place.values()) {
        Font font = Look.fitted(g2, look.bold(14), other.label, getWidth() - look.px(8));
        fitted = font.getSize2D() < fitted.getSize2D() ? font : fitted;
      }
      g2.setFont(here ? fitted : look.font(14).deriveFont(fitted.getSize2D()));
      FontMetrics metrics = g2.getFontMetrics();
      g2.setColor(here ? palette.text() : palette.softText());
      g2.drawString(
          getText(),
          middle - metrics.stringWidth(getText()) / 2,
          look.px(46) + metrics.getAscent());
      if (isFocusOwner()) {
        g2.setColor(palette.text());
        g2.setStroke(look.stroke(3));
        g2.draw(outline(look.px(3), look.px(24)));
      }
    }
  }
}
