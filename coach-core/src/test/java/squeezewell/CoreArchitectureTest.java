package squeezewell;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import squeezewell.session.MonotonicClock;

/** The arrows between the rooms of the core, and what the core must do without. */
@AnalyzeClasses(packages = "squeezewell", importOptions = ImportOption.DoNotIncludeTests.class)
class CoreArchitectureTest {
  @ArchTest static final ArchRule wordsKnowNobody = knowsOnly("words");

  @ArchTest static final ArchRule inputKnowsNobody = knowsOnly("input");

  @ArchTest static final ArchRule protocolKnowsInput = knowsOnly("protocol", "input");

  @ArchTest static final ArchRule cueKnowsProtocol = knowsOnly("cue", "protocol", "input");

  @ArchTest
  static final ArchRule sessionKnowsCueAndProtocol =
      knowsOnly("session", "cue", "protocol", "input");

  @ArchTest
  static final ArchRule storageKnowsSessionAndInput = knowsOnly("storage", "session", "input");

  @ArchTest
  static final ArchRule coachKnowsSessionCueAndProtocol =
      knowsOnly("coach", "session", "cue", "protocol");

  @ArchTest
  static final ArchRule reviewKnowsSessionCueAndProtocol =
      knowsOnly("review", "session", "cue", "protocol", "input");

  @ArchTest
  static final ArchRule traineeKnowsReviewSessionCueAndProtocol =
      knowsOnly("trainee", "review", "session", "cue", "protocol");

  @ArchTest static final ArchRule patientDoesNotKnowReview = doesNotKnow("patient", "review");

  @ArchTest
  static final ArchRule equipmentKnowsProtocolAndInput =
      knowsOnly("equipment", "protocol", "input");

  @ArchTest static final ArchRule equipmentDoesNotKnowSession = doesNotKnow("equipment", "session");

  @ArchTest
  static final ArchRule stationKnowsTheLivePracticeAndKit =
      knowsOnly("station", "coach", "session", "cue", "protocol", "equipment", "input");

  @ArchTest static final ArchRule stationDoesNotKnowReview = doesNotKnow("station", "review");

  @ArchTest
  static final ArchRule aStationFileKnowsNoRun =
      knowsOnly("station.file", "cue", "protocol", "equipment", "input");

  @ArchTest
  static final ArchRule measureKnowsNoJudgement =
      knowsOnly("review.measure", "session", "cue", "protocol");

  @ArchTest
  static final ArchRule judgeKnowsMeasure =
      knowsOnly("review.judge", "review.measure", "session", "cue", "protocol");

  @ArchTest
  static final ArchRule nothingIsJudgedInWords =
      noClasses()
          .that()
          .resideInAPackage("squeezewell.review.judge..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("squeezewell.words..", "java.text..");

  @ArchTest
  static final ArchRule sayKnowsMeasureAndJudge =
      knowsOnly("review.say", "review.measure", "review.judge", "session", "cue", "protocol");

  @ArchTest
  static final ArchRule compareStandsBeside =
      knowsOnly(
          "review.compare",
          "review.measure",
          "review.judge",
          "review.say",
          "session",
          "cue",
          "protocol");

  @ArchTest
  static final ArchRule noRoomOfReviewKnowsTheFront =
      noClasses()
          .that()
          .resideInAPackage("squeezewell.review.*..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("squeezewell.review");

  @ArchTest
  static void noMoreThanTwoClassesStandInARing(JavaClasses classes) {
    assertThat(ClassRings.largerThan(2, classes)).isEmpty();
    assertThat(ClassRings.largerThan(1, classes)).hasSizeLessThanOrEqualTo(8);
  }

  @ArchTest
  static final ArchRule thereAreNoCycles =
      slices().matching("squeezewell.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule coreRunsOnAPhoneWithoutANetwork =
      noClasses()
          .should()
          .dependOnClassesThat(
              resideInAnyPackage(
                  "java.net..",
                  "java.net.http..",
                  "java.awt..",
                  "javax..",
                  "java.rmi..",
                  "java.util.logging..",
                  "java.lang.reflect..",
                  "sun..",
                  "com.sun.."));

  @ArchTest
  static final ArchRule coreHasNoThreads =
      noClasses()
          .should()
          .dependOnClassesThat(resideInAPackage("java.util.concurrent.."))
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Thread.class)
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(java.util.Timer.class);

  @ArchTest
  static final ArchRule corePrintsNothingAndEndsNothing =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .callMethod(Throwable.class, "printStackTrace");

  @ArchTest
  static final ArchRule onlyOneClassReadsTheTime =
      noClasses()
          .that()
          .doNotBelongToAnyOf(MonotonicClock.class)
          .should()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethodWhere(
              target(nameMatching("now|system.*"))
                  .and(target(owner(resideInAPackage("java.time..")))))
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class);

  @ArchTest
  static final ArchRule thereIsNoStateForAll = fields().that().areStatic().should().beFinal();

  @ArchTest
  static final ArchRule nothingIsInjectedIntoFields =
      noFields().that().areNotStatic().should().bePublic();

  private static ArchRule knowsOnly(String room, String... neighbours) {
    String[] allowed = new String[neighbours.length + 2];
    allowed[0] = "squeezewell." + room + "..";
    allowed[1] = "squeezewell.words..";
    for (int i = 0; i < neighbours.length; i++) {
      allowed[i + 2] = "squeezewell." + neighbours[i] + "..";
    }
    return noClasses()
        .that()
        .resideInAPackage("squeezewell." + room + "..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("squeezewell..")
                .and(not(resideInAnyPackage(allowed)))
                .as("any room but " + String.join(", ", allowed)))
        .allowEmptyShould(true);
  }

  private static ArchRule doesNotKnow(String room, String other) {
    return noClasses()
        .that()
        .resideInAPackage("squeezewell." + room + "..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("squeezewell." + other + "..")
        .allowEmptyShould(true);
  }
}
