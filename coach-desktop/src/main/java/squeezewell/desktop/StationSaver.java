package squeezewell.desktop;

import java.awt.Component;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import javax.swing.JFileChooser;
import squeezewell.report.StationHtml;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.station.run.StationResult;

/** Saves the sheet of a station as a page, where the person wants it. */
final class StationSaver {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("'squeezewell-station-'yyyy-MM-dd_HHmmss'.html'", Locale.ROOT);
  private static final String TITLE = "Save sheet";

  private StationSaver() {}

  static void save(
      Component parent, Session session, StationResult result, Review review, ZoneId zone) {
    JFileChooser chooser = new JFileChooser();
    chooser.setDialogTitle(TITLE);
    chooser.setSelectedFile(new File(NAME.format(session.header().startedAt().atZone(zone))));
    if (chooser.showSaveDialog(parent) != JFileChooser.APPROVE_OPTION) {
      return;
    }
    Path named = chooser.getSelectedFile().toPath();
    String name = named.getFileName().toString();
    Path file =
        name.toLowerCase(Locale.ROOT).endsWith(".html")
            ? named
            : named.resolveSibling(name + ".html");
    byte[] page =
        StationHtml.of(session.header(), result, review, zone).getBytes(StandardCharsets.UTF_8);
    Dialogs.save(parent, TITLE, file, page, "Page for any browser, to read or print");
  }
}
