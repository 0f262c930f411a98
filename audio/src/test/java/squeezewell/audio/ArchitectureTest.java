package squeezewell.audio;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

@AnalyzeClasses(
    packages = "squeezewell.audio",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule ONLY_THE_EDGE_TOUCHES_THE_SOUND_CARD =
      noClasses()
          .that()
          .haveSimpleNameNotStartingWith("JavaSound")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javax.sound..");

  @ArchTest
  static final ArchRule NO_NETWORK_AND_NO_WINDOWS =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.net..", "java.nio.channels..", "java.awt..", "javax.swing..");

  /** Classes that can only be understood together are few: a ring has at most two. */
  @ArchTest
  static void noRingHasMoreThanTwoClasses(JavaClasses classes) {
    Map<String, Set<String>> uses = new TreeMap<>();
    for (JavaClass each : classes) {
      each.getDirectDependenciesFromSelf().stream()
          .map(d -> outermost(d.getTargetClass()))
          .filter(name -> name.startsWith("squeezewell.audio."))
          .forEach(name -> uses.computeIfAbsent(outermost(each), n -> new TreeSet<>()).add(name));
    }
    for (String each : uses.keySet()) {
      Set<String> ring = reached(each, uses);
      ring.removeIf(other -> !reached(other, uses).contains(each));
      assertThat(ring).as("ring of " + each).hasSizeLessThanOrEqualTo(2);
    }
  }

  private static Set<String> reached(String from, Map<String, Set<String>> uses) {
    Set<String> reached = new TreeSet<>();
    Deque<String> left = new ArrayDeque<>(uses.getOrDefault(from, Set.of()));
    while (!left.isEmpty()) {
      String next = left.pop();
      if (reached.add(next)) {
        left.addAll(uses.getOrDefault(next, Set.of()));
      }
    }
    return reached;
  }

  private static String outermost(JavaClass inner) {
    String name = inner.getBaseComponentType().getName();
    int nested = name.indexOf('$');
    return nested < 0 ? name : name.substring(0, nested);
  }
}
