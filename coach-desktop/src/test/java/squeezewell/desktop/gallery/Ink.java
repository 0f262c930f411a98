package squeezewell.desktop.gallery;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Paints on an image and remembers each text: where its ink fell, on what colour, and whether a
 * clip cut it.
 */
final class Ink extends Graphics2D {
  private final Graphics2D real;
  private final BufferedImage image;
  private final List<Text> texts;

  /**
   * A text that was painted.
   *
   * @param bounds of its ink, in device pixels
   * @param under the colour that most of its ground had
   * @param cutAcross whether a clip cut it at its left or right
   * @param cutAlong whether a clip cut it above or below
   * @param pixels where its ink is, and its colour there
   */
  record Text(
      String text,
      Rectangle2D bounds,
      Color colour,
      Color under,
      boolean cutAcross,
      boolean cutAlong,
      Map<Integer, Integer> pixels) {
    /** The share of its ink that can still be seen. */
    double seen(BufferedImage image) {
      int width = image.getWidth();
      long left =
          pixels.entrySet().stream()
              .filter(e -> image.getRGB(e.getKey() % width, e.getKey() / width) == e.getValue())
              .count();
      return pixels.isEmpty() ? 1 : (double) left / pixels.size();
    }
  }

  Ink(BufferedImage image) {
    this(image.createGraphics(), image, new ArrayList<>());
  }

  private Ink(Graphics2D real, BufferedImage image, List<Text> texts) {
    this.real = real;
    this.image = image;
    this.texts = texts;
  }

  List<Text> texts() {
    return List.copyOf(texts);
  }

  private void note(String text, double x, double y, Runnable draw) {
    if (text.isBlank()) {
      draw.run();
      return;
    }
    GlyphVector glyphs = getFont().createGlyphVector(getFontRenderContext(), text);
    Shape ink =
        AffineTransform.getTranslateInstance(x, y).createTransformedShape(glyphs.getOutline());
    Rectangle2D bounds = getTransform().createTransformedShape(ink).getBounds2D();
    Rectangle area = bounds.getBounds();
    area.grow(1, 1);
    area = area.intersection(new Rectangle(0, 0, image.getWidth(), image.getHeight()));
    int[] before = pixels(area);
    draw.run();
    int[] after = pixels(area);
    Map<Integer, Integer> changed = new HashMap<>();
    Map<Integer, Integer> grounds = new HashMap<>();
    for (int i = 0; i < before.length; i++) {
      grounds.merge(before[i], 1, Integer::sum);
      if (before[i] != after[i]) {
        int at = (area.y + i / area.width) * image.getWidth() + area.x + i % area.width;
        changed.put(at, after[i]);
      }
    }
    int under =
        grounds.entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse(0);
    Shape clip = getClip();
    Rectangle2D seen =
        clip == null ? bounds : getTransform().createTransformedShape(clip).getBounds2D();
    seen = seen.createIntersection(new Rectangle(0, 0, image.getWidth(), image.getHeight()));
    boolean across =
        bounds.getMinX() < seen.getMinX() - 1.5 || bounds.getMaxX() > seen.getMaxX() + 1.5;
    boolean along =
        bounds.getMinY() < seen.getMinY() - 1.5 || bounds.getMaxY() > seen.getMaxY() + 1.5;
    texts.add(new Text(text, bounds, getColor(), new Color(under), across, along, changed));
  }

  private int[] pixels(Rectangle area) {
    return area.isEmpty()
        ? new int[0]
        : image.getRGB(area.x, area.y, area.width, area.height, null, 0, area.width);
  }

  @Override
  public void drawString(String text, int x, int y) {
    note(text, x, y, () -> real.drawString(text, x, y));
  }

  @Override
  public void drawString(String text, float x, float y) {
    note(text, x, y, () -> real.drawString(text, x, y));
  }

  @Override
  public void drawChars(char[] data, int offset, int length, int x, int y) {
    drawString(new String(data, offset, length), x, y);
  }

  @Override
  public void drawString(AttributedCharacterIterator text, int x, int y) {
    drawString(text, (float) x, (float) y);
  }

  @Override
  public void drawString(AttributedCharacterIterator text, float x, float y) {
    StringBuilder plain = new StringBuilder();
    for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
      plain.append(c);
    }
    note(plain.toString(), x, y, () -> real.drawString(text, x, y));
  }

  @Override
  public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
    real.drawGlyphVector(glyphs, x, y);
  }

  @Override
  public Graphics create() {
    return new Ink((Graphics2D) real.create(), image, texts);
  }

  @Override
  public void dispose() {
    real.dispose();
  }

  @Override
  public void draw(Shape s) {
    real.draw(s);
  }

  @Override
  public void fill(Shape s) {
    real.fill(s);
  }

  @Override
  public boolean drawImage(Image img, AffineTransform xform, ImageObserver obs) {
    return real.drawImage(img, xform, obs);
  }

  @Override
  public void drawImage(BufferedImage img, BufferedImageOp op, int x, int y) {
    real.drawImage(img, op, x, y);
  }

  @Override
  public void drawRenderedImage(RenderedImage img, AffineTransform xform) {
    real.drawRenderedImage(img, xform);
  }

  @Override
  public void drawRenderableImage(RenderableImage img, AffineTransform xform) {
    real.drawRenderableImage(img, xform);
  }

  @Override
  public boolean hit(Rectangle rect, Shape s, boolean onStroke) {
    return real.hit(rect, s, onStroke);
  }

  @Override
  public GraphicsConfiguration getDeviceConfiguration() {
    return real.getDeviceConfiguration();
  }

  @Override
  public void setComposite(Composite comp) {
    real.setComposite(comp);
  }

  @Override
  public void setPaint(Paint paint) {
    real.setPaint(paint);
  }

  @Override
  public void setStroke(Stroke s) {
    real.setStroke(s);
  }

  @Override
  public void setRenderingHint(RenderingHints.Key key, Object value) {
    real.setRenderingHint(key, value);
  }

  @Override
  public Object getRenderingHint(RenderingHints.Key key) {
    return real.getRenderingHint(key);
  }

  @Override
  public void setRenderingHints(Map<?, ?> hints) {
    real.setRenderingHints(hints);
  }

  @Override
  public void addRenderingHints(Map<?, ?> hints) {
    real.addRenderingHints(hints);
  }

  @Override
  public RenderingHints getRenderingHints() {
    return real.getRenderingHints();
  }

  @Override
  public void translate(int x, int y) {
    real.translate(x, y);
  }

  @Override
  public void translate(double tx, double ty) {
    real.translate(tx, ty);
  }

  @Override
  public void rotate(double theta) {
    real.rotate(theta);
  }

  @Override
  public void rotate(double theta, double x, double y) {
    real.rotate(theta, x, y);
  }

  @Override
  public void scale(double sx, double sy) {
    real.scale(sx, sy);
  }

  @Override
  public void shear(double shx, double shy) {
    real.shear(shx, shy);
  }

  @Override
  public void transform(AffineTransform tx) {
    real.transform(tx);
  }

  @Override
  public void setTransform(AffineTransform tx) {
    real.setTransform(tx);
  }

  @Override
  public AffineTransform getTransform() {
    return real.getTransform();
  }

  @Override
  public Paint getPaint() {
    return real.getPaint();
  }

  @Override
  public Composite getComposite() {
    return real.getComposite();
  }

  @Override
  public void setBackground(Color color) {
    real.setBackground(color);
  }

  @Override
  public Color getBackground() {
    return real.getBackground();
  }

  @Override
  public Stroke getStroke() {
    return real.getStroke();
  }

  @Override
  public void clip(Shape s) {
    real.clip(s);
  }

  @Override
  public FontRenderContext getFontRenderContext() {
    return real.getFontRenderContext();
  }

  @Override
  public Color getColor() {
    return real.getColor();
  }

  @Override
  public void setColor(Color c) {
    real.setColor(c);
  }

  @Override
  public void setPaintMode() {
    real.setPaintMode();
  }

  @Override
  public void setXORMode(Color c1) {
    real.setXORMode(c1);
  }

  @Override
  public Font getFont() {
    return real.getFont();
  }

  @Override
  public void setFont(Font font) {
    real.setFont(font);
  }

  @Override
  public FontMetrics getFontMetrics(Font f) {
    return real.getFontMetrics(f);
  }

  @Override
  public Rectangle getClipBounds() {
    return real.getClipBounds();
  }

  @Override
  public void clipRect(int x, int y, int width, int height) {
    real.clipRect(x, y, width, height);
  }

  @Override
  public void setClip(int x, int y, int width, int height) {
    real.setClip(x, y, width, height);
  }

  @Override
  public Shape getClip() {
    return real.getClip();
  }

  @Override
  public void setClip(Shape clip) {
    real.setClip(clip);
  }

  @Override
  public void copyArea(int x, int y, int width, int height, int dx, int dy) {
    real.copyArea(x, y, width, height, dx, dy);
  }

  @Override
  public void drawLine(int x1, int y1, int x2, int y2) {
    real.drawLine(x1, y1, x2, y2);
  }

  @Override
  public void fillRect(int x, int y, int width, int height) {
    real.fillRect(x, y, width, height);
  }

  @Override
  public void clearRect(int x, int y, int width, int height) {
    real.clearRect(x, y, width, height);
  }

  @Override
  public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
    real.drawRoundRect(x, y, width, height, arcWidth, arcHeight);
  }

  @Override
  public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
    real.fillRoundRect(x, y, width, height, arcWidth, arcHeight);
  }

  @Override
  public void drawOval(int x, int y, int width, int height) {
    real.drawOval(x, y, width, height);
  }

  @Override
  public void fillOval(int x, int y, int width, int height) {
    real.fillOval(x, y, width, height);
  }

  @Override
  public void drawArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
    real.drawArc(x, y, width, height, startAngle, arcAngle);
  }

  @Override
  public void fillArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
    real.fillArc(x, y, width, height, startAngle, arcAngle);
  }

  @Override
  public void drawPolyline(int[] xs, int[] ys, int count) {
    real.drawPolyline(xs, ys, count);
  }

  @Override
  public void drawPolygon(int[] xs, int[] ys, int count) {
    real.drawPolygon(xs, ys, count);
  }

  @Override
  public void fillPolygon(int[] xs, int[] ys, int count) {
    real.fillPolygon(xs, ys, count);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, ImageObserver observer) {
    return real.drawImage(img, x, y, observer);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, int w, int h, ImageObserver observer) {
    return real.drawImage(img, x, y, w, h, observer);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, Color bg, ImageObserver observer) {
    return real.drawImage(img, x, y, bg, observer);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, int w, int h, Color bg, ImageObserver o) {
    return real.drawImage(img, x, y, w, h, bg, o);
  }

  @Override
  public boolean drawImage(
      Image img, int a, int b, int c, int d, int e, int f, int g, int h, ImageObserver o) {
    return real.drawImage(img, a, b, c, d, e, f, g, h, o);
  }

  @Override
  public boolean drawImage(
      Image i, int a, int b, int c, int d, int e, int f, int g, int h, Color bg, ImageObserver o) {
    return real.drawImage(i, a, b, c, d, e, f, g, h, bg, o);
  }
}
