package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.time.LocalDate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.files.LocalProtocolFile;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.words.Wording;

/** {@code protocol copy}: an edition as a file of its own. */
@Command(name = "copy")
final class ProtocolCopyCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(ProtocolCopyCommand.class);

  @Mixin HomeOption home = new HomeOption();

  @Parameters(paramLabel = "ID", descriptionKey = "ID")
  String id = "";

  @Option(names = "--out", paramLabel = "FILE", required = true)
  String out = "";

  @Option(names = "--organisation", paramLabel = "NAME")
  String organisation = WORDS.say("copy.organisation");

  @Option(names = "--title", paramLabel = "TEXT")
  String title = "";

  @Override
  public Integer call() throws BadInputException, IOException {
    ProtocolStore store = ProtocolStore.read(home.home());
    Protocol edition = store.require("protocol copy", id);
    int year = LocalDate.now(around.wallClock()).getYear();
    ProtocolDraft draft =
        set(
            ProtocolDraft.copyOf(edition, store.baseOf(edition), store.ids(), year),
            ProtocolDetail.ORGANISATION,
            "--organisation",
            organisation);
    if (!title.isEmpty()) {
      draft = set(draft, ProtocolDetail.TITLE, "--title", title);
    }
    if (Files.exists(OutputFile.path("--out", out), LinkOption.NOFOLLOW_LINKS)) {
      throw BadInputException.notAllowed("--out", "", out, "a file that is not there yet");
    }
    Protocol copy = draft.protocol();
    OutputFile.of("--out", out, false).write(LocalProtocolFile.text(copy));
    around.print(WORDS.say("copy.done", edition.title(), out, copy.id()));
    around.print(WORDS.say("copy.next"), "");
    return DONE;
  }

  private static ProtocolDraft set(
      ProtocolDraft draft, ProtocolDetail detail, String option, String text)
      throws BadInputException {
    ProtocolDraft changed = draft.with(detail, text);
    if (changed.fault(detail).isPresent()) {
      throw BadInputException.notAllowed(option, "", text, detail.allowed());
    }
    return changed;
  }
}
