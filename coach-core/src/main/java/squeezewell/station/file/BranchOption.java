package squeezewell.station.file;

/**
 * One way that a branch can go.
 *
 * @param branch identifier of the branch
 * @param option identifier of the way
 */
public record BranchOption(String branch, String option) {
  /** As it stands in a journal and on the command line: {@code branch=option}. */
  public String words() {
    return branch + "=" + option;
  }
}
