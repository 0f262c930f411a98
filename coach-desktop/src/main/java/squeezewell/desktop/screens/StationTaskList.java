package squeezewell.desktop.screens;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.Widgets;

/** The tasks and orders of a running station, each a button; it scrolls. */
final class StationTaskList {
  private static final int COLUMNS = 2;

  private final Widgets kit;
  private final Tapped tapped;
  private final JPanel list;
  private final JScrollPane page;
  private final List<TaskButton> buttons = new ArrayList<>();
  private List<StationItem> items = List.of();
  private String nextShown = "";

  /** Told what is tapped. */
  interface Tapped {
    /**
     * Takes a tap.
     *
     * @param whenMillis the stamp of its event
     */
    void tapped(StationItem item, long whenMillis);
  }

  StationTaskList(Widgets kit, Tapped tapped) {
    this.kit = kit;
    this.tapped = tapped;
    Look look = kit.look();
    list = new JPanel(new GridLayout(0, COLUMNS, look.px(6), look.px(6)));
    list.setBackground(look.palette().ground());
    list.setBorder(BorderFactory.createEmptyBorder(0, 0, 0, look.px(Widgets.SCROLL_BAR)));
    JPanel top = new JPanel(new BorderLayout());
    top.setBackground(look.palette().ground());
    top.add(list, BorderLayout.NORTH);
    page = kit.scrolling(top);
    page.setMinimumSize(new Dimension(look.px(200), look.px(110)));
    page.setPreferredSize(new Dimension(look.px(372), look.px(122)));
  }

  /** The whole list, to be put on a screen. */
  JScrollPane page() {
    return page;
  }

  /** Shows the items of a view. */
  void show(StationRunView view) {
    items = view.items();
    while (buttons.size() < items.size()) {
      int place = buttons.size();
      TaskButton button = new TaskButton(kit.look(), 14, false);
      button.addActionListener(e -> tapped(place, e.getWhen()));
      buttons.add(button);
      list.add(kit.comesIntoView(button));
      list.revalidate();
    }
    while (buttons.size() > items.size()) {
      list.remove(buttons.remove(buttons.size() - 1));
      list.revalidate();
      list.repaint();
    }
    for (int i = 0; i < items.size(); i++) {
      StationItem item = items.get(i);
      buttons.get(i).show(item.words(), item.keyName(), item.status(), item.on(), item.done());
    }
    showWhatIsNext(view.next().map(StationItem::id).orElse(""));
  }

  /** The list moves to what is next when that changes, and else stays where a person moved it. */
  private void showWhatIsNext(String id) {
    if (id.equals(nextShown) || !list.isValid()) {
      return;
    }
    nextShown = id;
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i).id().equals(id)) {
        list.scrollRectToVisible(buttons.get(i).getBounds());
      }
    }
  }

  private void tapped(int place, long whenMillis) {
    if (place < items.size()) {
      tapped.tapped(items.get(place), whenMillis);
    }
  }
}
