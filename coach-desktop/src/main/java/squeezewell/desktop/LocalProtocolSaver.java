package squeezewell.desktop;

import java.io.IOException;
import java.util.Optional;
import squeezewell.desktop.screens.ProtocolEditScreen.Saving;
import squeezewell.files.HomeFolder;
import squeezewell.files.LocalProtocolFile;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDraft;

/** Keeps a local protocol that is being edited: in a new file at first, then in the same one. */
final class LocalProtocolSaver {
  private final HomeFolder home;
  private Optional<LocalProtocolFile> file;

  /** For a protocol that has no file yet. */
  LocalProtocolSaver(HomeFolder home) {
    this.home = home;
    this.file = Optional.empty();
  }

  /** For a protocol that was opened from a file. */
  LocalProtocolSaver(HomeFolder home, LocalProtocolFile opened) {
    this.home = home;
    this.file = Optional.of(opened);
  }

  boolean hasFile() {
    return file.isPresent();
  }

  /** Keeps a draft that has no faults. */
  Saving save(ProtocolDraft draft) {
    Protocol protocol = draft.protocol();
    try {
      LocalProtocolFile now =
          file.isPresent()
              ? file.get().replace(protocol)
              : LocalProtocolFile.create(home, protocol);
      file = Optional.of(now);
      return new Saving(
          true,
          "Saved in "
              + now.path()
              + ". It stands in the list of guidelines on the first screen, marked as local.");
    } catch (BadInputException e) {
      return new Saving(false, "Not saved. " + e.getMessage());
    } catch (IOException e) {
      return new Saving(false, "Not saved: the file can't be written (" + e.getMessage() + ").");
    }
  }
}
