package squeezewell.station;

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
}
