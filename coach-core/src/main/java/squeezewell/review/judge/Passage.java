package squeezewell.review.judge;

import java.util.List;
import java.util.Optional;

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
}
