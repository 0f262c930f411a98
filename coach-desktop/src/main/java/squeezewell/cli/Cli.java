package squeezewell.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;
import java.util.ResourceBundle;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import squeezewell.input.BadInputException;

/** The whole command line. */
public final class Cli {
  private static final int WIDTH = 80;

  private Cli() {}

  /**
   * Carries out one command.
   *
   * @param arguments the words after the program's name
   * @param around where to write and what to use
   * @return the exit code: 0 done, 1 could not do it, 2 bad usage or bad input
   */
  public static int run(String[] arguments, CliContext around) {
    CommandLine line = line(around);
    line.setOut(around.out());
    line.setErr(around.err());
    line.setParameterExceptionHandler((e, words) -> badUsage(e, around));
    line.setExecutionExceptionHandler((e, command, result) -> failed(e, around));
    int code = hasEmptyWord(arguments, around) ? CliCommand.BAD_INPUT : line.execute(arguments);
    if (around.out().checkError() && code == CliCommand.DONE) {
      around.say("squeezewell: the output could not be written");
      code = CliCommand.COULD_NOT;
    }
    around.err().flush();
    return code;
  }

  /** All commands with their options; help as it is printed. */
  static CommandLine line(CliContext around) {
    CommandLine line = new CommandLine(new TopCommand());
    line.setResourceBundle(ResourceBundle.getBundle("squeezewell.cli.help", Locale.ROOT));
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setUsageHelpWidth(WIDTH);
    line.setExpandAtFiles(false);
    OptionTypes.register(line);
    prepare(line, around);
    return line;
  }

  private static void prepare(CommandLine line, CliContext around) {
    CliCommand command = line.getCommand();
    command.around = around;
    command
        .footer()
        .ifPresent(text -> line.getCommandSpec().usageMessage().footer(text.split("\n", -1)));
    line.getSubcommands().values().forEach(sub -> prepare(sub, around));
  }

  /** An empty word is most often a script's variable that was never set. */
  private static boolean hasEmptyWord(String[] arguments, CliContext around) {
    for (int i = 0; i < arguments.length; i++) {
      if (arguments[i].isEmpty() || arguments[i].matches("--[a-z-]+=")) {
        around.say("squeezewell: word " + (i + 1) + " is empty; allowed: a value");
        return true;
      }
    }
    return false;
  }

  private static int badUsage(ParameterException e, CliContext around) {
    if (e.getCause() instanceof BadInputException bad) {
      return failed(bad, around);
    }
    String help = e.getCommandLine().getCommandSpec().qualifiedName();
    around.say("squeezewell: " + oneLine(e.getMessage()));
    around.say("For help: " + help + " --help");
    return CliCommand.BAD_INPUT;
  }

  private static int failed(Exception e, CliContext around) {
    around.out().flush();
    if (e instanceof BadInputException) {
      around.say("squeezewell: " + e.getMessage());
      return CliCommand.BAD_INPUT;
    }
    String text =
        e instanceof IOException io
            ? explain(io)
            : e instanceof CommandFailedException
                ? e.getMessage()
                : "something went wrong inside the program: " + e;
    around.say("squeezewell: " + oneLine(text));
    return CliCommand.COULD_NOT;
  }

  private static String explain(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + ": there is no such file or folder";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + ": this user may not do that";
    }
    if (e instanceof FileSystemException file) {
      return file.getFile() + ": " + (file.getReason() == null ? "it failed" : file.getReason());
    }
    return String.valueOf(e.getMessage());
  }

  /** Words that came from outside must not move the cursor of a terminal. */
  private static String oneLine(String text) {
    return text.replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]+", " ");
  }
}
