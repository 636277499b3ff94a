package org.boostwright.rig.wiring.draw;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.Harness;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.PartClass;
import org.boostwright.rig.wiring.Symbol;

/** Writes the parts list: what to buy for the circuit as fitted, then for each other sheet. */
public final class PartsList {
  private record Row(String sheets, PartClass cls, String value, boolean fitted) {}

  private PartsList() {}

  /** The list as CSV (RFC 4180). */
  public static String csv(Circuit circuit) {
    CsvText csv = new CsvText();
    csv.row(
        "for",
        "class",
        "part",
        "value",
        "quantity",
        "references",
        "fitted",
        "ratings",
        "why",
        "alternatives");
    write(csv, "circuit", circuit.fitted());
    for (Block block : circuit.alternatives()) {
      write(csv, block.id(), List.of(block));
    }
    return csv.text();
  }

  private static void write(CsvText csv, String use, List<Block> blocks) {
    Map<Row, List<String>> rows = new LinkedHashMap<>();
    for (Block block : blocks) {
      for (Part part : block.parts()) {
        if (part.symbol() != Symbol.TERMINAL) {
          Row row = new Row(use, part.partClass(), part.text(), part.fitted());
          rows.computeIfAbsent(row, r -> new ArrayList<>()).add(part.ref());
        }
      }
    }
    rows.forEach(
        (row, refs) ->
            csv.row(
                row.sheets(),
                row.cls().id(),
                row.cls().title(),
                row.value(),
                Integer.toString(refs.size()),
                String.join(" ", refs),
                row.fitted() ? "yes" : "only if wanted",
                row.cls().ratings(),
                row.cls().why(),
                row.cls().alternatives()));
  }

  /** The harness as CSV. */
  public static String harnessCsv(Circuit circuit) {
    Map<String, String> nets = Harness.nets(circuit);
    CsvText csv = new CsvText();
    csv.row("pin", "net", "device", "device_pin", "mm2", "colour", "inline", "remark");
    for (Harness.Run run : Harness.RUNS) {
      csv.row(
          run.pin(),
          nets.getOrDefault(run.pin(), ""),
          run.device(),
          run.devicePin(),
          Double.toString(run.squareMillimetres()),
          run.colour(),
          run.inline(),
          run.remark());
    }
    return csv.text();
  }
}
