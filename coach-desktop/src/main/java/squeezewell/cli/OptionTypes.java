package squeezewell.cli;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import squeezewell.coach.TraineeFault;
import squeezewell.cue.CueFader;
import squeezewell.cue.Prompting;
import squeezewell.files.LastChoice;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Age;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.protocol.Weight;
import squeezewell.station.run.StationMode;

/** How the text of an option becomes its value; each names its option where it can't. */
final class OptionTypes {
  private OptionTypes() {}

  /** Lets a command line, with all commands that it has by now, take values of our types. */
  static void register(CommandLine line) {
    line.registerConverter(Age.class, text -> Age.parse("--age", text));
    line.registerConverter(Weight.class, text -> Weight.parse("--weight", text));
    line.registerConverter(
        PatientGroup.class, words("--patient", PatientGroup.values(), PatientGroup::id));
    line.registerConverter(
        Situation.class, words("--situation", Situation.values(), Situation::id));
    line.registerConverter(
        Prompting.class, words("--prompts", Prompting.values(), Prompting::word));
    line.registerConverter(
        TraineeFault.class, words("--fault", TraineeFault.values(), TraineeFault::id));
    line.registerConverter(
        StationMode.class, words("--mode", StationMode.values(), StationMode::word));
  }

  private static <T> ITypeConverter<T> words(
      String option, T[] choices, Function<T, String> wordOf) {
    return text -> word(option, text, choices, wordOf);
  }

  /** The choice of that word. */
  static <T> T word(String option, String word, T[] choices, Function<T, String> wordOf)
      throws BadInputException {
    for (T choice : choices) {
      if (wordOf.apply(choice).equals(word)) {
        return choice;
      }
    }
    throw BadInputException.notAllowed(
        option,
        "",
        word,
        "one of " + Arrays.stream(choices).map(wordOf).collect(Collectors.joining(", ")));
  }

  /** A whole number within limits, both included. */
  private abstract static class Whole implements ITypeConverter<Long> {
    private final String option;
    private final long least;
    private final long most;

    private Whole(String option, long least, long most) {
      this.option = option;
      this.least = least;
      this.most = most;
    }

    @Override
    public Long convert(String text) throws BadInputException {
      if (text.matches("-?\\d{1,19}")) {
        BigInteger number = new BigInteger(text);
        if (number.compareTo(BigInteger.valueOf(least)) >= 0
            && number.compareTo(BigInteger.valueOf(most)) <= 0) {
          return number.longValueExact();
        }
      }
      throw BadInputException.notAllowed(
          option, "", text, "a whole number from " + least + " to " + most);
    }
  }

  /** {@code --seed}. */
  static final class Seed extends Whole {
    Seed() {
      super("--seed", Long.MIN_VALUE, Long.MAX_VALUE);
    }
  }

  /** {@code --rescuers}. */
  static final class Rescuers extends Whole {
    Rescuers() {
      super("--rescuers", 1, LastChoice.MOST_RESCUERS);
    }
  }

  /** {@code --start-level}. */
  static final class StartLevel extends Whole {
    StartLevel() {
      super("--start-level", 0, CueFader.HIGHEST_START);
    }
  }

  /** {@code --rate}, in frames a second. */
  static final class FrameRate implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) throws BadInputException {
      if (text.equals("44100") || text.equals("48000")) {
        return Integer.valueOf(text);
      }
      throw BadInputException.notAllowed("--rate", "", text, "44100 or 48000");
    }
  }

  /** {@code --minutes}, to nanoseconds. */
  static final class Minutes implements ITypeConverter<Long> {
    private static final BigDecimal NANOS = BigDecimal.valueOf(60_000_000_000L);
    private static final BigDecimal MOST = BigDecimal.valueOf(24 * 60);

    @Override
    public Long convert(String text) throws BadInputException {
      if (text.matches("\\d{1,4}(\\.\\d{1,6})?")) {
        BigDecimal number = new BigDecimal(text);
        if (number.signum() > 0 && number.compareTo(MOST) <= 0) {
          return number.multiply(NANOS).setScale(0, RoundingMode.HALF_UP).longValueExact();
        }
      }
      throw BadInputException.notAllowed(
          "--minutes", "", text, "a number above 0, at most " + MOST.toPlainString());
    }
  }
}
