package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;

class NamedUuidTest {
  /** RFC 9562, appendix A.4 (also erratum 1352 of RFC 4122), typed from memory. */
  @Test
  void thePublishedExampleComesOut() {
    UUID names = UUID.fromString("6ba7b810-9dad-11d1-80b4-00c04fd430c8");
    assertThat(NamedUuid.of(names, "www.example.com"))
        .hasToString("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  }

  @Test
  void theVersionIsFiveAndTheVariantThatOfTheRfc() {
    UUID made = NamedUuid.of(new UUID(0, 0), "any");
    assertThat(made.version()).isEqualTo(5);
    assertThat(made.variant()).isEqualTo(2);
  }
}
