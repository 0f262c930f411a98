package squeezewell.input;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class BadInputExceptionTest {
  @Test
  void aMessageNamesTheFileThePlaceTheValueAndWhatIsAllowed() {
    assertThat(BadInputException.notAllowed("a.json", "year", "1066", "1950 to 2100"))
        .hasMessage("a.json: year is 1066; allowed: 1950 to 2100");
    assertThat(BadInputException.missing("a.json", "year", "1950 to 2100"))
        .hasMessage("a.json: year is missing; allowed: 1950 to 2100");
    assertThat(BadInputException.fault("a.json", "", "there is no such file"))
        .hasMessage("a.json: there is no such file");
  }

  @Test
  void aLongValueIsShortenedBetweenCharacters() {
    String smile = "😀";
    String message = BadInputException.notAllowed("a", "b", smile.repeat(1_000), "c").getMessage();
    assertThat(message).isEqualTo("a: b is " + smile.repeat(60) + "…; allowed: c");
  }

  /** Whatever part the hostile text comes in by. */
  @Property
  void nothingThatATerminalObeysIsInAMessage(@ForAll String hostile) {
    for (BadInputException e :
        new BadInputException[] {
          BadInputException.notAllowed(hostile, "b", "c", "d"),
          BadInputException.notAllowed("a", hostile, "c", "d"),
          BadInputException.notAllowed("a", "b", hostile, "d"),
          BadInputException.notAllowed("a", "b", "c", hostile),
          BadInputException.missing("a", hostile, hostile),
          BadInputException.fault("a", hostile, hostile),
        }) {
      assertThat(e.getMessage().codePoints())
          .noneMatch(
              c ->
                  Character.isISOControl(c)
                      || Character.getType(c) == Character.FORMAT
                      || c == 0x2028
                      || c == 0x2029
                      || Character.getType(c) == Character.SURROGATE);
    }
  }
}
