package squeezewell.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import org.junit.jupiter.api.Test;

/** Elements and path commands as SVG 1.1 (W3C, chapters 8 to 11) writes them, typed by hand. */
class SvgCanvasTest {
  private static final Color TIDE = new Color(0x1F7A8F);

  private final SvgCanvas canvas = new SvgCanvas(text -> text.replace("<", "&lt;"));

  @Test
  void boxesAreRectangles() {
    canvas.fill(TIDE, new Rectangle2D.Double(1, 2.5, 3, 4.126));
    canvas.fill(TIDE, new RoundRectangle2D.Double(1, 2, 3, 4, 6, 6));
    assertThat(canvas.elements())
        .isEqualTo(
            """
            <rect x="1" y="2.5" width="3" height="4.13" fill="#1f7a8f"/>
            <rect x="1" y="2" width="3" height="4" rx="3" fill="#1f7a8f"/>
            """);
  }

  @Test
  void anyOtherShapeIsAPathOfItsCommands() {
    Path2D path = new Path2D.Double();
    path.moveTo(0, 1);
    path.lineTo(2, 3);
    path.quadTo(4, 5, 6, 7);
    path.curveTo(8, 9, 10, 11, -1, 12);
    path.closePath();
    canvas.fill(TIDE, path);
    canvas.draw(Color.BLACK, 1.5, new Line2D.Double(0, 0, 10, 0), 5, 2.5f);
    canvas.draw(Color.BLACK, 1, new Line2D.Double(0, 0, 10, 0));
    assertThat(canvas.elements())
        .isEqualTo(
            """
            <path fill="#1f7a8f" d="M0 1L2 3Q4 5 6 7C8 9 10 11 -1 12Z"/>
            <path fill="none" stroke="#000000" stroke-width="1.5" stroke-dasharray="5 2.5" d="M0 0L10 0"/>
            <path fill="none" stroke="#000000" d="M0 0L10 0"/>
            """);
  }

  @Test
  void textIsMadeSafe() {
    canvas.text(TIDE, true, 3, 4, "a<b");
    canvas.text(TIDE, false, 3, 4, "c");
    assertThat(canvas.elements())
        .isEqualTo(
            """
            <text x="3" y="4" fill="#1f7a8f" font-weight="bold">a&lt;b</text>
            <text x="3" y="4" fill="#1f7a8f">c</text>
            """);
  }
}
