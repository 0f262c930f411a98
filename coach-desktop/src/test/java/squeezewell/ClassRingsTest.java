package squeezewell;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

class ClassRingsTest {
  @Test
  void classesThatLeadToOneAnotherAreARingAndWhatOnlyLeadsThereIsNot() {
    assertThat(
            ClassRings.largerThan(
                2,
                new ClassFileImporter()
                    .importClasses(First.class, Second.class, Third.class, Outside.class)))
        .containsExactly("squeezewell.First squeezewell.Second squeezewell.Third");
  }

  @Test
  void twoMayLeadToEachOther() {
    assertThat(
            ClassRings.largerThan(
                2, new ClassFileImporter().importClasses(First.class, Second.class)))
        .isEmpty();
  }
}

/** Leads to the second, which leads back, and to the third. */
record First(Second second, Third third) {}

record Second(First first) {}

record Third(Second second) {}

record Outside(First first) {}
