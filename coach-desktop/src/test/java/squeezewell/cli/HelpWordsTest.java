package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The help of each command, option and parameter stands in the bundle, and nothing else does. */
class HelpWordsTest {
  private final Set<String> used = new TreeSet<>();

  @Test
  void theBundleHoldsJustWhatTheHelpSays() {
    CommandLine line = Cli.line(new CliRun.Screen().around());
    ResourceBundle words = line.getResourceBundle();
    check(line, words);
    assertThat(words.keySet()).containsExactlyInAnyOrderElementsOf(used);
  }

  private void check(CommandLine line, ResourceBundle words) {
    String command = line.getCommandSpec().qualifiedName(".");
    use(words, command + ".usage.description");
    for (ArgSpec each : line.getCommandSpec().args()) {
      String key =
          each instanceof OptionSpec option
              ? option.longestName().replaceFirst("^-+", "")
              : each.descriptionKey();
      String own = command + "." + key;
      use(words, words.keySet().stream().anyMatch(k -> is(k, own)) ? own : key);
      assertThat(List.of(each.description())).as(own).isNotEmpty();
    }
    line.getSubcommands().values().forEach(sub -> check(sub, words));
  }

  private void use(ResourceBundle words, String key) {
    assertThat(words.keySet()).as(key).anyMatch(k -> is(k, key));
    words.keySet().stream().filter(k -> is(k, key)).forEach(used::add);
  }

  /** Help of several lines has a key for each. */
  private static boolean is(String key, String wanted) {
    return key.equals(wanted) || key.matches(Pattern.quote(wanted) + "\\.\\d");
  }
}
