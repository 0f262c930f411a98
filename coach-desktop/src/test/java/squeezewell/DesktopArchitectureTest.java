package squeezewell;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.CompressionPlan;
import squeezewell.review.say.Prescription;

/** The arrows of the desktop, and what no class of ours may do. */
@AnalyzeClasses(packages = "squeezewell", importOptions = ImportOption.DoNotIncludeTests.class)
class DesktopArchitectureTest {
  @ArchTest
  static final ArchRule nobodyUsesTheNetwork =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.net", "java.net.http", "javax.net..", "java.nio.channels.spi");

  @ArchTest
  static final ArchRule onlyTheAudioModuleTouchesSoundDevices =
      noClasses()
          .that()
          .resideOutsideOfPackage("squeezewell.audio")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javax.sound..");

  @ArchTest
  static final ArchRule theCommandLineKnowsNoWindow =
      noClasses()
          .that()
          .resideInAnyPackage("squeezewell.cli", "squeezewell.files", "squeezewell.live")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("squeezewell.desktop..", "javax.swing..", "java.awt..");

  @ArchTest
  static final ArchRule theWindowKnowsNoCommandLine =
      noClasses()
          .that()
          .resideInAPackage("squeezewell.desktop..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("squeezewell.cli..");

  @ArchTest
  static final ArchRule whatTheScreensSayIsWorkedOutWithoutSwing =
      noClasses()
          .that()
          .haveSimpleNameEndingWith("View")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javax.swing..", "java.awt..");

  /** The protocol judges; a screen that shows a range asks for it as a whole. */
  @ArchTest
  static final ArchRule noViewAsksForTheEndsOfARange =
      noClasses()
          .that()
          .resideInAnyPackage("squeezewell.desktop..", "squeezewell.picture..")
          .should()
          .callMethodWhere(
              target(owner(assignableTo(BreathPlan.class)))
                  .or(target(owner(assignableTo(CompressionPlan.class))))
                  .or(target(owner(assignableTo(Prescription.class))))
                  .and(target(nameMatching("(low|high)(Nanos|PerMinute)"))));

  /** Besides the protocol itself only what writes a plan out whole. */
  @ArchTest
  static final ArchRule whoJudgesAsksThePlan =
      noClasses()
          .that()
          .resideOutsideOfPackage("squeezewell.protocol..")
          .and()
          .doNotHaveSimpleName("Prescription")
          .and()
          .doNotHaveSimpleName("ProtocolJson")
          .and()
          .doNotHaveSimpleName("ProtocolText")
          .and()
          .doNotHaveSimpleName("SideBySide")
          .should()
          .callMethodWhere(
              target(owner(assignableTo(BreathPlan.class)))
                  .or(target(owner(assignableTo(CompressionPlan.class))))
                  .and(target(nameMatching("(low|high)(Nanos|PerMinute)"))));

  @ArchTest
  static final ArchRule partsKnowNoScreens =
      noClasses()
          .that()
          .resideInAnyPackage("squeezewell.desktop.parts", "squeezewell.desktop.look")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("squeezewell.desktop.screens", "squeezewell.files..");

  @ArchTest
  static final ArchRule onlyMainEndsTheProgram =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("squeezewell.Main")
          .should()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule packagesHaveNoCycles =
      slices().matching("squeezewell.(**)").should().beFreeOfCycles();

  @ArchTest
  static void noMoreThanTwoClassesStandInARing(JavaClasses classes) {
    List<String> rings =
        ClassRings.largerThan(
            2, classes.that(resideInAnyPackage("squeezewell.desktop..", "squeezewell.live..")));
    assertThat(rings).isEmpty();
  }

  @ArchTest
  static final ArchRule aScreenIsNoneOfTheWindowsOwn =
      noClasses()
          .that()
          .resideInAnyPackage("squeezewell.desktop.screens..", "squeezewell.desktop.input..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("squeezewell.desktop");
}
