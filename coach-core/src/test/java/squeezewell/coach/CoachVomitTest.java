package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * Vomit in an arrest. That compressions are interrupted as little as possible and for under 10 s is
 * the American Heart Association's (2020, adult basic and advanced life support); that they need no
 * interruption for breaths with an advanced airway too. That somebody else clears the airway
 * meanwhile, and that the breaths that waited come first, follows from it and is from memory. AHA
 * 2020: 30:2, our pace 110 a minute; with an advanced airway a breath every 6 s. Instants are
 * worked by hand: the compression k stands at k x 60 / 110 s.
 */
class CoachVomitTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long SECOND = TestPlans.SECOND;
  private static final Protocol EDITION = TestPlans.edition("aha-2020");

  private final MemoryJournal journal = new MemoryJournal();
  private final Recorder output = new Recorder();
  private Coach coach;
  private PracticePlan plan;

  private void start(PatientGroup patient, Situation situation, int rescuers) {
    Guidance guidance = EDITION.find(patient, situation, rescuers).orElseThrow();
    plan = PracticePlan.of(EDITION, guidance, rescuers, 0, 300 * SECOND, 0);
    coach = new Coach(plan, journal, List.of(output));
  }

  private void advance(long millis) {
    long to = millis * MILLI;
    while (coach.nextDueNanos().isPresent() && coach.nextDueNanos().getAsLong() < to) {
      coach.advance(coach.nextDueNanos().getAsLong());
    }
  }

  private void find(PatientChange finding, long millis) {
    advance(millis);
    coach.find(finding, millis * MILLI);
  }

  private void command(Command command, long millis) {
    advance(millis);
    coach.command(command, millis * MILLI);
  }

  private List<Long> squeezeMillis() {
    return output.instantsOf(CueKind.SQUEEZE).stream().map(n -> n / MILLI).toList();
  }

  private List<Long> compressMillis(long from, long to) {
    return output.instantsOf(CueKind.COMPRESS).stream()
        .map(n -> n / MILLI)
        .filter(n -> n >= from && n < to)
        .collect(Collectors.toList());
  }

  @Test
  void compressionsGoOnInStepWhileTheAirwayIsClearedAndTheBreathsThatWaitedComeFirst() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    find(PatientChange.VOMIT, 10_000);
    assertThat(journal.lines()).containsExactly("10000 finding vomit", "10000 suction compressing");
    command(Command.SUCTION_END, 20_000);
    advance(25_000);
    // The breaths of 16.4 and 18.4 s are left out; compressions 18 to 36 stand at 9.818 to 19.636.
    assertThat(compressMillis(9_700, 20_000)).hasSize(19).startsWith(9_818L, 10_363L, 10_909L);
    assertThat(compressMillis(9_700, 20_000)).endsWith(19_090L, 19_636L);
    assertThat(squeezeMillis()).containsExactly(20_000L, 22_000L);
    // 4 s for two breaths, then a new cycle.
    assertThat(compressMillis(20_000, 25_000)).containsExactly(24_000L, 24_545L);
  }

  @Test
  void withAnAdvancedAirwayEvenOneWhoIsAloneIsAskedToCompressOn() {
    start(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY, 1);
    find(PatientChange.VOMIT, 10_000);
    command(Command.SUCTION_END, 20_000);
    advance(27_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 20_000L, 26_000L);
    // Without a break: 49.5 periods of 0.5454 s in 27 s, so 50 compressions.
    assertThat(compressMillis(0, 27_000)).hasSize(50);
    assertThat(compressMillis(19_000, 21_000)).containsExactly(19_090L, 19_636L, 20_181L, 20_727L);
  }

  @Test
  void oneWhoIsAloneCannotDoBoth() {
    start(PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    find(PatientChange.VOMIT, 10_000);
    assertThat(journal.lines()).containsExactly("10000 finding vomit", "10000 suction");
    command(Command.SUCTION_END, 18_000);
    advance(19_000);
    assertThat(compressMillis(10_000, 19_000)).containsExactly(18_000L, 18_545L);
    assertThat(squeezeMillis()).isEmpty();
  }

  /**
   * An adult's 30:2 is for any number of rescuers; that one person can't compress and suction does
   * not depend on the age of the patient.
   */
  @Test
  void norCanOneWhoIsAloneWithAnAdult() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    assertThat(plan.guidance().rescuers()).isZero();
    find(PatientChange.VOMIT, 10_000);
    assertThat(journal.lines()).containsExactly("10000 finding vomit", "10000 suction");
    assertThat(coach.state().course().advice(PatientChange.VOMIT))
        .doesNotContain("Compressions go on");
    command(Command.SUCTION_END, 18_000);
    advance(19_000);
    assertThat(compressMillis(10_000, 19_000)).containsExactly(18_000L, 18_545L);
    assertThat(squeezeMillis()).isEmpty();
  }

  @Test
  void aSlipOfOneWhoIsAloneLeadsBackToCompressions() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    find(PatientChange.VOMIT, 10_000);
    command(Command.UNDO_FINDING, 12_000);
    advance(13_000);
    assertThat(journal.lines())
        .containsExactly(
            "10000 finding vomit",
            "10000 suction",
            "12000 finding-undone 1",
            "12000 suction-end slip");
    assertThat(compressMillis(10_000, 13_000)).containsExactly(12_000L, 12_545L);
  }

  @Test
  void theFileOfOneWhoIsAloneTellsTheSamePrompts() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    find(PatientChange.VOMIT, 10_000);
    command(Command.SUCTION_END, 18_000);
    Session session = new Session(TestPlans.header(plan), journal.events, List.of());
    assertThat(session.schedule().segments()).isEqualTo(coach.state().schedule().segments());
    // A file of before, in which one who was alone was told to compress on, is read as it was.
    List<SessionEvent> told =
        journal.events.stream()
            .map(
                e ->
                    SessionEvent.of(
                        e.number(),
                        e.atNanos(),
                        e.what(),
                        e.what() == EventType.SUCTION ? "compressing" : e.detail()))
            .collect(Collectors.toList());
    Session before = new Session(TestPlans.header(plan), told, List.of());
    assertThat(before.schedule().stretchAt(12 * SECOND).compressing()).isTrue();
  }

  @Test
  void aCompressionOfOneWhoIsAloneEndsSuction() {
    start(PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    command(Command.SUCTION, 10_000);
    command(Command.COMPRESS, 10_300);
    assertThat(journal.lines())
        .containsExactly("10000 suction", "10300 suction-end", "10300 compression");
  }

  @Test
  void aPulseMeansThatEverythingElseWaits() {
    start(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2);
    find(PatientChange.VOMIT, 10_000);
    advance(20_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L);
    assertThat(journal.lines()).containsExactly("10000 finding vomit", "10000 suction");
  }

  @Test
  void suctionByHandIsTheSame() {
    start(PatientGroup.INFANT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    command(Command.SUCTION, 4_000);
    advance(8_000);
    assertThat(journal.lines()).containsExactly("4000 suction compressing");
    assertThat(compressMillis(4_000, 8_000)).hasSize(7);
  }

  @Test
  void compressionsDoNotEndItButABreathDoes() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    find(PatientChange.VOMIT, 10_000);
    command(Command.COMPRESS, 10_500);
    command(Command.COMPRESS, 11_000);
    assertThat(coach.state().schedule().stretchAt(12 * SECOND).kind())
        .isEqualTo(Segment.Kind.SUCTION);
    command(Command.SQUEEZE, 14_000);
    assertThat(journal.lines()).endsWith("14000 suction-end", "14000 breath");
  }

  @Test
  void aPulseThatComesBackLeavesSuctionWithoutCompressions() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    find(PatientChange.VOMIT, 10_000);
    find(PatientChange.PULSE_BACK, 13_000);
    command(Command.SUCTION_END, 18_000);
    advance(25_000);
    assertThat(compressMillis(13_000, 25_000)).isEmpty();
    assertThat(squeezeMillis()).containsExactly(18_000L, 24_000L);
  }

  @Test
  void theFileTellsTheSamePromptsAndAnOlderOneWithoutTheWordStillStopsAll() {
    start(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    find(PatientChange.VOMIT, 10_000);
    command(Command.SUCTION_END, 20_000);
    Session session = new Session(TestPlans.header(plan), journal.events, List.of());
    assertThat(session.schedule().segments()).isEqualTo(coach.state().schedule().segments());
    Session older =
        new Session(
            TestPlans.header(plan),
            journal.events.stream()
                .map(
                    e ->
                        SessionEvent.of(
                            e.number(),
                            e.atNanos(),
                            e.what(),
                            e.detail().equals("compressing") ? "" : e.detail()))
                .collect(Collectors.toList()),
            List.of());
    assertThat(older.schedule().between(10_100 * MILLI, 20_000 * MILLI))
        .noneMatch(c -> c.kind() == CueKind.COMPRESS);
  }
}
