package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Palette;
import squeezewell.review.Reviewer;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

class ReviewPngTest {
  private static final Palette LIGHT = Palette.lightTheme();

  @Test
  void thePictureIsAsWideAsA4AtItsResolution() throws IOException {
    byte[] png = png(Reports.steady(6));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    // ISO 216: A4 is 210 mm by 297 mm; at 150 dots an inch 1240 by 1754.
    assertThat(image.getWidth()).isEqualTo(1240);
    assertThat(image.getHeight()).isGreaterThanOrEqualTo(1754).isLessThan(3000);
    // W3C PNG, 11.3.5.3: pHYs holds pixels per unit, twice, and 1 for the metre.
    int chunk = new String(png, StandardCharsets.ISO_8859_1).indexOf("pHYs");
    ByteBuffer size = ByteBuffer.wrap(png, chunk + 4, 9);
    assertThat(size.getInt()).isEqualTo(5906);
    assertThat(size.getInt()).isEqualTo(5906);
    assertThat(size.get()).isEqualTo((byte) 1);
  }

  @Test
  void breathsThatAreTooFastAreDrawnInTheirOwnColour() throws IOException {
    assertThat(pixels(png(Reports.steady(2)), LIGHT.sand())).isGreaterThan(2_000);
    assertThat(pixels(png(Reports.steady(6)), LIGHT.sand())).isZero();
    assertThat(pixels(png(Reports.steady(6)), LIGHT.tide())).isGreaterThan(2_000);
  }

  @Test
  void aChangedRhythmIsDrawnPartByPart() throws IOException {
    int changed = ImageIO.read(new ByteArrayInputStream(png(Reports.changing()))).getHeight();
    int steady = ImageIO.read(new ByteArrayInputStream(png(Reports.steady(6)))).getHeight();
    assertThat(changed).isGreaterThan(steady);
  }

  @Test
  void thePictureOfADayStaysOfASizeToLookAt() throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png(steady(24 * 3600, -1))));
    assertThat(image.getHeight()).isLessThan(3 * 1754);
  }

  @Test
  void whatHappenedInTheLastMinutesOfAnHourIsDrawn() throws IOException {
    // The ribbon shades a check as the chart shades the range: ten seconds of a row of 668 points
    // for 5 minutes, on both lanes, are 22 by 68 points, and each point is 2 pixels.
    long without = pixels(png(steady(3600, -1)), LIGHT.mist());
    assertThat(pixels(png(steady(3600, 3500)), LIGHT.mist())).isGreaterThan(without + 1_000);
  }

  /** A breath every 6 s, and a check of 10 s at a second of it; none for less than 0. */
  private static Session steady(long seconds, long checkAt) {
    SessionHeader header = Reports.steady(6).header();
    List<SessionEvent> events = new ArrayList<>();
    for (long second = 0; second < seconds; second++) {
      long at = second * Reports.SECOND;
      if (checkAt >= 0 && (second == checkAt || second == checkAt + 10)) {
        EventType what = second == checkAt ? EventType.PULSE_CHECK : EventType.PULSE_CHECK_END;
        events.add(SessionEvent.of(events.size() + 1, at, what, ""));
      }
      if (second % 6 == 0) {
        events.add(SessionEvent.of(events.size() + 1, at, EventType.BREATH, ""));
      }
    }
    events.add(SessionEvent.of(events.size() + 1, seconds * Reports.SECOND, EventType.FINISH, ""));
    return new Session(
        new SessionHeader(
            header.startedAt(),
            header.origin(),
            "",
            header.protocol(),
            new PracticePlan(header.plan().guidance(), 0, seconds * Reports.SECOND, 0)),
        events,
        List.of());
  }

  private static byte[] png(Session session) {
    return ReviewPng.of(session.header(), Reviewer.review(session), Reports.ZONE);
  }

  private static long pixels(byte[] png, Color colour) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    long found = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        found += image.getRGB(x, y) == colour.getRGB() ? 1 : 0;
      }
    }
    return found;
  }
}
