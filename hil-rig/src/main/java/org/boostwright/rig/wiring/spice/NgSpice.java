package org.boostwright.rig.wiring.spice;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Runs decks in ngspice's batch mode and reads back every {@code name = number} it prints. */
public final class NgSpice {
  private static final Pattern RESULT =
      Pattern.compile(
          "^\\s*([a-z][a-z0-9_]*)\\s*=\\s+([-+]?[0-9][0-9.]*(?:[eE][-+]?[0-9]+)?)\\b.*");
  private static final long LIMIT_SECONDS = 120;

  private NgSpice() {}

  /** True when an ngspice that answers is on the path. */
  public static boolean present() {
    try {
      Process process =
          new ProcessBuilder("ngspice", "--version").redirectErrorStream(true).start();
      process.getInputStream().readAllBytes();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /**
   * Runs one deck.
   *
   * @return every printed result in order; a name printed in a loop has several values
   * @throws IOException when ngspice cannot be run or does not end
   */
  public static Map<String, List<Double>> run(String deck) throws IOException {
    Path file = Files.createTempFile("boostwright-", ".cir");
    Path log = Files.createTempFile("boostwright-", ".log");
    try {
      Files.writeString(file, deck);
      Process process =
          new ProcessBuilder("ngspice", "-b", file.toString())
              .redirectErrorStream(true)
              .redirectOutput(log.toFile())
              .start();
      if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IOException("ngspice did not end within " + LIMIT_SECONDS + " s");
      }
      return results(Files.readString(log, StandardCharsets.ISO_8859_1));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while ngspice ran", e);
    } finally {
      Files.deleteIfExists(file);
      Files.deleteIfExists(log);
    }
  }

  static Map<String, List<Double>> results(String printed) {
    Map<String, List<Double>> results = new LinkedHashMap<>();
    for (String line : printed.split("\n")) {
      Matcher m = RESULT.matcher(line);
      if (m.matches()) {
        results
            .computeIfAbsent(m.group(1), name -> new ArrayList<>())
            .add(Double.parseDouble(m.group(2)));
      }
    }
    return results;
  }
}
