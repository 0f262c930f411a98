package squeezewell.desktop;

import java.awt.Component;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import javax.swing.JFileChooser;
import squeezewell.report.StationHtml;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.station.run.StationResult;
import squeezewell.storage.WholeFile;

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
    try {
      if (write(parent, file, page)) {
        Dialogs.say(
            parent, TITLE, "Saved as " + file + "\nPage for any browser, to read or print.");
      }
    } catch (IOException e) {
      Dialogs.tell(parent, TITLE, file + " can't be written: " + e.getMessage());
    }
  }

  /** Whether it was written. */
  private static boolean write(Component parent, Path file, byte[] page) throws IOException {
    try {
      WholeFile.write(file, page, false);
      return true;
    } catch (FileAlreadyExistsException e) {
      if (!Dialogs.mayReplace(parent, TITLE, file)) {
        return false;
      }
      WholeFile.write(file, page, true);
      return true;
    }
  }
}
