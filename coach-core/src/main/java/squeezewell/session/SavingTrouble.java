package squeezewell.session;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import squeezewell.words.Wording;

/** Why something could not be saved, for people. The system's own message is often a path alone. */
public final class SavingTrouble {
  private static final Wording WORDS = Wording.beside(SavingTrouble.class);

  private SavingTrouble() {}

  /** That a practice is not being saved, and why. */
  public static String notSaved(IOException e) {
    return WORDS.say("not-saved", reason(e));
  }

  /** Why a file or folder could not be written or read, with its path. */
  public static String reason(IOException e) {
    if (!(e instanceof FileSystemException trouble)) {
      return String.valueOf(e.getMessage());
    }
    String file = trouble.getFile();
    String reason = trouble.getReason();
    String kind =
        e instanceof AccessDeniedException
            ? "access-denied"
            : e instanceof NoSuchFileException
                ? "no-such-file"
                : e instanceof FileAlreadyExistsException ? "already-there" : "other";
    return WORDS.say(
        kind, String.valueOf(file), reason == null ? e.getClass().getSimpleName() : reason);
  }
}
