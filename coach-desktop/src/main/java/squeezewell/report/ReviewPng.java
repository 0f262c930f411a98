package squeezewell.report;

import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.ZoneId;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import squeezewell.desktop.look.Look;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.session.SessionHeader;
import squeezewell.words.Wording;

/**
 * A debrief as a picture file, as wide as a sheet of A4 and at least as high: headline, figures,
 * both pictures, findings, guideline and caution. Drawn without a window.
 */
public final class ReviewPng {
  private static final Wording WORDS = Wording.beside(ReviewPng.class);

  /** A file can be as high as it likes, so rows are shorter here than on paper. */
  private static final int MOST_ROWS = 12;

  private static final int MOST_PARTS = 6;
  private static final int MOST_FINDINGS = 8;
  private static final int MOST_FOUND = 12;

  private final SessionHeader header;
  private final Review review;
  private final ZoneId zone;

  private ReviewPng(SessionHeader header, Review review, ZoneId zone) {
    this.header = header;
    this.review = review;
    this.zone = zone;
  }

  /**
   * The bytes of the file.
   *
   * @param header of the session that was reviewed
   * @param review its review
   * @param zone the time zone to write its date in
   */
  public static byte[] of(SessionHeader header, Review review, ZoneId zone) {
    FlatRobotoFont.install();
    ReviewPng picture = new ReviewPng(header, review, zone);
    int height = Math.max(PicturePage.A4_HEIGHT, picture.paint(image(1)));
    BufferedImage image = image(height);
    picture.paint(image);
    return encode(image);
  }

  private static BufferedImage image(int height) {
    return new BufferedImage(PicturePage.WIDTH, height, BufferedImage.TYPE_INT_RGB);
  }

  /** How high the whole page is; what lies below the image is not drawn. */
  private int paint(BufferedImage image) {
    Graphics2D g = Look.smooth(image.createGraphics());
    try {
      g.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      g.setColor(PicturePage.COLOURS.ground());
      g.fillRect(0, 0, image.getWidth(), image.getHeight());
      PicturePage page = new PicturePage(g);
      page(page);
      return page.height();
    } finally {
      g.dispose();
    }
  }

  private void page(PicturePage page) {
    soft(page, WORDS.say("debrief"));
    page.text(review.headline(), 44, true, PicturePage.COLOURS.text());
    page.space(8);
    soft(page, DebriefWords.asked(review));
    soft(page, DebriefWords.who(header, zone));
    page.space(22);
    ribbon(page);
    List<Review> rhythms = review.rhythms();
    for (Review rhythm : rhythms.subList(0, Math.min(rhythms.size(), MOST_PARTS))) {
      rhythm(page, rhythm, rhythms.size() == 1);
    }
    if (rhythms.size() > MOST_PARTS) {
      soft(page, WORDS.say("parts.left", rhythms.size() - MOST_PARTS));
    }
    heading(page, review.verdict().outcome().label());
    soft(page, review.rule());
    if (!review.reasons().isEmpty()) {
      soft(page, String.join("; ", review.reasons()));
    }
    findings(page);
    Prescription asked = review.asked();
    heading(page, DebriefWords.protocolHeading(asked));
    page.text(DebriefWords.protocol(asked), 22, false, PicturePage.COLOURS.text());
    // A service's own protocol is never taken for a guideline.
    asked
        .local()
        .ifPresent(
            label -> {
              soft(page, label.origin());
              label.differences().forEach(difference -> soft(page, difference));
            });
    review.sources().forEach(source -> soft(page, source.line() + "."));
    review.notes().stream()
        .limit(MOST_FINDINGS)
        .forEach(note -> soft(page, WORDS.say("note", note)));
    page.space(22);
    page.rule();
    page.space(12);
    page.text(Caution.TEXT, 22, true, PicturePage.COLOURS.text());
  }

  private void ribbon(PicturePage page) {
    heading(page, WORDS.say("ribbon"));
    page.picture(ReportPicture.ribbon(review, MOST_ROWS));
    page.space(6);
    soft(page, DebriefWords.legend(review));
    List<NotedFinding> found = review.found();
    for (int i = 0; i < Math.min(found.size(), MOST_FOUND); i++) {
      NotedFinding noted = found.get(i);
      String at = WORDS.say("found.at", i + 1, PartText.at(noted));
      soft(page, at + ": " + PartText.label(noted));
    }
    if (found.size() > MOST_FOUND) {
      soft(page, WORDS.say("more", found.size() - MOST_FOUND));
    }
  }

  private void rhythm(PicturePage page, Review rhythm, boolean only) {
    heading(
        page,
        only ? WORDS.say("figures") : PartText.span(rhythm) + ": " + PartText.situation(rhythm));
    page.cards(DebriefWords.cards(rhythm));
    ReportPicture.intervals(rhythm, review.startNanos())
        .ifPresent(
            intervals -> {
              page.space(16);
              soft(page, WORDS.say("intervals"));
              page.space(6);
              page.picture(intervals);
            });
  }

  private void findings(PicturePage page) {
    heading(page, WORDS.say("findings"));
    for (Feedback finding : review.findings().subList(0, shownFindings())) {
      page.text(
          finding.severity().label() + ": " + finding.title(),
          22,
          true,
          PicturePage.COLOURS.text());
      page.text(finding.text(), 20, false, PicturePage.COLOURS.softText());
      page.space(8);
    }
    int more = review.findings().size() - shownFindings();
    if (more > 0) {
      soft(page, WORDS.say("more", more));
    }
  }

  private int shownFindings() {
    return Math.min(review.findings().size(), MOST_FINDINGS);
  }

  private static void heading(PicturePage page, String text) {
    page.space(26);
    page.text(text, 26, true, PicturePage.COLOURS.text());
    page.space(8);
  }

  private static void soft(PicturePage page, String text) {
    page.text(text, 21, false, PicturePage.COLOURS.softText());
  }

  private static byte[] encode(BufferedImage image) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      IIOMetadata about =
          writer.getDefaultImageMetadata(
              ImageTypeSpecifier.createFromBufferedImageType(image.getType()), null);
      IIOMetadataNode size = new IIOMetadataNode("pHYs");
      String perMetre = Long.toString(Math.round(PicturePage.DOTS_PER_INCH / 0.0254));
      size.setAttribute("pixelsPerUnitXAxis", perMetre);
      size.setAttribute("pixelsPerUnitYAxis", perMetre);
      size.setAttribute("unitSpecifier", "meter");
      IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
      root.appendChild(size);
      about.mergeTree("javax_imageio_png_1.0", root);
      writer.write(new IIOImage(image, null, about));
    } catch (IOException e) {
      throw new IllegalStateException("a picture in memory can't be written", e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
