package squeezewell.desktop;

import java.awt.Component;
import squeezewell.review.Review;
import squeezewell.session.Session;

final class ReportSaver {
  private ReportSaver() {}

  static void save(Component parent, Session session, Review review) {}
}
