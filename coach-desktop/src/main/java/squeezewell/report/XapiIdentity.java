package squeezewell.report;

import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** What makes one practice this practice and no other. */
final class XapiIdentity {
  private XapiIdentity() {}

  /** A text that two sessions have in common only if the same was recorded in both. */
  static String of(Session session) {
    SessionHeader header = session.header();
    StringBuilder text = new StringBuilder(256);
    field(text, header.startedAt().toString());
    field(text, header.origin().word());
    field(text, header.trainee());
    field(text, header.protocol().id());
    field(text, header.plan().guidance().patient().id());
    field(text, header.plan().guidance().situation().id());
    field(text, Long.toString(header.plan().countInNanos()));
    field(text, Long.toString(header.plan().lengthNanos()));
    for (SessionEvent event : session.events()) {
      field(text, Long.toString(event.atNanos()));
      field(text, event.what().word());
      field(text, event.detail());
    }
    return text.toString();
  }

  /** With its length first, so that no text can run over into the next. */
  private static void field(StringBuilder text, String value) {
    text.append(value.length()).append(':').append(value).append('\n');
  }
}
