package org.boostwright.pi.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What the loop and the recorder say of themselves; asked once a second by the page's own thread.
 *
 * @param ticks ticks so far
 * @param leftOut starts passed by without a tick
 * @param beats heartbeat edges
 * @param latenessP99Ms lateness of 99 % of the ticks, ms
 * @param latenessMaxMs worst lateness, ms
 * @param wires words about the wires or the link
 * @param recording file being written; empty when none is
 * @param lostRows rows that were not recorded
 * @param recorderTrouble why not; empty when all is well
 */
public record PageHealth(
    long ticks,
    long leftOut,
    long beats,
    double latenessP99Ms,
    double latenessMaxMs,
    String wires,
    String recording,
    long lostRows,
    String recorderTrouble) {
  /** One line for each thing, in words. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "Loop: %d ticks, %d left out, late %.1f ms at most, 99 %% within %.1f ms",
            ticks,
            leftOut,
            latenessMaxMs,
            latenessP99Ms));
    lines.add(beats == 0L ? "Heartbeat: not given" : "Heartbeat: " + beats + " edges");
    lines.add("Wires: " + (wires.isEmpty() ? "nothing to say" : wires));
    lines.add(
        "Recording: "
            + (recording.isEmpty() ? "nothing is recorded" : recording)
            + (lostRows == 0L ? "" : ", " + lostRows + " rows lost")
            + (recorderTrouble.isEmpty() ? "" : ", " + recorderTrouble));
    return lines;
  }
}
