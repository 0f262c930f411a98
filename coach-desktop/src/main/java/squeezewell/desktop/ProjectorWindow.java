package squeezewell.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GraphicsDevice;
import java.awt.GraphicsEnvironment;
import java.awt.GridLayout;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import javax.swing.Timer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.AdviceCard;
import squeezewell.desktop.parts.PromptWords;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.TideColumn;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.LivePainter;
import squeezewell.desktop.screens.StationProjectorView;
import squeezewell.live.LiveStation;

/** The practice as a class sees it: the same column and ribbon, large, and nothing to press. */
final class ProjectorWindow extends JFrame {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 720;
  private static final int FRAME_MILLIS = 33;

  private final transient Supplier<Optional<LiveSession<?>>> session;
  private final Timer frames = new Timer(FRAME_MILLIS, e -> frame());
  private transient LivePainter painter;
  private JLabel elapsed;
  private JLabel bar;
  private JLabel asked;
  private JLabel edition;
  private AdviceCard examiner;
  private AdviceCard next;

  /**
   * @param session the practice or station that runs, if one does
   * @param beside where the phone is
   */
  ProjectorWindow(Supplier<Optional<LiveSession<?>>> session, Rectangle beside) {
    super("Squeezewell projector");
    this.session = session;
    setIconImages(WindowIcon.sizes());
    setDefaultCloseOperation(DISPOSE_ON_CLOSE);
    Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
    setSize(Math.min(WIDTH, screen.width), Math.min(HEIGHT, screen.height));
    setMinimumSize(new Dimension(640, 360));
    place(beside);
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent e) {
            lay();
          }
        });
    lay();
  }

  /** On a second screen if there is one, else beside the phone as far as there is room. */
  private void place(Rectangle beside) {
    for (GraphicsDevice device :
        GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices()) {
      Rectangle bounds = device.getDefaultConfiguration().getBounds();
      if (!bounds.intersects(beside)) {
        setLocation(bounds.getLocation());
        return;
      }
    }
    int right = Toolkit.getDefaultToolkit().getScreenSize().width - getWidth();
    setLocation(Math.max(0, Math.min(beside.x + beside.width, right)), beside.y);
  }

  void open() {
    setVisible(true);
    frames.start();
  }

  @Override
  public void dispose() {
    frames.stop();
    super.dispose();
  }

  private void lay() {
    double scale = Math.min(getWidth() / (double) WIDTH, getHeight() / (double) HEIGHT);
    Look look = new Look(Palette.darkTheme(), Math.max(0.5, Math.min(6, scale)));
    Widgets kit = new Widgets(look);
    TideColumn tide = new TideColumn(look);
    tide.setPreferredSize(new Dimension(look.px(290), look.px(300)));
    PromptWords words = new PromptWords(look);
    Ribbon ribbon = new Ribbon(look);
    ribbon.setPreferredSize(new Dimension(look.px(1160), look.px(90)));
    painter = new LivePainter(tide, words, ribbon);
    elapsed = kit.label("", look.bold(64), look.palette().text());
    bar = kit.label("", look.bold(30), look.palette().text());
    asked = kit.label("", look.font(26), look.palette().softText());
    edition = kit.label("", look.font(20), look.palette().softText());
    examiner = new AdviceCard(look, "The examiner", 22, 30);
    examiner.setPreferredSize(new Dimension(look.px(1160), look.px(128)));
    next = new AdviceCard(look, "What is next", 28, 22);
    JPanel side = new JPanel(new GridLayout(0, 1));
    side.setOpaque(false);
    side.setPreferredSize(new Dimension(look.px(430), look.px(300)));
    JLabel caution =
        kit.label("Practice on a manikin only", look.font(20), look.palette().softText());
    for (JLabel label : new JLabel[] {elapsed, bar, asked, edition, caution}) {
      label.setHorizontalAlignment(SwingConstants.TRAILING);
      side.add(label);
    }
    side.add(next, 2);
    JPanel content = new JPanel(new BorderLayout(look.px(30), look.px(24)));
    content.setBackground(look.palette().ground());
    int margin = look.px(50);
    content.setBorder(BorderFactory.createEmptyBorder(look.px(36), margin, look.px(24), margin));
    content.add(examiner, BorderLayout.NORTH);
    content.add(tide, BorderLayout.WEST);
    content.add(words, BorderLayout.CENTER);
    content.add(side, BorderLayout.EAST);
    content.add(ribbon, BorderLayout.SOUTH);
    setContentPane(content);
    revalidate();
    frame();
  }

  private void frame() {
    Optional<LiveSession<?>> running = session.get();
    boolean isStation = running.isPresent() && running.get() instanceof StationSession;
    examiner.setVisible(isStation);
    next.setVisible(isStation);
    if (isStation) {
      showStation((StationSession) running.get());
      return;
    }
    if (!running.isPresent()) {
      elapsed.setText("");
      bar.setText("Waiting for a practice");
      asked.setText("");
      edition.setText("");
      painter.rest();
      return;
    }
    LivePainter.Lines lines = painter.paint(running.get().run());
    Widgets.show(elapsed, lines.view().elapsed());
    Widgets.show(bar, lines.found().isEmpty() ? lines.view().bar().text() : lines.found());
    Widgets.show(asked, lines.asked());
    Widgets.show(edition, running.get().protocol().title());
    Toolkit.getDefaultToolkit().sync();
  }

  private void showStation(StationSession running) {
    LiveStation live = running.run();
    LiveStation.Now at = live.now();
    long now = live.clock().nanos();
    StationProjectorView view = StationProjectorView.of(at, now);
    Widgets.show(elapsed, view.clock());
    Widgets.show(bar, view.phase());
    examiner.show(view.title(), view.text());
    next.show(view.next().isEmpty() ? "Breathe on" : view.next(), view.how());
    if (at.breathing()) {
      Widgets.show(asked, painter.paint(at.practice(), now).asked());
    } else {
      painter.rest();
      Widgets.show(asked, "");
    }
    Widgets.show(edition, view.oxygen().isEmpty() ? running.protocol().title() : view.oxygen());
    Toolkit.getDefaultToolkit().sync();
  }
}
