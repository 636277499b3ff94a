package org.boostwright.rig.wiring.draw;

import java.util.List;
import java.util.Map;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.Harness;
import org.boostwright.rig.wiring.Harness.Run;
import org.boostwright.rig.wiring.draw.Label.Anchor;

/** Draws the harness: box on the left, devices on the right, one straight line per wire. */
public final class HarnessSvg {
  private static final double ROW = 2.4;
  private static final double GAP = 1.6;
  private static final double BOX_LEFT = 2;
  private static final double BOX_RIGHT = 24;
  private static final double DEVICE_LEFT = 66;
  private static final double DEVICE_RIGHT = 100;

  private HarnessSvg() {}

  /** The drawing. */
  public static String of(Circuit circuit) {
    Map<String, String> nets = Harness.nets(circuit);
    Svg svg = new Svg();
    double y = 7;
    double boxTop = y - 1.4;
    String device = "";
    double deviceTop = y;
    List<Run> runs = Harness.RUNS;
    String connector = connector(runs.get(0));
    double connectorTop = boxTop;
    for (int i = 0; i < runs.size(); i++) {
      Run run = runs.get(i);
      if (!run.device().equals(device)) {
        if (!device.isEmpty()) {
          device(svg, device, deviceTop, y - ROW);
          y += GAP;
        }
        device = run.device();
        deviceTop = y;
      }
      if (!connector(run).equals(connector)) {
        connector(svg, connector, connectorTop, y - ROW - GAP + 1.3);
        connector = connector(run);
        connectorTop = y - 1.4;
      }
      row(svg, run, nets.getOrDefault(run.pin(), "?"), y);
      y += ROW;
    }
    device(svg, device, deviceTop, y - ROW);
    double bottom = y - ROW + 1.3;
    connector(svg, connector, connectorTop, bottom);
    svg.label(new Label(BOX_LEFT, 2.2, Anchor.START, 1.6, true, "Harness"));
    svg.label(
        new Label(
            BOX_LEFT,
            4.2,
            Anchor.START,
            1.05,
            false,
            "Box on the left, one line per wire: copper in mm², colour as a suggestion."
                + " Net names are those of the schematics."));
    Room page = new Room(0, 0, DEVICE_RIGHT + 2, bottom + 2);
    return svg.document(page, "Harness");
  }

  private static String connector(Run run) {
    return run.pin().substring(0, run.pin().indexOf('.'));
  }

  private static void row(Svg svg, Run run, String net, double y) {
    svg.shape(Shape.circle(BOX_RIGHT - 0.6, y, 0.35), 1.4);
    svg.label(new Label(BOX_RIGHT - 1.6, y + 0.4, Anchor.END, 1.1, true, run.pin()));
    svg.label(new Label(BOX_LEFT + 5, y + 0.4, Anchor.START, 1.1, false, net));
    double left = BOX_RIGHT - 0.25;
    double right = DEVICE_LEFT + 0.25;
    if (run.inline().isEmpty()) {
      svg.shape(Shape.line(left, y, right, y), 1.4);
    } else {
      double fuse = 56;
      svg.shape(Shape.line(left, y, right, y), 1.4);
      svg.shape(Shape.rectangle(fuse, y - 0.45, fuse + 3, y + 0.45), 1.4);
      svg.shape(Shape.line(fuse, y, fuse + 3, y), 1.4);
      svg.label(new Label(fuse + 1.5, y - 0.8, Anchor.MIDDLE, 1.05, true, run.inline()));
    }
    String copper = (run.squareMillimetres() + " mm²").replace(".0 ", " ");
    String remark = run.remark().isEmpty() ? "" : ", " + run.remark();
    svg.label(
        new Label(
            BOX_RIGHT + 1,
            y - 0.4,
            Anchor.START,
            1.0,
            false,
            copper + " " + run.colour() + remark));
    svg.shape(Shape.circle(DEVICE_LEFT + 0.6, y, 0.35), 1.4);
    svg.label(new Label(DEVICE_LEFT + 1.5, y + 0.4, Anchor.START, 1.05, false, run.devicePin()));
  }

  private static void device(Svg svg, String name, double top, double lastRow) {
    svg.shape(frame(DEVICE_LEFT, top - 1.2, DEVICE_RIGHT, lastRow + 1.2), 1.4);
    svg.label(
        new Label(DEVICE_LEFT + 11, (top + lastRow) / 2 + 0.4, Anchor.START, 1.1, true, name));
  }

  private static void connector(Svg svg, String name, double top, double bottom) {
    svg.shape(frame(BOX_LEFT, top, BOX_RIGHT, bottom), 1.6);
    svg.label(new Label(BOX_LEFT + 1, (top + bottom) / 2 + 0.5, Anchor.START, 1.4, true, name));
  }

  private static Shape frame(double left, double top, double right, double bottom) {
    return Shape.line(left, top, right, top, right, bottom, left, bottom, left, top);
  }
}
