package org.boostwright.core.ladder;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.bench.proof.Seal;

/**
 * The written form of a ladder: for each entry one line that says what happened, then lines with
 * the settings' fingerprints and what was measured; fields separated by tabs; last a {@link Seal}
 * over all of it, so that a changed or a missing line shows.
 */
public final class LadderText {
  private static final String FIRST = "boostwright ladder 1";

  private LadderText() {}

  /** Writes a ladder. */
  public static String write(Ladder ladder) {
    StringBuilder text = new StringBuilder(FIRST).append('\n');
    for (Entry entry : ladder.entries()) {
      Rung rung = entry.rung();
      Change change = entry.change();
      Seal.line(
          text,
          entry.kind().name().toLowerCase(Locale.ROOT),
          rung != null ? rung.id() : change != null ? change.id() : "",
          entry.practice() ? "practice" : "car",
          entry.date(),
          entry.toolVersion(),
          entry.benchSeal(),
          entry.words());
      for (SettingsPart part : SettingsPart.values()) {
        String digest = entry.settings().get(part);
        if (digest != null) {
          Seal.line(text, "settings", part.id(), digest);
        }
      }
      for (ProofMeasurement m : entry.measurements()) {
        Seal.line(text, m.fields());
      }
    }
    return Seal.put(text.toString());
  }

  /**
   * Reads a ladder.
   *
   * @throws DamagedProofException when anything in it was changed or is missing
   */
  public static Ladder read(String text) throws DamagedProofException {
    List<String> lines = Seal.lines(text, FIRST);
    try {
      List<Entry> entries = new ArrayList<>();
      int at = 0;
      while (at < lines.size()) {
        String[] head = lines.get(at++).split("\t", -1);
        int from = at;
        while (at < lines.size() && detail(lines.get(at))) {
          at++;
        }
        entries.add(entry(head, lines.subList(from, at)));
      }
      return new Ladder(entries);
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new DamagedProofException("a line of it is not understood");
    }
  }

  private static boolean detail(String line) {
    return line.startsWith("settings\t") || line.startsWith(ProofMeasurement.FIRST_FIELD + "\t");
  }

  private static Entry entry(String[] head, List<String> details) {
    Entry.Kind kind = Entry.Kind.valueOf(head[0].toUpperCase(Locale.ROOT));
    boolean changed = kind == Entry.Kind.CHANGED;
    String what = head[1].toUpperCase(Locale.ROOT);
    if (!head[2].equals("practice") && !head[2].equals("car")) {
      throw new IllegalArgumentException(head[2]);
    }
    Map<SettingsPart, String> settings = new EnumMap<>(SettingsPart.class);
    List<ProofMeasurement> measurements = new ArrayList<>();
    for (String detail : details) {
      String[] f = detail.split("\t", -1);
      if (f[0].equals("settings")) {
        settings.put(SettingsPart.valueOf(f[1].toUpperCase(Locale.ROOT)), f[2]);
      } else {
        measurements.add(ProofMeasurement.of(f));
      }
    }
    return new Entry(
        kind,
        changed ? null : Rung.valueOf(what),
        changed ? Change.valueOf(what) : null,
        head[2].equals("practice"),
        head[3],
        head[4],
        settings,
        head[5],
        head[6],
        measurements);
  }
}
