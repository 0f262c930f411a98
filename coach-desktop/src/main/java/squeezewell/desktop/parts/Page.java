package squeezewell.desktop.parts;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.GridLayout;
import java.awt.KeyboardFocusManager;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Sign;

/**
 * A screen: a bar with its title, what scrolls below it, and perhaps a bar of buttons at the foot.
 * From 840 density-independent pixels on two stacks stand beside each other, each scrolling by
 * itself; below that the second follows the first. Text never scrolls sideways.
 */
public final class Page extends JPanel {
  private static final long serialVersionUID = 1L;

  /** From this width on there are two panes, in density-independent pixels. */
  public static final int TWO_PANES = 840;

  /** The widest line of text in one pane, in density-independent pixels. */
  private static final int WIDEST = 560;

  private final transient Look look;
  private final Stack first;
  private final Stack second;
  private final JPanel middle = new JPanel(new BorderLayout());
  private final Stack foot;
  private final transient List<Component> whenWide = new ArrayList<>();
  private final transient List<Component> whenNarrow = new ArrayList<>();
  private boolean wide;
  private transient Component starter = this;
  private boolean laid;
  private int arrangedFor;

  /**
   * A page.
   *
   * @param first what is looked at first
   * @param second beside or below it; may be empty
   * @param foot what always stays in view at the foot; empty for nothing
   */
  public Page(Look look, JComponent bar, Stack first, Stack second, Stack foot) {
    super(new BorderLayout());
    this.look = look;
    this.first = first;
    this.second = second;
    this.foot = foot;
    setBackground(look.palette().ground());
    middle.setOpaque(false);
    add(bar, BorderLayout.NORTH);
    add(middle, BorderLayout.CENTER);
  }

  /** Shows a part only in two panes, and another only in one. */
  public Page either(Component inTwo, Component inOne) {
    whenWide.add(inTwo);
    whenNarrow.add(inOne);
    return this;
  }

  /** Gives a part the keyboard when the page comes up. */
  public Page startOn(Component part) {
    starter = part;
    return this;
  }

  /** A bar with a title, a way back if there is one, and something at its end. */
  public static JComponent bar(Look look, String title, Runnable back, Component... ends) {
    JPanel bar = new JPanel(new BorderLayout(look.px(8), 0));
    bar.setOpaque(false);
    int side = look.px(back == null ? 16 : 4);
    bar.setBorder(BorderFactory.createEmptyBorder(look.px(6), side, look.px(6), look.px(8)));
    if (back != null) {
      bar.add(PushButton.sign(look, Sign.BACK, "Back", back), BorderLayout.WEST);
      for (KeyStroke key :
          new KeyStroke[] {
            KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
            KeyStroke.getKeyStroke(KeyEvent.VK_LEFT, InputEvent.ALT_DOWN_MASK)
          }) {
        bar.registerKeyboardAction(e -> back.run(), key, JComponent.WHEN_IN_FOCUSED_WINDOW);
      }
    }
    JLabel name = Texts.title(title, look.bold(back == null ? 28 : 20), look.palette().text());
    bar.add(name, BorderLayout.CENTER);
    bar.add(Lines.of(look, 4, ends), BorderLayout.EAST);
    return bar;
  }

  @Override
  public void doLayout() {
    if (arrangedFor != getWidth()) {
      arrangedFor = getWidth();
      arrange();
    }
    super.doLayout();
  }

  private boolean hasSecond() {
    return second.getComponentCount() > 0;
  }

  private void arrange() {
    boolean nowWide = getWidth() >= look.px(TWO_PANES) && hasSecond();
    int margin = look.px(getWidth() >= look.px(TWO_PANES) ? 24 : 16);
    int side = nowWide ? margin : Math.max(margin, (getWidth() - look.px(WIDEST)) / 2);
    if (!laid || wide != nowWide) {
      Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
      boolean inside = owner != null && SwingUtilities.isDescendingFrom(owner, middle);
      Component next = inside ? owner : starter;
      SwingUtilities.invokeLater(() -> next.requestFocusInWindow(FocusEvent.Cause.ACTIVATION));
      wide = nowWide;
      laid = true;
      whenWide.forEach(part -> part.setVisible(wide));
      whenNarrow.forEach(part -> part.setVisible(!wide));
      middle.removeAll();
      if (wide) {
        JPanel panes = new JPanel(new GridLayout(1, 2));
        panes.setOpaque(false);
        JPanel left = new JPanel(new BorderLayout());
        left.setOpaque(false);
        left.add(scrolling(first), BorderLayout.CENTER);
        left.add(foot, BorderLayout.SOUTH);
        panes.add(left);
        panes.add(scrolling(second));
        middle.add(panes, BorderLayout.CENTER);
      } else {
        middle.add(scrolling(new Stack(look).put(first).put(second)), BorderLayout.CENTER);
        middle.add(foot, BorderLayout.SOUTH);
      }
    }
    for (Stack stack : new Stack[] {first, second}) {
      stack.setBorder(BorderFactory.createEmptyBorder(look.px(4), side, look.px(12), side));
    }
    middle.invalidate();
    repaint();
  }

  private JScrollPane scrolling(Stack stack) {
    JScrollPane pane =
        new JScrollPane(stack) {
          private static final long serialVersionUID = 1L;

          /** Whether a bar is needed hangs on the height, which hangs on the width without it. */
          @Override
          public void doLayout() {
            int before = getViewport().getWidth();
            super.doLayout();
            if (before != getViewport().getWidth()) {
              stack.invalidate();
              super.doLayout();
            }
          }
        };
    pane.setBorder(BorderFactory.createEmptyBorder());
    pane.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    pane.setOpaque(false);
    pane.getViewport().setOpaque(false);
    return pane;
  }

  @Override
  protected void paintComponent(Graphics g) {
    super.paintComponent(g);
    g.setColor(look.palette().ground());
    g.fillRect(0, 0, getWidth(), getHeight());
  }
}
