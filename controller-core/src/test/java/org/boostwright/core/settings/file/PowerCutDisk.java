package org.boostwright.core.settings.file;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A disk that forgets: what was not forced may or may not be there after a power cut, in any mix.
 *
 * <p>Content that was written but not forced may be empty, cut anywhere, full of zeros or whole.
 * Names that were changed but whose folder was not forced may have any of their values since. This
 * is what POSIX leaves open for write, rename and fsync (IEEE Std 1003.1, fsync: rationale).
 */
final class PowerCutDisk implements Disk {
  /** Thrown at the moment of the cut; no exception of the writer's own, so it cannot tidy up. */
  static final class PowerCut extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  private static final class Content {
    byte[] durable = new byte[0];
    byte[] latest = durable;
  }

  private final Map<Path, List<Content>> names = new HashMap<>();
  private int stepsLeft;

  /** A disk that holds one file and loses power before the step of this number, from 0. */
  PowerCutDisk(Path file, byte[] content, int stepsLeft) {
    Content held = new Content();
    held.durable = content;
    held.latest = content;
    names.put(file, new ArrayList<>(List.of(held)));
    this.stepsLeft = stepsLeft;
  }

  private void step() {
    if (stepsLeft-- <= 0) {
      throw new PowerCut();
    }
  }

  @Override
  public Path createBeside(Path file) {
    step();
    Path fresh = file.resolveSibling("." + file.getFileName() + ".new");
    names.put(fresh, new ArrayList<>(List.of(new Content())));
    return fresh;
  }

  @Override
  public void write(Path file, byte[] content) {
    step();
    // The power can go while the bytes are on their way.
    latest(file).latest = Arrays.copyOf(content, content.length / 3);
    step();
    latest(file).latest = content;
  }

  @Override
  public void force(Path file) {
    step();
    latest(file).durable = latest(file).latest;
  }

  @Override
  public void rename(Path from, Path to) {
    step();
    names.computeIfAbsent(to, name -> new ArrayList<>()).add(latest(from));
    names.remove(from);
  }

  @Override
  public void forceFolder(Path folder) {
    step();
    names.replaceAll((name, values) -> new ArrayList<>(List.of(values.get(values.size() - 1))));
  }

  @Override
  public void remove(Path file) {
    names.remove(file);
  }

  private Content latest(Path file) {
    List<Content> values = names.get(file);
    return values.get(values.size() - 1);
  }

  /** Everything a file may hold when the power comes back. */
  List<byte[]> possible(Path file) {
    List<byte[]> all = new ArrayList<>();
    for (Content content : names.get(file)) {
      all.add(content.durable);
      if (content.durable != content.latest) {
        for (int length = 0; length <= content.latest.length; length += 97) {
          all.add(Arrays.copyOf(content.latest, length));
        }
        all.add(new byte[content.latest.length]);
        all.add(content.latest);
      }
    }
    return all;
  }
}
