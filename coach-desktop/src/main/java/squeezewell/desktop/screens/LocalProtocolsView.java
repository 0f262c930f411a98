package squeezewell.desktop.screens;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import squeezewell.files.ProtocolStore;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;

/**
 * The local protocols that there are. Pure.
 *
 * @param locals in the order of their files
 */
record LocalProtocolsView(List<Local> locals) {

  /**
   * One of them.
   *
   * @param name its name
   * @param lines what tells it from a guideline, and where it is kept; a paragraph each
   * @param file where it is kept
   */
  record Local(String name, List<String> lines, Path file) {}

  static LocalProtocolsView of(ProtocolStore store) {
    List<Local> locals = new ArrayList<>();
    for (Protocol protocol : store.protocols()) {
      Path file = store.files().get(protocol.id());
      if (file != null) {
        List<String> lines = new ArrayList<>();
        LocalLabel.of(protocol, store.baseOf(protocol))
            .map(Phrases::local)
            .ifPresent(lines::addAll);
        lines.add("Kept in " + file);
        locals.add(new Local(protocol.title(), lines, file));
      }
    }
    return new LocalProtocolsView(List.copyOf(locals));
  }
}
