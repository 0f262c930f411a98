package squeezewell.protocol;

import java.util.Objects;

/**
 * How fast to compress the chest.
 *
 * @param tempo the rate that is prompted
 * @param lowPerMinute lowest published rate
 * @param highPerMinute highest published rate
 * @param source where the prompted rate comes from
 * @param rangeSource where the range comes from
 */
public record CompressionPlan(
    Tempo tempo, double lowPerMinute, double highPerMinute, Citation source, Citation rangeSource) {
  public CompressionPlan {
    Objects.requireNonNull(tempo, "tempo");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(rangeSource, "rangeSource");
    if (!(lowPerMinute > 0 && lowPerMinute <= highPerMinute && highPerMinute < 1e6)) {
      throw new IllegalArgumentException(
          "the range " + lowPerMinute + " to " + highPerMinute + " /min makes no sense");
    }
  }
}
