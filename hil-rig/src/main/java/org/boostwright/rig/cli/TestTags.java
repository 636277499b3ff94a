package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Which test classes carry which requirement, from the tags in the test sources. */
final class TestTags {
  private static final Pattern TAG = Pattern.compile("@Tag\\(\"([A-Z]+[0-9]+)\"\\)");
  private static final List<String> MODULES = List.of("controller-core", "hil-rig", "pi-runtime");

  private TestTags() {}

  /** Requirement id to test classes; empty where there are no sources. */
  static Map<String, TreeSet<String>> scan(Path root) throws IOException {
    Map<String, TreeSet<String>> tests = new TreeMap<>();
    for (String module : MODULES) {
      Path sources = root.resolve(module).resolve("src/test/java");
      if (!Files.isDirectory(sources)) {
        continue;
      }
      List<Path> files;
      try (Stream<Path> all = Files.walk(sources)) {
        files = all.filter(f -> f.toString().endsWith("Test.java")).sorted().toList();
      }
      for (Path file : files) {
        String name = file.getFileName().toString().replace(".java", "");
        Matcher tag = TAG.matcher(Files.readString(file));
        while (tag.find()) {
          tests.computeIfAbsent(tag.group(1), id -> new TreeSet<>()).add(name);
        }
      }
    }
    return tests;
  }
}
