package squeezewell;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Finds classes that all lead to one another. What is written in one file counts as one class, so a
 * record in a class is no ring with it. Two classes lie in one ring if each can be reached from the
 * other.
 */
final class ClassRings {
  private final Map<String, Set<String>> arrows = new HashMap<>();

  private ClassRings() {}

  /** The rings of more than so many classes, each as its names in order. */
  static List<String> largerThan(int most, JavaClasses classes) {
    ClassRings rings = new ClassRings();
    for (JavaClass each : classes) {
      String from = file(each);
      Set<String> to = rings.arrows.computeIfAbsent(from, name -> new HashSet<>());
      for (Dependency dependency : each.getDirectDependenciesFromSelf()) {
        to.add(file(dependency.getTargetClass()));
      }
    }
    Map<String, Set<String>> reached =
        rings.arrows.keySet().stream()
            .collect(Collectors.toMap(name -> name, rings::reachedFrom, (a, b) -> a, TreeMap::new));
    return reached.keySet().stream()
        .map(name -> ring(name, reached))
        .filter(ring -> ring.size() > most)
        .map(ring -> String.join(" ", ring))
        .distinct()
        .toList();
  }

  private static Set<String> ring(String name, Map<String, Set<String>> reached) {
    Set<String> ring = new TreeSet<>(Set.of(name));
    for (String other : reached.get(name)) {
      if (reached.containsKey(other) && reached.get(other).contains(name)) {
        ring.add(other);
      }
    }
    return ring;
  }

  private Set<String> reachedFrom(String start) {
    Set<String> reached = new HashSet<>();
    Deque<String> waiting = new ArrayDeque<>(List.of(start));
    while (!waiting.isEmpty()) {
      for (String next : arrows.getOrDefault(waiting.remove(), Set.of())) {
        if (reached.add(next)) {
          waiting.add(next);
        }
      }
    }
    return reached;
  }

  private static String file(JavaClass type) {
    String name = type.getBaseComponentType().getName();
    int inner = name.indexOf('$');
    return inner < 0 ? name : name.substring(0, inner);
  }
}
