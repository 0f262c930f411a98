package squeezewell.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import squeezewell.report.Caution;
import squeezewell.words.Wording;

/** What all commands have. */
abstract class CliCommand implements Callable<Integer> {
  /** Exit code: done. */
  static final int DONE = 0;

  /** Exit code: could not do it. */
  static final int COULD_NOT = 1;

  /** Exit code: bad usage or bad input. */
  static final int BAD_INPUT = 2;

  static final String CAUTION = String.join("\n", Caution.LINE_1, Caution.LINE_2, Caution.LINE_3);
  private static final Wording WORDS = Wording.beside(CliCommand.class);

  /** Given by {@link Cli} before anything else is done. */
  CliContext around;

  @Spec CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true)
  boolean help;

  /** What stands below its help, if anything does; lines. */
  final Optional<String> footer() {
    String key = "footer." + spec.name();
    return WORDS.has(key) ? Optional.of("\n" + WORDS.say(key, footerValues())) : Optional.empty();
  }

  /** What is named in the words below its help; the caution first. */
  Object[] footerValues() {
    return new Object[] {CAUTION};
  }

  /** A command that only holds others. */
  abstract static class Group extends CliCommand {
    @Override
    public final Integer call() {
      String words = String.join(", ", spec.subcommands().keySet());
      throw new ParameterException(
          spec.commandLine(), spec.name() + " needs one of these words: " + words);
    }
  }
}
