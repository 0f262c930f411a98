package squeezewell.protocol;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;

/**
 * The guideline editions that come with the program. Each call reads files anew: a caller reads
 * what it needs once and hands it on.
 */
public final class GuidelineLibrary {
  /** Newest first: the first that covers a situation is the default for it. */
  private static final List<String> IDS =
      List.of("aha-2025", "erc-2025", "nrp-8", "erc-2021", "aha-2020", "aha-2015");

  private GuidelineLibrary() {}

  /**
   * All editions, newest first.
   *
   * @throws IllegalStateException if the program's own files are damaged
   */
  public static List<Protocol> editions() {
    List<Protocol> editions = new ArrayList<>();
    for (String id : IDS) {
      editions.add(read(id));
    }
    return List.copyOf(editions);
  }

  /**
   * The edition of that identifier.
   *
   * @throws IllegalStateException if the program's own file is damaged
   */
  public static Optional<Protocol> find(String id) {
    return IDS.contains(id) ? Optional.of(read(id)) : Optional.empty();
  }

  /**
   * The edition that a protocol stems from: itself if it is a guideline; empty if none is known.
   */
  public static Optional<Protocol> baseOf(Protocol protocol) {
    return protocol.local() ? find(protocol.basedOn()) : Optional.of(protocol);
  }

  private static Protocol read(String id) {
    String name = id + ".json";
    InputStream stream =
        Objects.requireNonNull(GuidelineLibrary.class.getResourceAsStream(name), name);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      return ProtocolReader.readText(name, reader.lines().collect(Collectors.joining("\n")));
    } catch (IOException | BadInputException e) {
      throw new IllegalStateException("the built-in edition " + id + " is damaged", e);
    }
  }
}
