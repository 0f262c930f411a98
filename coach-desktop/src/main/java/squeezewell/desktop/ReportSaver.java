package squeezewell.desktop;

import java.awt.Component;
import java.io.File;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import squeezewell.files.WholeFile;
import squeezewell.report.ReviewHtml;
import squeezewell.review.Review;
import squeezewell.session.Session;

/** Saves the report of a practice where the person wants it. */
final class ReportSaver {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("'squeezewell-'yyyy-MM-dd_HHmmss'.html'");

  private ReportSaver() {}

  static void save(Component parent, Session session, Review review, ZoneId zone) {
    JFileChooser chooser = new JFileChooser();
    chooser.setDialogTitle("Save report");
    chooser.setSelectedFile(new File(NAME.format(session.header().startedAt().atZone(zone))));
    if (chooser.showSaveDialog(parent) != JFileChooser.APPROVE_OPTION) {
      return;
    }
    Path file = chooser.getSelectedFile().toPath();
    String html = ReviewHtml.of(session.header(), review, zone);
    try {
      if (write(parent, file, html)) {
        JOptionPane.showMessageDialog(
            parent,
            "Saved as " + file + "\nIt opens in any browser and can be printed from there.",
            "Save report",
            JOptionPane.INFORMATION_MESSAGE);
      }
    } catch (IOException e) {
      JOptionPane.showMessageDialog(
          parent,
          file + " can't be written: " + e.getMessage(),
          "Save report",
          JOptionPane.WARNING_MESSAGE);
    }
  }

  /** Whether it was written. */
  private static boolean write(Component parent, Path file, String html) throws IOException {
    try {
      WholeFile.write(file, html, false);
      return true;
    } catch (FileAlreadyExistsException e) {
      int answer =
          JOptionPane.showConfirmDialog(
              parent,
              file.getFileName() + " is there already. Replace it?",
              "Save report",
              JOptionPane.OK_CANCEL_OPTION);
      if (answer != JOptionPane.OK_OPTION) {
        return false;
      }
      WholeFile.write(file, html, true);
      return true;
    }
  }
}
