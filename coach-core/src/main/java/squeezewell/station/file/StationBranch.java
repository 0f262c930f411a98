package squeezewell.station.file;

import java.util.List;

/**
 * A point where the station can go several ways. The way is settled before the station begins, by
 * chance or by the instructor.
 *
 * @param id identifier
 * @param words what differs, for people
 * @param ways the ways there are, at least two
 */
public record StationBranch(String id, String words, List<Way> ways) implements StationEntry {
  public StationBranch {
    ways = List.copyOf(ways);
  }

  /**
   * One way.
   *
   * @param id identifier, unlike that of the branch's other ways
   * @param words for people
   * @param weight how often chance takes it, beside the weights of the others; 0 is never
   * @param findings identifiers of findings that then are there from the start of the exercise
   */
  public record Way(String id, String words, int weight, List<String> findings)
      implements StationEntry {
    public Way {
      findings = List.copyOf(findings);
    }
  }
}
