package squeezewell.desktop;

import java.awt.Component;
import java.io.File;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.filechooser.FileFilter;
import squeezewell.report.ReportKind;
import squeezewell.review.say.Review;
import squeezewell.session.Session;

/** Saves the report of a practice where the person wants it, as the kind that they choose. */
final class ReportSaver {
  private static final String TITLE = "Save report";
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("'squeezewell-'yyyy-MM-dd_HHmmss", Locale.ROOT);

  private ReportSaver() {}

  /** One kind of file, as the dialog offers it. */
  private static final class KindFilter extends FileFilter {
    private final ReportKind kind;

    KindFilter(ReportKind kind) {
      this.kind = kind;
    }

    @Override
    public boolean accept(File file) {
      return file.isDirectory() || ReportKind.named(file.getName(), kind).orElse(null) == kind;
    }

    @Override
    public String getDescription() {
      return kind.label() + " (" + kind.ending() + ")";
    }
  }

  static void save(Component parent, Session session, Review review, ZoneId zone) {
    JFileChooser chooser = chooser(session, zone);
    if (chooser.showSaveDialog(parent) != JFileChooser.APPROVE_OPTION) {
      return;
    }
    ReportKind chosen = chosen(chooser);
    File named = chooser.getSelectedFile();
    // A name without an ending gets that of the chosen kind; a name with one decides itself.
    Optional<ReportKind> asked =
        ReportKind.named(named.getName(), chosen).filter(ReportKind.of(session)::contains);
    ReportKind kind = asked.orElse(chosen);
    Path file =
        asked.isPresent()
            ? named.toPath()
            : named.toPath().resolveSibling(named.getName() + kind.ending());
    Dialogs.save(parent, TITLE, file, kind.content(session, review, zone), kind.label());
  }

  private static JFileChooser chooser(Session session, ZoneId zone) {
    JFileChooser chooser = new JFileChooser();
    chooser.setDialogTitle(TITLE);
    chooser.setAcceptAllFileFilterUsed(false);
    for (ReportKind kind : ReportKind.of(session)) {
      chooser.addChoosableFileFilter(new KindFilter(kind));
    }
    chooser.setFileFilter(chooser.getChoosableFileFilters()[0]);
    String name = NAME.format(session.header().startedAt().atZone(zone));
    chooser.setSelectedFile(new File(name + ReportKind.PAGE.ending()));
    chooser.addPropertyChangeListener(
        JFileChooser.FILE_FILTER_CHANGED_PROPERTY,
        changed -> {
          File before = chooser.getSelectedFile();
          String known = before == null ? name : before.getName();
          chooser.setSelectedFile(
              new File(chooser.getCurrentDirectory(), chosen(chooser).rename(known)));
        });
    return chooser;
  }

  private static ReportKind chosen(JFileChooser chooser) {
    return chooser.getFileFilter() instanceof KindFilter filter ? filter.kind : ReportKind.PAGE;
  }
}
