package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;

/** Keeps the facts of a station in memory, and sees that they come in order. */
public final class Facts implements StationOutput {
  public final List<SessionEvent> events = new ArrayList<>();

  @Override
  public void fact(Fact fact, long atNanos) {
    if (!events.isEmpty()) {
      assertThat(atNanos).isGreaterThanOrEqualTo(events.get(events.size() - 1).atNanos());
    }
    events.add(new SessionEvent(events.size() + 1, atNanos, fact));
  }

  List<String> details(EventType what) {
    List<String> details = new ArrayList<>();
    for (SessionEvent event : events) {
      if (event.what() == what) {
        details.add(event.detail());
      }
    }
    return details;
  }
}
