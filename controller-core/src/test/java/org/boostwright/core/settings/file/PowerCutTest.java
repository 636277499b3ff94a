package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * E2: whenever the power goes while settings are written, the file is whole: the old or the new.
 */
@Tag("E2")
class PowerCutTest {
  private static final Path FILE = Path.of("/nowhere/car.toml");

  private final byte[] old = Example.full().getBytes(StandardCharsets.UTF_8);
  private final byte[] fresh =
      Example.full().replace("name ", "name  ").getBytes(StandardCharsets.UTF_8);

  @Test
  void powerCutAtEveryStepLeavesTheOldOrTheNewFileWhole() throws IOException {
    boolean finished = false;
    int cuts = 0;
    while (!finished) {
      PowerCutDisk disk = new PowerCutDisk(FILE, old, cuts);
      try {
        AtomicFile.write(disk, FILE, fresh);
        finished = true;
      } catch (PowerCutDisk.PowerCut e) {
        cuts++;
      }
      for (byte[] content : disk.possible(FILE)) {
        assertThat(Arrays.equals(content, old) || Arrays.equals(content, fresh))
            .as("cut before step %d", cuts)
            .isTrue();
      }
      if (finished) {
        assertThat(disk.possible(FILE)).singleElement().isEqualTo(fresh);
      }
    }
    // create, write (two moments), force, rename, force the folder
    assertThat(cuts).isEqualTo(6);
  }

  /** The model can fail: leave out the force, or write in place, and a torn file is possible. */
  @Test
  void writerWithoutForceOrInPlaceIsCaughtByTheSameTest() {
    PowerCutDisk noForce = new PowerCutDisk(FILE, old, 100);
    Path beside = noForce.createBeside(FILE);
    noForce.write(beside, fresh);
    noForce.rename(beside, FILE);
    noForce.forceFolder(FILE.getParent());
    assertThat(torn(noForce)).isTrue();

    PowerCutDisk inPlace = new PowerCutDisk(FILE, old, 100);
    inPlace.write(FILE, fresh);
    assertThat(torn(inPlace)).isTrue();
  }

  private boolean torn(PowerCutDisk disk) {
    return disk.possible(FILE).stream()
        .anyMatch(content -> !Arrays.equals(content, old) && !Arrays.equals(content, fresh));
  }

  @Test
  void realDiskReplacesTheFileAndLeavesNothingBeside(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("car.toml");
    Files.write(file, old);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
    AtomicFile.write(file, fresh);
    assertThat(file).hasBinaryContent(fresh);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-r-----");
    assertThat(names(folder)).containsExactly("car.toml");
  }

  @Test
  void linkIsFollowedAndStaysALink(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("real.toml");
    Files.write(file, old);
    Path link = Files.createSymbolicLink(folder.resolve("car.toml"), file);
    AtomicFile.write(link, fresh);
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(file).hasBinaryContent(fresh);
  }

  @Test
  void failureKeepsTheOldFileAndRemovesTheNewOne(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("car.toml");
    Files.write(file, old);
    for (String failing : List.of("write", "force", "rename")) {
      assertThatThrownBy(() -> AtomicFile.write(new FailingDisk(failing), file, fresh))
          .isInstanceOf(IOException.class)
          .hasMessage("disk full");
      assertThat(file).hasBinaryContent(old);
      assertThat(names(folder)).containsExactly("car.toml");
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(path -> path.getFileName().toString()).toList();
    }
  }

  /** The machine's disk, on which one step fails. */
  private record FailingDisk(String failing, Disk real) implements Disk {
    FailingDisk(String failing) {
      this(failing, new RealDisk());
    }

    private void check(String step) throws IOException {
      if (step.equals(failing)) {
        throw new IOException("disk full");
      }
    }

    @Override
    public Path createBeside(Path file) throws IOException {
      return real.createBeside(file);
    }

    @Override
    public void write(Path file, byte[] content) throws IOException {
      check("write");
      real.write(file, content);
    }

    @Override
    public void force(Path file) throws IOException {
      check("force");
      real.force(file);
    }

    @Override
    public void rename(Path from, Path to) throws IOException {
      check("rename");
      real.rename(from, to);
    }

    @Override
    public void forceFolder(Path folder) throws IOException {
      real.forceFolder(folder);
    }

    @Override
    public void remove(Path file) throws IOException {
      real.remove(file);
    }
  }
}
