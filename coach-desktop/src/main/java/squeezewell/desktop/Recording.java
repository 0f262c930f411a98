package squeezewell.desktop;

import squeezewell.cue.PracticePlan;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.KeptSession;
import squeezewell.live.PracticeSound;
import squeezewell.protocol.Protocol;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;

/**
 * What anything that runs has of its own: its time, its file and its sound.
 *
 * @param clock session time, which has begun
 * @param kept what is recorded
 * @param sound follows the clock
 */
record Recording(MonotonicClock clock, KeptSession kept, PracticeSound sound) {
  /** Begins now. */
  static Recording begin(HomeFolder home, Settings settings, Protocol protocol, PracticePlan plan) {
    MonotonicClock clock = MonotonicClock.startNow();
    SessionHeader header =
        new SessionHeader(
            clock.startedAt(), SessionHeader.Origin.LIVE, settings.trainee(), protocol, plan);
    return new Recording(
        clock,
        KeptSession.create(home.newSessionFile(header.startedAt()), header),
        new PracticeSound(clock, settings));
  }

  /** What a person must know of saving or else of sound; empty if all is well. */
  String notice() {
    return kept.trouble().isEmpty() ? sound.notice() : kept.trouble();
  }

  /** Whether some rhythm of a plan has compressions. */
  static boolean mayCompress(PracticePlan plan) {
    return plan.all().stream().anyMatch(g -> g.rhythm().compressions().isPresent());
  }
}
