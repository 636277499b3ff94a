package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.zip.CRC32;
import org.boostwright.rig.link.VirtualCarSide;

/**
 * The program's classes in the form in which Java loads them quickest, made by the guest's own Java
 * and kept as long as the packaged program and the image stay the same. Without it every start
 * costs the emulator twice the time.
 */
final class ClassArchive {
  private static final double LONGEST_SECONDS = 60.0;

  private ClassArchive() {}

  /** The archive, made when there is none that fits. */
  static Path of(KernelBench.Plan plan, KernelBench bench) throws IOException {
    Path base = base(plan);
    Path kept = base.resolve("archive-" + digest(plan) + ".jsa");
    Path folder = Files.createDirectories(plan.folder().resolve("archive"));
    Path archive = folder.resolve("boostwright-pi.jsa");
    if (!Files.exists(kept)) {
      GuestDisk disk = bench.disk(folder, archive, false);
      try (KernelRig rig = bench.rig(disk, new VirtualCarSide(bench.car()))) {
        GuestShell.Answer answer =
            rig.shell()
                .run(
                    "BOOSTWRIGHT_JAVA=/java JAVA_TOOL_OPTIONS=-Xint /opt/boostwright/bin/boostwright-pi --archive"
                        + " /data/car.toml 2>&1; mkdir /data/made;"
                        + " cp /opt/boostwright/boostwright-pi.jsa /data/made; sync",
                    LONGEST_SECONDS);
        if (answer.exitCode() != 0) {
          throw new IOException(
              "the guest's Java made no archive of the classes: " + answer.text());
        }
        rig.cutPower();
      }
      for (Path old : KernelBench.matching(base, "archive-*.jsa")) {
        Files.delete(old);
      }
      List<Path> made = disk.take("/made");
      Files.copy(made.get(0), kept);
    }
    Files.copy(
        kept, archive, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
    return archive;
  }

  /** Beside the guest's Java, which outlives changes of the bench's own module. */
  private static Path base(KernelBench.Plan plan) throws IOException {
    Path base = plan.image().resolve("machine").toRealPath().getParent();
    if (base == null) {
      throw new IOException(plan.image() + " is no image of the kernel bench");
    }
    return base;
  }

  /** Java refuses an archive whose jars have another size or time, so these decide. */
  private static String digest(KernelBench.Plan plan) throws IOException {
    CRC32 crc = new CRC32();
    Path target = plan.packaged().resolve("target");
    for (Path folder : List.of(target, target.resolve("lib"))) {
      for (Path jar : KernelBench.matching(folder, "*.jar")) {
        String of =
            jar.getFileName() + " " + Files.size(jar) + " " + Files.getLastModifiedTime(jar);
        crc.update(of.getBytes(java.nio.charset.StandardCharsets.UTF_8));
      }
    }
    return Long.toHexString(crc.getValue());
  }
}
