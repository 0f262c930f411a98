package squeezewell.report;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import squeezewell.review.Asked;
import squeezewell.review.Finding;
import squeezewell.review.Metrics;
import squeezewell.review.Review;
import squeezewell.session.SessionHeader;

/**
 * A debrief as a picture file, as wide as a sheet of A4 and at least as high: headline, figures,
 * both pictures of {@link ReviewSvg}, findings, guideline and caution. Drawn without a window.
 */
public final class ReviewPng {
  /** The ribbon of a longer practice is cut here, so that the file stays of a size to look at. */
  static final long LONGEST_RIBBON_NANOS = 30 * 60_000_000_000L;

  private static final int MOST_PARTS = 6;
  private static final int MOST_FINDINGS = 8;
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

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
    ReviewFonts.install();
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
    Graphics2D g = image.createGraphics();
    try {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      g.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      g.setColor(PageColours.GROUND);
      g.fillRect(0, 0, image.getWidth(), image.getHeight());
      PicturePage page = new PicturePage(g);
      page(page);
      return page.height();
    } finally {
      g.dispose();
    }
  }

  private void page(PicturePage page) {
    soft(page, "Debrief");
    page.text(review.headline(), 44, true, PageColours.TEXT);
    page.space(8);
    soft(page, asked());
    soft(page, who());
    page.space(22);
    ribbon(page);
    List<Review> rhythms = review.rhythms();
    for (int i = 0; i < Math.min(rhythms.size(), MOST_PARTS); i++) {
      rhythm(page, rhythms.get(i), rhythms.size() == 1 ? "" : "Part " + (i + 1) + ": ");
    }
    if (rhythms.size() > MOST_PARTS) {
      soft(page, "and " + (rhythms.size() - MOST_PARTS) + " more parts");
    }
    heading(page, review.verdict().outcome().label());
    soft(page, review.verdict().rule());
    findings(page);
    heading(page, "Guideline");
    Asked asked = review.asked();
    page.text(
        asked.protocolTitle()
            + ", "
            + asked.organisation()
            + ", "
            + asked.year()
            + (header.protocol().local() ? " (local)" : "")
            + ".",
        22,
        false,
        PageColours.TEXT);
    soft(page, asked.source().line() + ".");
    review.notes().stream().limit(MOST_FINDINGS).forEach(note -> soft(page, "Note: " + note));
    page.space(22);
    page.rule();
    page.space(12);
    page.text(Caution.TEXT, 22, true, PageColours.TEXT);
  }

  private void ribbon(PicturePage page) {
    heading(page, "What was asked, what was done");
    page.picture(ReviewSvg.ribbon(beginning(review)));
    page.space(6);
    soft(
        page,
        "Above: prompts, hollow if missed. Below: breaths, as long as the squeeze;"
            + " a tip upwards came too soon, a tip downwards too late."
            + (review.endNanos() > LONGEST_RIBBON_NANOS
                ? " Only the first " + Words.clock(LONGEST_RIBBON_NANOS) + " are drawn."
                : ""));
  }

  private static void rhythm(PicturePage page, Review rhythm, String name) {
    String intervals = ReviewSvg.intervals(rhythm);
    heading(
        page,
        name.isEmpty()
            ? "Figures"
            : name
                + rhythm.asked().situation()
                + ", from "
                + Words.clock(rhythm.startNanos())
                + " to "
                + Words.clock(rhythm.endNanos()));
    page.cards(cards(rhythm));
    if (!intervals.isEmpty()) {
      page.space(16);
      soft(page, "Seconds between breaths");
      page.space(6);
      page.picture(intervals);
    }
  }

  private void findings(PicturePage page) {
    heading(page, "What to take from it");
    for (Finding finding : review.findings().subList(0, shownFindings())) {
      page.text(finding.severity().label() + ": " + finding.title(), 22, true, PageColours.TEXT);
      page.text(finding.text(), 20, false, PageColours.SOFT);
      page.space(8);
    }
    int more = review.findings().size() - shownFindings();
    if (more > 0) {
      soft(page, "and " + more + " more");
    }
  }

  private int shownFindings() {
    return Math.min(review.findings().size(), MOST_FINDINGS);
  }

  private String asked() {
    Asked asked = review.asked();
    return Words.clock(asked.practisedNanos())
        + ", "
        + asked.patient().toLowerCase(Locale.ROOT)
        + ", "
        + asked.situation()
        + " ("
        + asked.protocolTitle()
        + ")";
  }

  private String who() {
    String trainee = header.trainee().isEmpty() ? "" : header.trainee() + ", ";
    String when = WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone));
    return switch (header.origin()) {
      case LIVE -> trainee + "practised live, " + when;
      case VIRTUAL -> trainee + "a virtual practice, not a person, " + when;
      case EVENT_LIST -> trainee + "from a list of events";
    };
  }

  private static List<PicturePage.Card> cards(Review rhythm) {
    Metrics metrics = rhythm.metrics();
    Asked asked = rhythm.asked();
    List<PicturePage.Card> cards = new ArrayList<>();
    OptionalDouble interval = asked.intervalSeconds();
    if (interval.isPresent()) {
      OptionalDouble rate = metrics.rate().overallPerMinute();
      cards.add(
          new PicturePage.Card(
              rate.isPresent() ? Words.upTo(rate.getAsDouble(), 1) : "—",
              "breaths a minute",
              "asked: " + Words.upTo(60 / interval.getAsDouble(), 1)));
      int count = metrics.interval().count();
      cards.add(
          new PicturePage.Card(
              count == 0 ? "—" : metrics.interval().inRangeCount() + " of " + count,
              "intervals in range",
              range(asked.lowNanos(), asked.highNanos())));
    } else {
      cards.add(
          new PicturePage.Card(
              Integer.toString(metrics.breathCount()), "breaths", asked.compressions()));
      metrics
          .compressions()
          .filter(c -> c.ratePerMinute().isPresent())
          .ifPresent(
              c ->
                  cards.add(
                      new PicturePage.Card(
                          Words.upTo(c.ratePerMinute().getAsDouble(), 0),
                          "compressions a minute",
                          c.count() + " compressions")));
    }
    cards.add(
        new PicturePage.Card(
            Words.upTo(metrics.gap().longestSeconds(), 1) + " s",
            "longest time without a breath",
            Words.upTo(metrics.gap().longestNetSeconds(), 1) + " s without checks and pauses"));
    return cards;
  }

  private static String range(OptionalLong low, OptionalLong high) {
    return low.isPresent() && high.isPresent()
        ? Words.upTo(low.getAsLong() / 1e9, 2)
            + " to "
            + Words.upTo(high.getAsLong() / 1e9, 2)
            + " s"
        : "";
  }

  /** The review cut off where the ribbon is cut; only what the ribbon draws is cut with it. */
  private static Review beginning(Review review) {
    long end = Math.min(review.endNanos(), LONGEST_RIBBON_NANOS);
    return new Review(
        review.asked(),
        review.startNanos(),
        end,
        review.metrics(),
        review.breaths().stream().filter(b -> b.startNanos() < end).collect(Collectors.toList()),
        review.compressions().stream().filter(c -> c.atNanos() < end).collect(Collectors.toList()),
        review.prompts().stream().filter(p -> p.atNanos() < end).collect(Collectors.toList()),
        List.of(),
        List.of(),
        review.holds().stream().filter(h -> h.startNanos() < end).collect(Collectors.toList()),
        review.silences().stream().filter(s -> s.startNanos() < end).collect(Collectors.toList()),
        review.alignment(),
        review.findings(),
        review.verdict(),
        review.notes(),
        review.found().stream().filter(f -> f.atNanos() < end).collect(Collectors.toList()),
        List.of());
  }

  private static void heading(PicturePage page, String text) {
    page.space(26);
    page.text(text, 26, true, PageColours.TEXT);
    page.space(8);
  }

  private static void soft(PicturePage page, String text) {
    page.text(text, 21, false, PageColours.SOFT);
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
