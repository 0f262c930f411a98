package squeezewell.input;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InputFileTest {
  @TempDir Path folder;

  @Test
  void whatIsMissingAFolderOrTooLargeIsToldApart() throws Exception {
    assertThatThrownBy(() -> InputFile.require(folder.resolve("a.json"), 10))
        .isInstanceOf(BadInputException.class)
        .hasMessageEndingWith("a.json: there is no such file");
    assertThatThrownBy(() -> InputFile.require(folder, 10))
        .isInstanceOf(BadInputException.class)
        .hasMessageEndingWith("a folder or a device; allowed: an ordinary file");
    Path file = Files.write(folder.resolve("b.json"), new byte[11]);
    assertThatThrownBy(() -> InputFile.require(file, 10))
        .isInstanceOf(BadInputException.class)
        .hasMessageEndingWith("size is 11 bytes; allowed: at most 10 bytes");
    assertThatCode(() -> InputFile.require(file, 11)).doesNotThrowAnyException();
  }
}
