package squeezewell.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
  @TempDir Path folder;

  @Test
  void whatIsThereIsReplacedOnlyWhenThatWasAskedFor() throws Exception {
    Path file = folder.resolve("report.html");
    WholeFile.write(file, "first", false);
    assertThatThrownBy(() -> WholeFile.write(file, "second", false))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("first");
    WholeFile.write(file, "second", true);
    assertThat(file).hasContent("second");
  }

  @Test
  void aTextThatCanNotBeWrittenLeavesTheOldFileAndNoPart() throws Exception {
    Path file = folder.resolve("report.html");
    WholeFile.write(file, "first", false);
    // Half of a pair of chars is no sign, and can't be written as UTF-8.
    assertThatThrownBy(() -> WholeFile.write(file, "x".repeat(100_000) + "\uD83D", true))
        .isInstanceOf(IOException.class);
    assertThat(file).hasContent("first");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }
}
