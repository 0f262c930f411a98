package squeezewell.station.file;

import java.util.Objects;

/**
 * One way that a branch can go.
 *
 * @param branch identifier of the branch
 * @param option identifier of the way
 */
public record BranchOption(String branch, String option) {
  public BranchOption {
    Objects.requireNonNull(branch, "branch");
    Objects.requireNonNull(option, "option");
  }

  /** As it stands in a journal and on the command line: {@code branch=option}. */
  public String words() {
    return branch + "=" + option;
  }
}
