package org.boostwright.rig.scenario.campaign;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.boostwright.core.settings.file.AtomicFile;

/**
 * The rows of a campaign on disk.
 *
 * <p>Finished, they stand in {@code runs.csv}, sorted by number, so that the same campaign gives the
 * same bytes whoever ran which part. Until then they are appended to {@code runs.part.csv} as they
 * come; a stopped campaign goes on from there. The first line of both says which campaign it is.
 */
public final class RowFile {
  /** Finished rows. */
  public static final String FINISHED = "runs.csv";

  private static final String UNFINISHED = "runs.part.csv";

  private RowFile() {}

  /** Rows of a finished share, and which campaign they are from. */
  public record Share(String campaign, List<CaseRow> rows) {}

  /** Rows that a stopped campaign left behind; none when there are none. */
  static SortedMap<Long, CaseRow> unfinished(Path folder, String campaign)
      throws IOException, OtherCampaignException {
    Path file = folder.resolve(UNFINISHED);
    if (!Files.exists(file)) {
      return new TreeMap<>();
    }
    SortedMap<Long, CaseRow> rows = new TreeMap<>();
    List<String> lines = Files.readAllLines(file);
    if (lines.isEmpty()) {
      return rows;
    }
    if (!lines.get(0).equals(first(campaign))) {
      throw new OtherCampaignException(file + " is from another campaign: " + lines.get(0));
    }
    for (String line : lines.subList(1, lines.size())) {
      try {
        CaseRow row = CaseRow.parse(line);
        rows.put(row.index(), row);
      } catch (IllegalArgumentException e) {
        // The last line may be cut off where the campaign was stopped; that run is run again.
        continue;
      }
    }
    return rows;
  }

  private static String first(String campaign) {
    return "# " + campaign;
  }

  /** Appends rows as they come. */
  static final class Appender implements AutoCloseable {
    private final java.io.Writer to;

    Appender(Path folder, String campaign, Map<Long, CaseRow> known) throws IOException {
      Path file = folder.resolve(UNFINISHED);
      to = Files.newBufferedWriter(file);
      to.write(first(campaign) + "\n");
      for (CaseRow row : known.values()) {
        to.write(row.line() + "\n");
      }
      to.flush();
    }

    synchronized void add(CaseRow row) throws IOException {
      to.write(row.line() + "\n");
      to.flush();
    }

    @Override
    public void close() throws IOException {
      to.close();
    }
  }

  /** Writes the finished rows, in order of their numbers, and removes what was kept meanwhile. */
  public static void finish(Path folder, String campaign, List<CaseRow> rows) throws IOException {
    StringBuilder text = new StringBuilder();
    text.append(first(campaign)).append('\n').append(CaseRow.HEADER).append('\n');
    for (CaseRow row : rows) {
      text.append(row.line()).append('\n');
    }
    AtomicFile.write(
        folder.resolve(FINISHED), text.toString().getBytes(StandardCharsets.UTF_8));
    Files.deleteIfExists(folder.resolve(UNFINISHED));
  }

  /** Reads a finished share. */
  public static Share read(Path folder) throws IOException, OtherCampaignException {
    Path file = folder.resolve(FINISHED);
    List<String> lines = Files.readAllLines(file);
    if (lines.size() < 2 || !lines.get(0).startsWith("# ") || !lines.get(1).equals(CaseRow.HEADER)) {
      throw new OtherCampaignException(file + " holds no campaign of this version");
    }
    List<CaseRow> rows = new ArrayList<>();
    for (int i = 2; i < lines.size(); i++) {
      try {
        rows.add(CaseRow.parse(lines.get(i)));
      } catch (IllegalArgumentException e) {
        throw new OtherCampaignException(
            file + ":" + (i + 1) + ": " + e.getMessage() + "; the file is damaged");
      }
    }
    return new Share(lines.get(0).substring(2), rows);
  }
}
