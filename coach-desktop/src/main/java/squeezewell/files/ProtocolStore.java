package squeezewell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;

/**
 * The guideline editions that come with the program and the local ones of a home. Immutable.
 *
 * @param protocols built-in editions first, newest first, then local ones by file name
 * @param problems why a local file is not among them; one sentence each
 * @param files where each local protocol is kept, by its identifier
 */
public record ProtocolStore(
    List<Protocol> protocols, List<String> problems, Map<String, Path> files) {
  public ProtocolStore {
    protocols = List.copyOf(protocols);
    problems = List.copyOf(problems);
    files = Map.copyOf(files);
  }

  /** As {@link #read(HomeFolder, List)}, with the editions that come with the program. */
  public static ProtocolStore read(HomeFolder home) {
    return read(home, GuidelineLibrary.editions());
  }

  /**
   * Reads what is there. A local file that can't be used is left out, with its problem listed.
   *
   * @param editions the built-in editions, newest first
   */
  public static ProtocolStore read(HomeFolder home, List<Protocol> editions) {
    List<Protocol> protocols = new ArrayList<>(editions);
    List<String> problems = new ArrayList<>();
    Map<String, Path> files = new HashMap<>();
    for (Path file : HomeFolder.jsonFiles(home.protocols(), problems)) {
      ProtocolReader.Checked checked = ProtocolReader.checkFile(file);
      if (checked.protocol().isEmpty()) {
        problems.add(HomeFolder.firstOf(checked.faults(), "protocol"));
        continue;
      }
      try {
        Protocol local = unique(file, checked.protocol().get(), protocols);
        protocols.add(local);
        files.put(local.id(), file);
      } catch (BadInputException e) {
        problems.add(e.getMessage());
      }
    }
    return new ProtocolStore(protocols, problems, files);
  }

  /** The identifiers of all protocols. */
  public Set<String> ids() {
    return protocols.stream().map(Protocol::id).collect(Collectors.toSet());
  }

  /**
   * The edition that a protocol stems from: itself if it is a guideline; empty if none is known.
   */
  public Optional<Protocol> baseOf(Protocol protocol) {
    return protocol.baseAmong(protocols);
  }

  /** The protocol of that identifier. */
  public Optional<Protocol> find(String id) {
    return protocols.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  /**
   * The protocol of that identifier.
   *
   * @param source what named it, for the message
   * @throws BadInputException if there is none; the message lists those there are
   */
  public Protocol require(String source, String id) throws BadInputException {
    String all = protocols.stream().map(Protocol::id).collect(Collectors.joining(", "));
    return find(id)
        .orElseThrow(() -> BadInputException.notAllowed(source, "", id, "one of " + all));
  }

  private static Protocol unique(Path file, Protocol read, List<Protocol> protocols)
      throws BadInputException {
    if (protocols.stream().anyMatch(other -> other.id().equals(read.id()))) {
      throw BadInputException.notAllowed(
          file.toString(), "id", read.id(), "an id that no other protocol has");
    }
    // A file that a service put here is local, whatever it says of itself.
    return read.asLocal();
  }
}
