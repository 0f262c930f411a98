package squeezewell.desktop.screens.live;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Objects;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.Drawn;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.live.LiveFace.Ground;
import squeezewell.desktop.screens.live.LiveFace.Line;
import squeezewell.desktop.screens.live.LiveFace.Vessel;
import squeezewell.picture.RibbonMark;
import squeezewell.picture.RibbonPainter;
import squeezewell.picture.ScreenCanvas;
import squeezewell.protocol.Judgement;
import squeezewell.words.WrappedText;

/**
 * Paints the face of a running practice: word, column, number, feedback and ribbon. Only what has
 * changed is painted anew.
 */
public final class LiveStage extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final int WAVES = 2;

  private transient LivePlaces places;
  private transient LiveFace face;
  private transient List<RibbonMark> marks = List.of();
  private transient Palette palette;
  private String notice = "";
  private boolean covered;
  private long from;
  private long to = 1;

  /** Small text, and what keeps its size, on the ground that is shown. */
  private transient Look small;

  private transient Look large;

  public LiveStage(Look look) {
    super(look, AccessibleRole.PANEL, Faces.say("stage.name"));
    palette = look.palette();
  }

  /** Puts the parts into their places. */
  void place(LivePlaces newPlaces) {
    if (!newPlaces.equals(places)) {
      places = newPlaces;
      looks();
      repaint();
    }
  }

  private void looks() {
    small = new Look(palette, Math.max(0.5, Math.min(6, places.text())));
    large = new Look(palette, Math.max(0.5, Math.min(6, places.unit())));
  }

  /** The colours of the ground that is shown. */
  Palette palette() {
    return palette;
  }

  static Palette on(Palette plain, Ground ground) {
    return switch (ground) {
      case PLAIN -> plain;
      case REST -> plain.resting();
      case GAP -> plain.missing();
    };
  }

  /** Shows a face, and what must be known; empty if all is well. */
  void show(LiveFace next, String newNotice) {
    LiveFace before = face;
    face = next;
    if (before == null
        || before.ground() != next.ground()
        || before.cells().isPresent() != next.cells().isPresent()) {
      palette = on(look.palette(), next.ground());
      looks();
      repaint();
    } else if (covered && !places.wide()) {
      again(!before.equals(next), new Rectangle(0, 0, getWidth(), places.strip().y + large.px(60)));
    } else {
      again(
          !before.clock().equals(next.clock())
              || !before.detail().equals(next.detail())
              || !before.patient().equals(next.patient()),
          places.header());
      again(
          !before.strip().equals(next.strip()) || !before.advice().equals(next.advice()),
          places.strip());
      again(!before.word().equals(next.word()), places.word());
      boolean number =
          !before.count().equals(next.count())
              || !before.note().equals(next.note())
              || !before.hint().equals(next.hint())
              || !before.more().equals(next.more())
              || !before.below().equals(next.below())
              || !before.beside().equals(next.beside());
      if (next.cells().isPresent() || next.ground() == Ground.GAP) {
        again(number || !before.cells().equals(next.cells()), middle());
      } else {
        again(number, places.number());
        again(!sameVessel(before, next), vesselAndLadder());
        again(
            !before.feedback().equals(next.feedback()) || !before.noted().equals(next.noted()),
            places.feedback());
        again(before.ribbon() != next.ribbon(), places.ribbon());
      }
    }
    if (!newNotice.equals(notice)) {
      notice = newNotice;
      repaint();
    }
    if (before == null || !before.word().equals(next.word())) {
      describe(next.word());
    }
  }

  private void again(boolean changed, Rectangle place) {
    if (changed) {
      repaint(place.x - 4, place.y - 8, place.width + 8, place.height + 16);
    }
  }

  private boolean sameVessel(LiveFace before, LiveFace next) {
    if (before.vessel().isPresent()
        && next.vessel().isPresent()
        && before.vessel().get() instanceof Vessel.Tide was
        && next.vessel().get() instanceof Vessel.Tide is) {
      return level(was.fill()) == level(is.fill())
          && was.count() == is.count()
          && was.of() == is.of();
    }
    return Objects.equals(before.vessel(), next.vessel());
  }

  private long level(double fill) {
    return Math.round(fill * places.vessel().height);
  }

  private Rectangle vesselAndLadder() {
    Rectangle all = new Rectangle(places.vessel());
    all.width += large.px(44);
    return all;
  }

  /** Between the word and the pads. */
  private Rectangle middle() {
    Rectangle all = new Rectangle(places.vessel());
    all.add(places.number());
    if (!places.wide()) {
      all.add(places.feedback());
    }
    if (places.ribbon().height > 0) {
      all.add(places.ribbon());
    }
    return all;
  }

  /** Something lies over all but the head, the pads and the actions. */
  void cover(boolean nowCovered) {
    covered = nowCovered;
    repaint();
  }

  /** Shows what stands on the ribbon. */
  void ribbon(List<RibbonMark> newMarks, long newFrom, long newTo) {
    marks = List.copyOf(newMarks);
    from = newFrom;
    to = newTo;
    if (face != null && face.ribbon()) {
      again(true, places.ribbon());
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(412), look.px(892));
  }

  @Override
  protected void draw(Graphics2D g2, Palette plain) {
    if (face == null || places == null) {
      return;
    }
    g2.setColor(palette.ground());
    g2.fillRect(0, 0, getWidth(), getHeight());
    if (places.wide() && face.ground() == Ground.PLAIN) {
      Rectangle touch = places.touch();
      g2.setColor(palette.card());
      g2.fill(touch);
      g2.setColor(palette.line());
      g2.fillRect(touch.x, touch.y, 1, touch.height);
    }
    caution(g2);
    if (covered && !places.wide()) {
      head(g2);
      return;
    }
    header(g2);
    if (face.advice().isPresent()) {
      advice(g2, face.advice().get());
    } else {
      strip(g2);
    }
    Rectangle word = places.word();
    Font type = Look.fitted(g2, large.bold(wordSize()), face.word(), word.width);
    text(g2, face.word(), type, palette.text(), word.x, word.y + word.height * 0.78);
    if (face.cells().isPresent()) {
      rest(g2, face.cells().get());
    } else {
      column(g2);
      beside(g2);
      if (face.noted().isEmpty()) {
        feedback(g2);
      } else {
        noted(g2);
      }
      if (face.ribbon() && places.ribbon().height > 0) {
        ribbon(g2);
      }
    }
  }

  /** Sized by the place that it has: 64 on a phone, up to twice that on a wide screen. */
  private double wordSize() {
    return Math.min(places.wide() ? 128 : 64, places.word().height / large.scale() / 1.1);
  }

  private void caution(Graphics2D g2) {
    Rectangle at = places.caution();
    double size = 12;
    int room = at.width;
    FontMetrics metrics = g2.getFontMetrics(small.font(size));
    List<String> lines = WrappedText.lines(Phrases.CAUTION, room, metrics::stringWidth);
    Font font = small.font(size);
    if (lines.size() * metrics.getHeight() > at.height + 2) {
      lines = List.of(Phrases.CAUTION);
      font = Look.fitted(g2, font, Phrases.CAUTION, room);
      metrics = g2.getFontMetrics(font);
    }
    double y = at.y + (at.height - lines.size() * metrics.getHeight()) / 2.0 + metrics.getAscent();
    for (String line : lines) {
      centred(g2, line, font, palette.softText(), at, y);
      y += metrics.getHeight();
    }
  }

  /** Column, word and number in one line, while something lies over the rest. */
  private void head(Graphics2D g2) {
    Rectangle header = places.header();
    int high = large.px(66);
    Rectangle column = new Rectangle(header.x, header.y, large.px(42), high);
    if (face.vessel().isPresent() && face.vessel().get() instanceof Vessel.Tide tide) {
      g2.setColor(palette.card());
      g2.fill(round(column.x, column.y, column.width, high, large.px(24)));
      g2.setColor(palette.tide());
      double fill = Math.max(0, Math.min(1, tide.fill())) * (high - 8);
      g2.fill(round(column.x + 4.0, column.y + high - 4 - fill, column.width - 8.0, fill, 8));
      g2.setColor(palette.edge());
      g2.setStroke(new BasicStroke(2.5f));
      g2.draw(round(column.x, column.y, column.width, high, large.px(24)));
    }
    Font clock = large.bold(26);
    int clockWidth = g2.getFontMetrics(clock).stringWidth(face.clock());
    int right = header.x + header.width;
    text(g2, face.clock(), clock, palette.text(), right - clockWidth, header.y + large.px(30));
    int left = header.x + column.width + large.px(14);
    String said = face.count().isEmpty() ? face.word() : face.word() + "  " + face.count();
    Font word = Look.fitted(g2, large.bold(36), said, right - clockWidth - large.px(8) - left);
    text(g2, said, word, palette.text(), left, header.y + large.px(36));
    String next = face.strip().map(LiveFace.Strip::text).orElse(face.hint());
    Font font = Look.fitted(g2, small.font(15), next, right - left);
    text(g2, next, font, palette.softText(), left, header.y + large.px(38.0) + small.px(20));
  }

  private void header(Graphics2D g2) {
    Rectangle at = places.header();
    boolean large1 = places.wide() && at.height >= 50;
    double clockSize = large1 ? 48 : at.height < large.px(50) ? 32 : 34;
    boolean word = !face.clock().isEmpty() && !Character.isDigit(face.clock().charAt(0));
    Font clock = large.bold(word ? 24 : clockSize);
    FontMetrics clockMetrics = g2.getFontMetrics(clock);
    int clockWidth = clockMetrics.stringWidth(face.clock());
    Font name = small.bold(large1 ? 26 : places.brief() ? 20 : 22);
    name = Look.fitted(g2, name, face.patient(), at.width - clockWidth - large.px(8));
    double base =
        at.y + Math.max(clockMetrics.getAscent() * 0.95, g2.getFontMetrics(name).getAscent());
    int nameWidth = g2.getFontMetrics(name).stringWidth(face.patient());
    text(
        g2,
        face.clock(),
        clock,
        word ? palette.deep() : palette.text(),
        at.x + at.width - clockWidth,
        base);
    boolean beside = places.wide() || places.brief();
    double nameBase = beside ? base : at.y + g2.getFontMetrics(name).getAscent();
    text(g2, face.patient(), name, palette.text(), at.x, nameBase);
    Font detail = small.font(large1 ? 17 : 14);
    int left = beside ? at.x + nameWidth + small.px(10) : at.x;
    int room = at.x + at.width - clockWidth - large.px(12) - left;
    String shown = cut(g2, face.detail(), detail, room);
    double y = beside ? base : nameBase + small.px(21);
    text(g2, shown, detail, palette.softText(), left, y);
    if (!notice.isEmpty()) {
      Rectangle strip = places.strip();
      int high = small.px(26);
      int top = strip.y - high - large.px(6);
      g2.setColor(face.ground() == Ground.PLAIN ? palette.plumMist() : palette.ground());
      g2.fill(round(strip.x, top, strip.width, high, small.px(10)));
      Font bold = Look.fitted(g2, small.bold(13), notice, strip.width - small.px(16));
      text(
          g2,
          notice,
          bold,
          face.ground() == Ground.PLAIN ? palette.plum() : palette.text(),
          strip.x + small.px(8),
          top + high * 0.7);
    }
  }

  /** What fits of a text: its first part, where it has parts, or nothing. */
  private static String cut(Graphics2D g2, String text, Font font, int room) {
    FontMetrics metrics = g2.getFontMetrics(font);
    if (metrics.stringWidth(text) <= room) {
      return text;
    }
    int dot = text.lastIndexOf(" · ");
    String first = dot < 0 ? "" : text.substring(0, dot);
    return metrics.stringWidth(first) <= room ? first : "";
  }

  private void strip(Graphics2D g2) {
    if (!face.strip().isPresent()) {
      return;
    }
    LiveFace.Strip strip = face.strip().get();
    Rectangle at = places.strip();
    RoundRectangle2D whole = round(at.x, at.y, at.width, at.height, large.px(24));
    boolean plain = face.ground() == Ground.PLAIN;
    if (plain) {
      g2.setColor(places.wide() ? palette.ground() : palette.card());
      g2.fill(whole);
      if (strip.fill() > 0) {
        Shape clip = g2.getClip();
        g2.clip(whole);
        g2.setColor(strip.urgent() ? palette.sandMist() : palette.mist());
        double filled = Math.max(large.px(24), at.width * Math.min(1, strip.fill()));
        g2.fill(new Rectangle2D.Double(at.x, at.y, filled, at.height));
        g2.setClip(clip);
      }
    }
    if (strip.urgent()) {
      g2.setColor(plain ? palette.sand() : palette.text());
      g2.setStroke(large.stroke(2.5));
      g2.draw(round(at.x + 1.5, at.y + 1.5, at.width - 3, at.height - 3, large.px(24)));
    }
    double sign = Math.min(at.height - 8, small.px(20));
    strip
        .sign()
        .paint(g2, at.x + large.px(12), at.y + (at.height - sign) / 2, sign, palette.text());
    int left = (int) (at.x + large.px(20) + sign);
    int room = at.x + at.width - large.px(8) - left;
    Font font = Look.fitted(g2, small.bold(strip.urgent() ? 18 : 17), strip.text(), room);
    text(g2, strip.text(), font, palette.text(), left, middle(g2, font, at));
  }

  private void advice(Graphics2D g2, LiveFace.Advice advice) {
    Rectangle at = places.strip();
    boolean plain = face.ground() == Ground.PLAIN;
    RoundRectangle2D card = round(at.x + 1, at.y + 1, at.width - 2, at.height - 2, large.px(32));
    g2.setColor(plain ? palette.sandMist() : palette.ground());
    g2.fill(card);
    g2.setColor(plain ? palette.sand() : palette.text());
    g2.setStroke(large.stroke(2));
    g2.draw(card);
    int left = at.x + large.px(14);
    int room = at.width - large.px(28);
    Font title = Look.fitted(g2, small.bold(18), advice.title(), room);
    double y = at.y + large.px(6) + g2.getFontMetrics(title).getAscent();
    text(g2, advice.title(), title, palette.text(), left, y);
    Font font = adviceFont(g2, advice.text(), room, at.height - large.px(34));
    FontMetrics metrics = g2.getFontMetrics(font);
    y += metrics.getDescent() + 2;
    for (String line : WrappedText.lines(advice.text(), room, metrics::stringWidth)) {
      y += metrics.getHeight();
      text(g2, line, font, palette.text(), left, y - metrics.getDescent());
    }
  }

  private Font adviceFont(Graphics2D g2, String text, int width, int height) {
    double size = 16;
    while (size > 10) {
      FontMetrics metrics = g2.getFontMetrics(small.font(size));
      int lines = WrappedText.lines(text, width, metrics::stringWidth).size();
      if (lines * metrics.getHeight() <= height) {
        break;
      }
      size -= 0.5;
    }
    return small.font(size);
  }

  private void column(Graphics2D g2) {
    if (!face.vessel().isPresent()) {
      return;
    }
    Rectangle at = new Rectangle(places.vessel());
    if (isTall() && !places.wide()) {
      at.height = bottom() - at.y;
    }
    double arc = large.px(40);
    double line = large.px(3);
    RoundRectangle2D glass =
        round(at.x + line / 2, at.y + line / 2, at.width - line, at.height - line, arc);
    Vessel vessel = face.vessel().get();
    g2.setColor(palette.edge());
    if (vessel instanceof Vessel.Empty) {
      g2.setColor(palette.text());
      g2.setStroke(
          new BasicStroke(
              (float) line,
              BasicStroke.CAP_BUTT,
              BasicStroke.JOIN_ROUND,
              1,
              new float[] {large.px(10), large.px(8)},
              0));
      g2.draw(glass);
      double half = large.px(30);
      g2.fill(tip(at.getCenterX(), at.getCenterY() + half * 0.75, half, half * 1.65));
      return;
    }
    if (vessel instanceof Vessel.Hatched) {
      hatch(g2, at);
    } else {
      g2.setColor(palette.card());
      g2.fill(glass);
      if (vessel instanceof Vessel.Slats slats) {
        slats(g2, at, slats);
      } else if (vessel instanceof Vessel.Tide tide) {
        fluid(g2, at, tide.fill());
        ladder(g2, at, tide);
      }
    }
    g2.setColor(palette.edge());
    g2.setStroke(new BasicStroke((float) line));
    g2.draw(glass);
  }

  /** Whether the column takes the place of the feedback too. */
  private boolean isTall() {
    return face.ground() == Ground.GAP || Faces.say("test.clock").equals(face.clock());
  }

  /** Where it then ends. */
  private int bottom() {
    Rectangle ribbon = places.ribbon();
    Rectangle feedback = places.feedback();
    return !face.ribbon() && ribbon.height > 0
        ? ribbon.y + ribbon.height
        : feedback.y + feedback.height;
  }

  private void hatch(Graphics2D g2, Rectangle at) {
    g2.setColor(palette.line());
    g2.setStroke(large.stroke(3));
    double step = large.px(44);
    double rise = large.px(38);
    int lines = (int) Math.max(1, (at.height - step) / step);
    double top = at.y + (at.height - (lines - 1) * step) / 2 - rise / 2;
    for (int i = 0; i < lines; i++) {
      double y = top + i * step;
      g2.draw(
          new Line2D.Double(
              at.x + large.px(16), y + rise, at.x + at.width - (double) large.px(16), y));
    }
  }

  private void slats(Graphics2D g2, Rectangle at, Vessel.Slats slats) {
    double margin = large.px(12);
    double step = (at.height - 2 * margin) / Math.max(1, slats.of());
    double between = Math.min(large.px(1.2), step * 0.18);
    for (int i = 0; i < slats.of(); i++) {
      Rectangle2D slat =
          new Rectangle2D.Double(
              at.x + margin,
              at.y + at.height - margin - step * (i + 1) + between,
              at.width - 2 * margin,
              Math.max(1, step - 2 * between));
      if (i < slats.done()) {
        g2.setColor(palette.tide());
        g2.fill(slat);
      } else {
        g2.setColor(palette.line());
        g2.setStroke(new BasicStroke(1));
        g2.draw(slat);
      }
    }
  }

  private void fluid(Graphics2D g2, Rectangle at, double fill) {
    double inset = large.px(8);
    double bottom = at.y + at.height - inset;
    double top = bottom - (at.height - 2 * inset) * Math.max(0, Math.min(1, fill));
    if (bottom - top < 1) {
      return;
    }
    double left = at.x + inset;
    double width = at.width - 2 * inset;
    double swell = Math.min(large.px(7), (bottom - top) / 2);
    Path2D water = new Path2D.Double();
    water.moveTo(left, bottom);
    water.lineTo(left, top);
    double step = width / (2 * WAVES);
    for (int i = 0; i < 2 * WAVES; i++) {
      double x = left + i * step;
      water.quadTo(x + step / 2, top + (i % 2 == 0 ? -swell : swell), x + step, top);
    }
    water.lineTo(left + width, bottom);
    water.closePath();
    Shape clip = g2.getClip();
    g2.clip(round(left, at.y + inset, width, at.height - 2 * inset, large.px(26)));
    g2.setColor(palette.tide());
    g2.fill(water);
    g2.setClip(clip);
  }

  private void ladder(Graphics2D g2, Rectangle at, Vessel.Tide tide) {
    int of = tide.of();
    double margin = large.px(24);
    for (int i = 1; i <= of; i++) {
      boolean present = i == tide.count();
      double share = of == 1 ? 0.5 : (i - 1.0) / (of - 1);
      double y = at.y + margin + (at.height - 2 * margin) * share;
      double thick = large.px(present ? 6 : 3);
      g2.setColor(present ? palette.text() : palette.edge());
      g2.fill(
          round(
              at.x + at.width + large.px(8),
              y - thick / 2,
              large.px(present ? 28 : 14),
              thick,
              thick));
    }
  }

  private void beside(Graphics2D g2) {
    Rectangle at = new Rectangle(places.number());
    if (face.count().isEmpty()) {
      if (!face.ribbon() && !face.feedback().isPresent() && !places.wide() && isTall()) {
        at.height = bottom() - at.y;
      }
      Rectangle above = new Rectangle(at);
      if (face.steps().isPresent()) {
        above.height = at.height / 2;
      }
      lines(g2, face.beside(), above);
      face.steps().ifPresent(steps -> steps(g2, at, steps));
      return;
    }
    if (face.ground() == Ground.GAP) {
      at.height = places.wide() ? at.height * 3 / 4 : (bottom() - at.y) * 3 / 4;
    }
    Font note = Look.fitted(g2, small.bold(places.wide() ? 30 : 24), face.note(), at.width);
    int noteHigh = face.note().isEmpty() ? 0 : g2.getFontMetrics(note).getHeight();
    double most = (at.height - noteHigh - large.px(14)) / 0.74;
    double size = Math.min(places.wide() ? 360 : 190, most / large.scale());
    Font number = Look.fitted(g2, large.bold(size), face.count(), at.width);
    double cap = 0.71 * number.getSize2D();
    double base = at.y + (at.height - cap - noteHigh - large.px(12)) / 2 + cap;
    centred(g2, face.count(), number, palette.text(), at, base);
    base += large.px(12) + noteHigh * 0.8;
    centred(
        g2,
        face.note(),
        note,
        face.ground() == Ground.GAP ? palette.text() : palette.softText(),
        at,
        base);
    double end = places.wide() ? getHeight() : bottom();
    for (Line line : face.more()) {
      Font font = Look.fitted(g2, small.font(line.size()), line.text(), at.width);
      if (font.getSize2D() > note.getSize2D() * 0.9f) {
        font = font.deriveFont(note.getSize2D() * 0.9f);
      }
      base += g2.getFontMetrics(font).getHeight() * 1.1;
      if (base + g2.getFontMetrics(font).getDescent() > end) {
        return;
      }
      centred(g2, line.text(), font, palette.softText(), at, base);
    }
  }

  /** Lines that wrap, one below the other, no larger than they all fit. */
  private void lines(Graphics2D g2, List<Line> lines, Rectangle at) {
    double share = 1;
    while (share > 0.4 && !fits(g2, lines, at, share)) {
      share -= 0.05;
    }
    double y = at.y;
    for (Line line : lines) {
      Font font = type(line, share);
      FontMetrics metrics = g2.getFontMetrics(font);
      for (String part : WrappedText.lines(line.text(), at.width, metrics::stringWidth)) {
        y += metrics.getHeight();
        text(
            g2,
            part,
            Look.fitted(g2, font, part, at.width),
            line.soft() ? palette.softText() : palette.text(),
            at.x,
            y - metrics.getDescent());
      }
      y += line.bold() ? metrics.getHeight() * 0.25 : 2;
    }
  }

  private boolean fits(Graphics2D g2, List<Line> lines, Rectangle at, double share) {
    double high = 0;
    for (Line line : lines) {
      FontMetrics metrics = g2.getFontMetrics(type(line, share));
      List<String> parts = WrappedText.lines(line.text(), at.width, metrics::stringWidth);
      if (parts.stream().anyMatch(part -> metrics.stringWidth(part) > at.width)) {
        return false;
      }
      high += parts.size() * metrics.getHeight() + metrics.getHeight() * 0.25;
    }
    return high <= at.height;
  }

  private Font type(Line line, double share) {
    return line.bold() ? small.bold(line.size() * share) : small.font(line.size() * share);
  }

  private void steps(Graphics2D g2, Rectangle at, LiveFace.Steps steps) {
    double bottom = at.y + at.height - large.px(8);
    double high = Math.min(large.px(94), at.height * 0.42);
    double wide = Math.min(large.px(42), at.width / (double) steps.of());
    for (int i = 0; i < steps.of(); i++) {
      double h = high * (22 + i * 18) / 94;
      RoundRectangle2D step =
          round(at.x + i * wide + 1, bottom - h, wide - large.px(8), h, large.px(10));
      if (i < steps.level()) {
        g2.setColor(palette.tide());
        g2.fill(step);
      }
      boolean present = i == steps.level() - 1;
      g2.setColor(present ? palette.text() : palette.edge());
      g2.setStroke(large.stroke(present ? 3 : 1.5));
      g2.draw(step);
    }
  }

  private void feedback(Graphics2D g2) {
    if (!face.feedback().isPresent()) {
      return;
    }
    LiveFace.Feedback told = face.feedback().get();
    Rectangle at = places.feedback();
    boolean plain = face.ground() == Ground.PLAIN;
    Judgement how = told.judgement();
    g2.setColor(
        !plain
            ? palette.ground()
            : how == Judgement.FAST
                ? palette.sandMist()
                : how == Judgement.SLOW ? palette.plumMist() : palette.mist());
    g2.fill(round(at.x, at.y, at.width, at.height, large.px(28)));
    Color colour = how == Judgement.IN_RANGE ? palette.onMist() : palette.of(how);
    double side = Math.min(large.px(40), at.height - large.px(14));
    Sign sign =
        how == Judgement.IN_RANGE ? Sign.IN_RANGE : how == Judgement.FAST ? Sign.EARLY : Sign.LATE;
    sign.paint(
        g2,
        at.x + large.px(14),
        at.y + (at.height - side) / 2,
        side,
        how == Judgement.IN_RANGE ? palette.tide() : colour);
    Font value = small.bold(30);
    value = Look.fitted(g2, value, told.value(), at.width / 3);
    int valueWidth = g2.getFontMetrics(value).stringWidth(told.value());
    int left = (int) (at.x + large.px(26) + side);
    int right = at.x + at.width - large.px(14);
    Font word =
        Look.fitted(g2, small.bold(44), told.word(), right - valueWidth - large.px(12) - left);
    if (word.getSize2D() > at.height * 0.86) {
      word = word.deriveFont(at.height * 0.86f);
    }
    text(g2, told.word(), word, colour, left, middle(g2, word, at));
    text(g2, told.value(), value, colour, right - valueWidth, middle(g2, word, at));
  }

  private void noted(Graphics2D g2) {
    Rectangle at = places.feedback();
    g2.setColor(palette.text());
    g2.fill(round(at.x, at.y, at.width, at.height, large.px(24)));
    int room = at.width * 2 / 3 - large.px(30);
    Font font = Look.fitted(g2, small.bold(17), face.noted(), room);
    text(g2, face.noted(), font, palette.ground(), at.x + large.px(16), middle(g2, font, at));
  }

  private void ribbon(Graphics2D g2) {
    Rectangle at = places.ribbon();
    if (face.ground() == Ground.PLAIN) {
      g2.setColor(palette.card());
      g2.fill(round(at.x, at.y, at.width, at.height, large.px(24)));
    }
    Graphics2D clipped = (Graphics2D) g2.create();
    clipped.clip(at);
    Look own = new Look(palette, large.scale());
    new RibbonPainter(own, new ScreenCanvas(clipped, own), at, from, to).paint(marks, 0);
    clipped.dispose();
    double margin = large.px(10);
    double x = at.x + margin + 0.7 * (at.width - 2 * margin);
    g2.setColor(palette.text());
    g2.fill(
        round(
            x - large.px(1.5),
            at.y - large.px(4),
            large.px(3),
            at.height + large.px(8.0),
            large.px(3)));
  }

  /** While the bag rests: the seconds, and how many there may be. */
  private void rest(Graphics2D g2, LiveFace.Cells cells) {
    Rectangle at = middle();
    double k = Math.min(1, at.height / (372.0 * large.scale()));
    double y = at.y;
    Font hint = Look.fitted(g2, small.font(20), face.hint(), at.width);
    if (!face.hint().isEmpty()) {
      y += g2.getFontMetrics(hint).getAscent() * 0.9;
      text(g2, face.hint(), hint, palette.softText(), at.x, y);
    }
    double size = places.wide() ? Math.min(300, at.height * 0.55) : 190 * k;
    Font number = large.bold(size);
    y += 0.71 * number.getSize2D() + large.px(36) * k;
    int width = g2.getFontMetrics(number).stringWidth(face.count());
    text(g2, face.count(), number, palette.text(), at.x - large.px(4), y);
    int left = at.x + width + large.px(18);
    Font note = Look.fitted(g2, small.bold(32), face.note(), at.x + at.width - left);
    text(g2, face.note(), note, palette.text(), left, y);
    y += large.px(32) * k;
    double high = large.px(36) * Math.max(0.6, k);
    double gap = large.px(4);
    double wide = (at.width - (cells.of() - 1) * gap) / cells.of();
    for (int i = 0; i < cells.of(); i++) {
      RoundRectangle2D cell =
          round(at.x + i * (wide + gap) + 1, y + 1, wide - 2, high - 2, large.px(8));
      g2.setColor(palette.text());
      if (i < cells.done()) {
        g2.fill(cell);
      }
      g2.setStroke(large.stroke(2));
      g2.draw(cell);
    }
    y += high;
    Font label = small.bold(15);
    FontMetrics metrics = g2.getFontMetrics(label);
    y += metrics.getHeight();
    int mostWidth = metrics.stringWidth(cells.mostText());
    text(g2, cells.mostText(), label, palette.softText(), at.x + at.width - mostWidth, y);
    double leastRight = at.x + cells.least() * (wide + gap) - gap;
    int leastWidth = metrics.stringWidth(cells.leastText());
    if (cells.least() > 0
        && leastRight < at.x + at.width - mostWidth - gap
        && leastWidth <= leastRight - at.x) {
      text(g2, cells.leastText(), label, palette.softText(), leastRight - leastWidth, y);
    }
    double end = at.y + (double) at.height;
    for (Line line : face.below()) {
      Font font = line.bold() ? small.bold(line.size()) : small.font(line.size());
      font = Look.fitted(g2, font, line.text(), at.width);
      y += g2.getFontMetrics(font).getHeight() * (line.bold() ? 1.4 : 1.1);
      if (y + g2.getFontMetrics(font).getDescent() <= end) {
        text(g2, line.text(), font, line.soft() ? palette.softText() : palette.text(), at.x, y);
      }
    }
  }

  private static RoundRectangle2D round(double x, double y, double w, double h, double arc) {
    return new RoundRectangle2D.Double(x, y, w, h, arc, arc);
  }

  /** A tip downwards, its point at a place. */
  private static Path2D tip(double x, double y, double half, double height) {
    Path2D tip = new Path2D.Double();
    tip.moveTo(x, y);
    tip.lineTo(x - half, y - height);
    tip.lineTo(x + half, y - height);
    tip.closePath();
    return tip;
  }

  private static double middle(Graphics2D g2, Font font, Rectangle at) {
    FontMetrics metrics = g2.getFontMetrics(font);
    return at.getCenterY() + (metrics.getAscent() - metrics.getDescent()) / 2.0;
  }

  private static void text(
      Graphics2D g2, String text, Font font, Color colour, double x, double y) {
    g2.setFont(font);
    g2.setColor(colour);
    g2.drawString(text, (float) x, (float) y);
  }

  private static void centred(
      Graphics2D g2, String text, Font font, Color colour, Rectangle at, double y) {
    double x = at.x + (at.width - g2.getFontMetrics(font).stringWidth(text)) / 2.0;
    text(g2, text, font, colour, x, y);
  }
}
