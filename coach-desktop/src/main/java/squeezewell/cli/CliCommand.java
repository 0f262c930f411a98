package squeezewell.cli;

import java.util.Objects;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What all commands have. */
abstract class CliCommand implements Callable<Integer> {
  /** Exit code: done. */
  static final int DONE = 0;

  /** Exit code: could not do it. */
  static final int COULD_NOT = 1;

  /** Exit code: bad usage or bad input. */
  static final int BAD_INPUT = 2;

  final Surroundings around;

  @Spec CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help and stop.")
  boolean help;

  CliCommand(Surroundings around) {
    this.around = Objects.requireNonNull(around, "around");
  }
}
