package squeezewell.review.judge;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a finding says of one part.
 *
 * @param where the part; empty for the whole practice
 * @param sentences in order
 */
public record Passage(Optional<Where> where, List<Sentence> sentences) {
  public Passage {
    sentences = List.copyOf(sentences);
  }

  /** The sentences of a kind, in order. */
  public List<Sentence> sentences(Sentence.Kind kind) {
    return sentences.stream().filter(s -> s.kind() == kind).collect(Collectors.toList());
  }
}
