package org.boostwright.rig.plant;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Reads an engine reference file: an independent solution of the published engine with an adaptive
 * stiff solver (SciPy LSODA, relative tolerance 1e-7), which shares no code with the project.
 */
final class ReferenceFile {
  private ReferenceFile() {}

  /** The numbers of every row below the header. */
  static List<double[]> rows(String name) {
    List<double[]> rows = new ArrayList<>();
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    ReferenceFile.class.getResourceAsStream("/engine-reference/" + name)),
                StandardCharsets.UTF_8))) {
      in.readLine();
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        String[] cells = line.split(",", -1);
        double[] row = new double[cells.length];
        for (int i = 0; i < row.length; i++) {
          row[i] = Double.parseDouble(cells[i]);
        }
        rows.add(row);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }
}
