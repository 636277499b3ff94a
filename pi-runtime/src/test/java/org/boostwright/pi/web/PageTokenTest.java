package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A hand-over: the last owner's secret opens nothing any more. */
class PageTokenTest {
  @TempDir Path folder;

  @Test
  void aResetReplacesTheSecretForItsOwnerOnly() throws Exception {
    Path file = folder.resolve("page-token");
    PageToken first = PageToken.load(file);
    String old = Files.readString(file).strip();
    String fresh = PageToken.reset(file);
    assertThat(fresh).hasSize(20).isNotEqualTo(old);
    PageToken second = PageToken.load(file);
    assertThat(second.matches(fresh)).isTrue();
    assertThat(second.matches(old)).isFalse();
    assertThat(first.matches(old)).as("a page that runs keeps its own").isTrue();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.toList()).isEqualTo(List.of(file));
    }
  }

  @Test
  void aFileThatOthersCouldReadIsClosedAgainByAReset() throws Exception {
    Path file = Files.writeString(folder.resolve("page-token"), "an old and open secret\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    String fresh = PageToken.reset(file);
    assertThat(PageToken.load(file).matches(fresh)).isTrue();
  }
}
