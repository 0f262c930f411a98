package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.review.measure.Analysis;

/**
 * The findings of the parts of a practice. Each says for which parts it holds; what holds for
 * several is told once, with what each of them adds.
 */
final class PartFindings {
  /** Figures of so many parts are told in one finding (our own choice). */
  private static final int MOST_TOLD = 3;

  private final int parts;
  private final Map<List<Object>, Map<Where, Finding>> alike = new LinkedHashMap<>();

  private PartFindings(int parts) {
    this.parts = parts;
  }

  /**
   * @param parts those that are judged, in order
   * @param found the findings of each
   */
  static List<Finding> of(List<Analysis> parts, List<List<Finding>> found) {
    PartFindings findings = new PartFindings(parts.size());
    for (int i = 0; i < parts.size(); i++) {
      Where where = Where.of(parts.get(i).practice());
      for (Finding one : found.get(i)) {
        findings
            .alike
            .computeIfAbsent(
                Arrays.asList(one.code(), one.severity(), one.title()), k -> new LinkedHashMap<>())
            .put(where, one);
      }
    }
    return findings.alike.values().stream().map(findings::joined).collect(Collectors.toList());
  }

  private Finding joined(Map<Where, Finding> same) {
    Set<Sentence> said = new HashSet<>();
    List<Passage> passages = new ArrayList<>();
    int more = 0;
    for (Map.Entry<Where, Finding> one : same.entrySet()) {
      // What was told for one part need not be told again for the next; figures are.
      List<Sentence> news =
          one.getValue().passages().get(0).sentences().stream()
              .filter(sentence -> said.add(sentence) || sentence.hasFigures())
              .collect(Collectors.toList());
      if (passages.size() >= MOST_TOLD) {
        more++;
      } else if (!news.isEmpty()) {
        passages.add(new Passage(Optional.of(one.getKey()), news));
      }
    }
    Finding first = same.values().iterator().next();
    return new Finding(
        first.code(),
        first.severity(),
        same.values().stream().mapToInt(Finding::priority).min().getAsInt(),
        first.title(),
        same.size() == parts ? List.of() : new ArrayList<>(same.keySet()),
        passages,
        more);
  }
}
