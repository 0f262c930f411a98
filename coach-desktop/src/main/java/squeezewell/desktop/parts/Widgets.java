package squeezewell.desktop.parts;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Rectangle;
import java.awt.event.ActionListener;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.ButtonGroup;
import javax.swing.InputMap;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import javax.swing.text.JTextComponent;
import squeezewell.desktop.look.Look;

/** Makes the small parts that all screens share. */
public final class Widgets {
  /** Width of a screen's content, in density-independent pixels. */
  public static final int CONTENT_WIDTH = 372;

  /** Width of a scroll bar, in density-independent pixels. */
  public static final int SCROLL_BAR = 10;

  /** Space at the sides of a screen, in density-independent pixels. */
  public static final int MARGIN = 20;

  /** What a box to choose from needs beside its text, in density-independent pixels. */
  private static final int WRAPPING_MARGIN = 48;

  private final Look look;

  public Widgets(Look look) {
    this.look = look;
  }

  public Look look() {
    return look;
  }

  /** One line of text. */
  public JLabel label(String text, Font font, Color colour) {
    return Texts.label(text, font, colour);
  }

  /** One line of text of a size. */
  public JLabel plainLabel(String text, int size) {
    return Texts.label(text, look.font(size), look.palette().text());
  }

  /** One line of bold text of a size. */
  public JLabel boldLabel(String text, int size) {
    return Texts.label(text, look.bold(size), look.palette().text());
  }

  /** One line of secondary text of a size. */
  public JLabel softLabel(String text, int size) {
    return Texts.label(text, look.font(size), look.palette().softText());
  }

  /** Writes a text on a label if it is another one: writing lays the screen out anew. */
  public static void show(JLabel label, String text) {
    if (!text.equals(label.getText())) {
      label.setText(text);
    }
  }

  /** Text that wraps at a width in device pixels. */
  public JTextArea text(String text, Font font, Color colour, int width) {
    return Texts.text(text, font, colour, width);
  }

  /** Gives a part a size in device pixels that no layout changes. */
  public static void fix(JComponent part, Dimension size) {
    Texts.fix(part, size);
  }

  /** Gives a part a size in density-independent pixels that no layout changes. */
  public <T extends JComponent> T fixed(T part, int width, int height) {
    Texts.fix(part, new Dimension(look.px(width), look.px(height)));
    return part;
  }

  /** Gives a part a width in density-independent pixels, and the height it wants, for good. */
  public <T extends JComponent> T wide(T part, int width) {
    Texts.fix(part, new Dimension(look.px(width), part.getPreferredSize().height));
    return part;
  }

  /** Body text over the whole width. */
  public JTextArea body(String text) {
    return text(text, look.font(15), look.palette().text(), look.px(CONTENT_WIDTH));
  }

  /** Secondary text over the whole width. */
  public JTextArea note(String text) {
    return text(text, look.font(13), look.palette().softText(), look.px(CONTENT_WIDTH));
  }

  /**
   * A button at least 48 density-independent pixels high.
   *
   * @param mnemonic the key that presses it together with Alt; 0 for none
   * @param width in density-independent pixels
   */
  public JButton button(String text, char mnemonic, int width, Runnable action) {
    JButton button = new JButton(text);
    button.setMnemonic(mnemonic);
    return sized(button, width, e -> action.run());
  }

  /** The button that leads back. */
  public JButton back(Runnable action) {
    return button("Back", 'B', 110, action);
  }

  /** The button for the main thing to do on a screen. */
  public JButton mainButton(String text, char mnemonic, int width, Runnable action) {
    JButton button = button(text, mnemonic, width, action);
    button.setBackground(look.palette().deep());
    button.setForeground(look.palette().onDeep());
    // On its own colour the usual ring can't be seen.
    String ring = Look.hex(look.palette().text());
    button.putClientProperty(
        "FlatLaf.style", "focusedBorderColor: " + ring + "; focusColor: " + ring);
    return button;
  }

  /** A control with its name above it and room below it, to be put on a screen. */
  public Column named(String name, char mnemonic, JComponent control) {
    return named(name, mnemonic, control, control);
  }

  /** A control as wide as the content with its name above it. */
  public Column labelled(String name, char mnemonic, JComponent control) {
    return labelled(name, mnemonic, control, wide(control));
  }

  /**
   * The same for a control with more beside it.
   *
   * @param shown what stands below the name, with the control in it
   */
  public Column named(String name, char mnemonic, JComponent control, Component shown) {
    return labelled(name, mnemonic, control, shown).gap(10);
  }

  /** The same without room below it. */
  public Column labelled(String name, char mnemonic, JComponent control, Component shown) {
    JLabel label = softLabel(name, 13);
    label.setLabelFor(control);
    label.setDisplayedMnemonic(mnemonic);
    return column().put(label, 4).put(shown);
  }

  private JButton sized(JButton button, int width, ActionListener action) {
    button.putClientProperty("html.disable", true);
    button.setFont(look.bold(15));
    button.setAlignmentX(Component.LEFT_ALIGNMENT);
    PageFit.fits(button);
    button.addActionListener(action);
    return comesIntoView(fixed(button, width, 52));
  }

  /**
   * A box to choose from. A choice that begins like HTML is shown as it is: Swing would otherwise
   * draw it as a page, and fetch the pictures that it names.
   */
  public static <T> JComboBox<T> choices() {
    JComboBox<T> box = new JComboBox<>();
    ListCellRenderer<? super T> usual = box.getRenderer();
    box.setRenderer(
        (list, value, index, selected, focused) -> {
          Component cell = usual.getListCellRendererComponent(list, null, index, selected, focused);
          if (cell instanceof JLabel label) {
            label.putClientProperty("html.disable", true);
            label.setText(String.valueOf(value));
          }
          return cell;
        });
    return box;
  }

  /** A box to choose one of some things from. */
  @SafeVarargs
  public static <T> JComboBox<T> choices(T... items) {
    JComboBox<T> box = choices();
    for (T item : items) {
      box.addItem(item);
    }
    return box;
  }

  /** A box to tick, its width in density-independent pixels. */
  public JCheckBox tick(String text, Font font, int width) {
    JCheckBox box = new JCheckBox(text);
    box.putClientProperty("html.disable", true);
    box.setOpaque(false);
    box.setFont(font);
    box.setAlignmentX(Component.LEFT_ALIGNMENT);
    return fixed(box, width, 48);
  }

  /**
   * A box to choose from whose choices wrap instead of being cut. The box grows by the lines of
   * what is chosen.
   *
   * @param width in density-independent pixels
   */
  public <T> JComboBox<T> wrappingChoices(int width) {
    JComboBox<T> box = choices();
    control(box, width);
    ListCellRenderer<? super T> usual = box.getRenderer();
    PageFit.whenFitted(box, () -> grow(box));
    box.setRenderer(
        (list, value, index, selected, focused) -> {
          Component cell =
              usual.getListCellRendererComponent(list, value, index, selected, focused);
          JTextArea area =
              text(String.valueOf(value), cell.getFont(), cell.getForeground(), textWidth(box));
          JPanel middle = new JPanel(new GridBagLayout());
          middle.setBackground(cell.getBackground());
          middle.setOpaque(index >= 0);
          int pad = look.px(index >= 0 ? 6 : 0);
          middle.setBorder(BorderFactory.createEmptyBorder(pad, pad, pad, pad));
          GridBagConstraints place = new GridBagConstraints();
          place.weightx = 1;
          place.anchor = GridBagConstraints.LINE_START;
          middle.add(area, place);
          middle.getAccessibleContext().setAccessibleName(area.getText());
          return middle;
        });
    box.addItemListener(e -> grow(box));
    box.addPropertyChangeListener("model", e -> grow(box));
    return box;
  }

  private int textWidth(JComboBox<?> box) {
    return box.getPreferredSize().width - look.px(WRAPPING_MARGIN);
  }

  private void grow(JComboBox<?> box) {
    String chosen = String.valueOf(box.getSelectedItem());
    int lines =
        text(chosen, look.font(15), look.palette().text(), textWidth(box))
            .getPreferredSize()
            .height;
    int width = box.getPreferredSize().width;
    Texts.fix(box, new Dimension(width, Math.max(look.px(48), lines + look.px(14))));
    box.revalidate();
  }

  /** Makes a control as wide as the content and 48 density-independent pixels high. */
  public <T extends JComponent> T wide(T control) {
    return control(control, CONTENT_WIDTH);
  }

  /** Makes a control so wide and 48 density-independent pixels high. */
  public <T extends JComponent> T control(T control, int width) {
    PageFit.fits(control);
    control.setAlignmentX(Component.LEFT_ALIGNMENT);
    control.setFont(look.font(15));
    return comesIntoView(fixed(control, width, 48));
  }

  /** Scrolls a control into view when the keyboard reaches it. */
  public <T extends JComponent> T comesIntoView(T control) {
    control.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusGained(FocusEvent e) {
            // A screen that has just appeared is shown from its top.
            if (e.getCause() != FocusEvent.Cause.ACTIVATION) {
              // A text field would only scroll its own text. Below it stands what is allowed.
              Rectangle place = control.getBounds();
              place.height += look.px(control instanceof JTextComponent ? 44 : 0);
              ((JComponent) control.getParent()).scrollRectToVisible(place);
            }
          }
        });
    return control;
  }

  /** Does something each time the keyboard has left a control. */
  public static void onFocusLost(JComponent control, Runnable act) {
    control.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusLost(FocusEvent e) {
            act.run();
          }
        });
  }

  /** Does something at each change of what is typed in a field. */
  public static void onTyped(JTextField field, Runnable act) {
    field
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent e) {
                act.run();
              }

              @Override
              public void removeUpdate(DocumentEvent e) {
                act.run();
              }

              @Override
              public void changedUpdate(DocumentEvent e) {
                // Only attributes changed; a plain field has none.
              }
            });
  }

  /** Makes Escape and Alt with the left arrow lead back from a screen. */
  public <T extends JComponent> T withBackKeys(T screen, Runnable back) {
    for (KeyStroke key :
        new KeyStroke[] {
          KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
          KeyStroke.getKeyStroke(KeyEvent.VK_LEFT, InputEvent.ALT_DOWN_MASK)
        }) {
      screen.registerKeyboardAction(e -> back.run(), key, JComponent.WHEN_IN_FOCUSED_WINDOW);
    }
    return screen;
  }

  /** A column of parts. */
  public Column column() {
    return column(look.px(CONTENT_WIDTH));
  }

  /** A column whose texts wrap at a width in device pixels. */
  public Column column(int textWidth) {
    return new Column(look, textWidth);
  }

  /** A row of parts; in several lines on a page in a window too narrow for them. */
  public JPanel row() {
    JPanel row = PageFit.row(look);
    row.setOpaque(false);
    row.setAlignmentX(Component.LEFT_ALIGNMENT);
    return row;
  }

  /** A row of parts with room between them, in density-independent pixels. */
  public JPanel row(int between, Component... parts) {
    JPanel row = row();
    for (Component part : parts) {
      if (row.getComponentCount() > 0) {
        row.add(Box.createHorizontalStrut(look.px(between)));
      }
      row.add(part);
    }
    return row;
  }

  /** A row of buttons of which one is chosen. */
  public JPanel oneOf(int between, List<? extends JToggleButton> buttons) {
    ButtonGroup group = new ButtonGroup();
    buttons.forEach(button -> group.add(comesIntoView(button)));
    JPanel row = row(between, buttons.toArray(new Component[0]));
    row.setMaximumSize(row.getPreferredSize());
    return row;
  }

  /** A column on a card with rounded corners. */
  public Column card() {
    Column card =
        new Column(look, cardTextWidth()) {
          private static final long serialVersionUID = 1L;

          @Override
          protected void paintComponent(Graphics g) {
            Graphics2D g2 = Look.smooth(g);
            double arc = look.px(24);
            RoundRectangle2D shape =
                new RoundRectangle2D.Double(1, 1, getWidth() - 2, getHeight() - 2, arc, arc);
            g2.setColor(look.palette().card());
            g2.fill(shape);
            g2.setColor(look.palette().line());
            g2.setStroke(look.stroke(1.5));
            g2.draw(shape);
            g2.dispose();
          }
        };
    PageFit.card(card);
    int pad = look.px(14);
    card.setBorder(BorderFactory.createEmptyBorder(pad, pad, pad, pad));
    return card;
  }

  /** Width of the text on a card over the whole content, in device pixels. */
  public int cardTextWidth() {
    return look.px(CONTENT_WIDTH - 28);
  }

  /** A page that appears with the keyboard on one of its controls; Escape leads back. */
  public JScrollPane page(JPanel content, JComponent first, Runnable back) {
    return withBackKeys(page(content, first), back);
  }

  /** A page that appears with the keyboard on one of its controls. */
  public JScrollPane page(JPanel content, JComponent first) {
    JScrollPane page = page(content);
    page.addAncestorListener(Focus.on(first, page));
    return page;
  }

  /** A page that is read from its top, where the arrow keys scroll it; Escape leads back. */
  public JScrollPane readPage(JPanel content, Runnable back) {
    JScrollPane page = page(content);
    page.addAncestorListener(Focus.onTop(page));
    return withBackKeys(page, back);
  }

  /**
   * A screen that scrolls up and down, its content centred at a fixed width. In a narrower window
   * text and controls become narrower; what can't, such as a picture, scrolls sideways. Home and
   * End lead to its ends wherever they mean nothing else.
   */
  public JScrollPane page(JPanel content) {
    int margin = look.px(MARGIN);
    int bar = look.px(SCROLL_BAR);
    content.setBorder(BorderFactory.createEmptyBorder(margin, margin, margin, margin - bar));
    JPanel centred = new JPanel();
    centred.setLayout(new BoxLayout(centred, BoxLayout.X_AXIS));
    centred.setBackground(look.palette().ground());
    // In a window that is higher than the page nothing is drawn out in height.
    JPanel above = new JPanel(new BorderLayout());
    above.setOpaque(false);
    above.setAlignmentY(Component.TOP_ALIGNMENT);
    above.setMaximumSize(
        new Dimension(look.px(CONTENT_WIDTH + 2 * MARGIN) - bar, Integer.MAX_VALUE));
    above.add(content, BorderLayout.NORTH);
    centred.add(Box.createHorizontalGlue());
    centred.add(above);
    centred.add(Box.createHorizontalGlue());
    JScrollPane scroll =
        new JScrollPane(centred) {
          private static final long serialVersionUID = 1L;

          @Override
          public void doLayout() {
            PageFit.fit(look, content, getWidth() - 2 * margin);
            super.doLayout();
          }
        };
    plain(scroll, 24);
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_AS_NEEDED);
    InputMap keys = scroll.getInputMap(JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
    keys.put(KeyStroke.getKeyStroke(KeyEvent.VK_HOME, 0), "scrollHome");
    keys.put(KeyStroke.getKeyStroke(KeyEvent.VK_END, 0), "scrollEnd");
    return scroll;
  }

  /** What scrolls up and down inside a screen. */
  public JScrollPane scrolling(Component content) {
    return plain(new JScrollPane(content), 32);
  }

  private JScrollPane plain(JScrollPane scroll, int step) {
    scroll.setBorder(BorderFactory.createEmptyBorder());
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.getVerticalScrollBar().setUnitIncrement(look.px(step));
    scroll.getViewport().setBackground(look.palette().ground());
    return scroll;
  }
}
