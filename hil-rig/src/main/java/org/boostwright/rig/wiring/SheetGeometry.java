package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.boostwright.rig.wiring.Block.Mark;
import org.boostwright.rig.wiring.Block.Wire;
import org.boostwright.rig.wiring.Part.Pin;

/**
 * Proves that a sheet shows what its netlist says: what is drawn together is one net, and what is
 * one net is drawn together or joined by marks of that name.
 */
public final class SheetGeometry {
  private record Segment(String net, Point a, Point b) {
    boolean holds(Point p) {
      return p.x() >= Math.min(a.x(), b.x())
          && p.x() <= Math.max(a.x(), b.x())
          && p.y() >= Math.min(a.y(), b.y())
          && p.y() <= Math.max(a.y(), b.y());
    }

    boolean straight() {
      return a.x() == b.x() || a.y() == b.y();
    }
  }

  private SheetGeometry() {}

  /** Everything wrong with a sheet, in words; empty when it is sound. */
  public static List<String> problems(Block block) {
    List<String> problems = new ArrayList<>();
    List<Segment> segments = segments(block);
    Map<Point, String> touched = new LinkedHashMap<>();
    for (Part part : block.parts()) {
      for (Pin pin : part.pins()) {
        claim(touched, pin.at(), pin.net(), part.ref() + "." + pin.name(), problems);
      }
    }
    for (Mark mark : block.marks()) {
      claim(touched, mark.at(), mark.net(), "mark " + mark.net(), problems);
    }
    for (Segment s : segments) {
      if (!s.straight()) {
        problems.add(s.net() + ": slanted wire " + s.a() + " to " + s.b());
      }
      claim(touched, s.a(), s.net(), "wire end", problems);
      claim(touched, s.b(), s.net(), "wire end", problems);
    }
    for (Segment s : segments) {
      touched.forEach(
          (p, net) -> {
            if (s.holds(p) && !net.equals(s.net())) {
              problems.add("wire of " + s.net() + " runs over " + net + " at " + p);
            }
          });
    }
    problems.addAll(islands(block, segments));
    return List.copyOf(new LinkedHashSet<>(problems));
  }

  /** Places where a dot must show that wires join. */
  public static List<Point> junctions(Block block) {
    List<Segment> segments = segments(block);
    Map<Point, Integer> ways = new HashMap<>();
    Set<Point> ends = new LinkedHashSet<>();
    for (Segment s : segments) {
      ends.add(s.a());
      ends.add(s.b());
    }
    block.parts().forEach(part -> part.pins().forEach(pin -> ends.add(pin.at())));
    block.marks().forEach(mark -> ends.add(mark.at()));
    for (Point p : ends) {
      Set<String> directions = new LinkedHashSet<>();
      for (Segment s : segments) {
        if (!s.holds(p)) {
          continue;
        }
        if (!p.equals(s.a())) {
          directions.add(direction(p, s.a()));
        }
        if (!p.equals(s.b())) {
          directions.add(direction(p, s.b()));
        }
      }
      int count = directions.size();
      for (Part part : block.parts()) {
        for (Pin pin : part.pins()) {
          count += pin.at().equals(p) ? 1 : 0;
        }
      }
      for (Mark mark : block.marks()) {
        count += mark.at().equals(p) ? 1 : 0;
      }
      ways.put(p, count);
    }
    TreeSet<Point> dots =
        new TreeSet<>(
            (p, q) ->
                p.y() != q.y() ? Integer.compare(p.y(), q.y()) : Integer.compare(p.x(), q.x()));
    ways.forEach(
        (p, count) -> {
          if (count > 2) {
            dots.add(p);
          }
        });
    return List.copyOf(dots);
  }

  private static String direction(Point from, Point to) {
    return Integer.signum(to.x() - from.x()) + "," + Integer.signum(to.y() - from.y());
  }

  private static List<Segment> segments(Block block) {
    List<Segment> segments = new ArrayList<>();
    for (Wire wire : block.wires()) {
      for (int i = 1; i < wire.points().size(); i++) {
        Point a = wire.points().get(i - 1);
        Point b = wire.points().get(i);
        if (!a.equals(b)) {
          segments.add(new Segment(wire.net(), a, b));
        }
      }
    }
    return segments;
  }

  private static void claim(
      Map<Point, String> touched, Point p, String net, String who, List<String> problems) {
    String other = touched.putIfAbsent(p, net);
    if (other != null && !other.equals(net)) {
      problems.add(who + " of " + net + " stands on " + other + " at " + p);
    }
  }

  private static List<String> islands(Block block, List<Segment> segments) {
    List<String> problems = new ArrayList<>();
    Map<String, List<Pin>> byNet = new LinkedHashMap<>();
    Map<Pin, String> names = new HashMap<>();
    for (Part part : block.parts()) {
      for (Pin pin : part.pins()) {
        byNet.computeIfAbsent(pin.net(), net -> new ArrayList<>()).add(pin);
        names.put(pin, part.ref() + "." + pin.name());
      }
    }
    byNet.forEach(
        (net, pins) -> {
          List<Segment> own = segments.stream().filter(s -> s.net().equals(net)).toList();
          List<Point> marks =
              block.marks().stream().filter(m -> m.net().equals(net)).map(Mark::at).toList();
          Set<Point> reached = new LinkedHashSet<>();
          if (marks.isEmpty()) {
            reached.add(pins.get(0).at());
          } else {
            reached.addAll(marks);
          }
          spread(reached, own, pins);
          for (Pin pin : pins) {
            if (!reached.contains(pin.at())) {
              problems.add(net + ": " + names.get(pin) + " is not drawn connected");
            }
          }
          if (pins.size() == 1 && marks.isEmpty()) {
            problems.add(net + ": only " + names.get(pins.get(0)) + ", joined to nothing");
          }
        });
    return problems;
  }

  private static void spread(Set<Point> reached, List<Segment> own, List<Pin> pins) {
    boolean grew = true;
    while (grew) {
      grew = false;
      for (Segment s : own) {
        boolean touches = reached.stream().anyMatch(s::holds);
        if (!touches) {
          // A T: this wire's end stands on a wire already reached.
          touches =
              own.stream()
                  .anyMatch(
                      t ->
                          reached.contains(t.a())
                              && reached.contains(t.b())
                              && (t.holds(s.a()) || t.holds(s.b())));
        }
        if (touches) {
          grew |= reached.add(s.a());
          grew |= reached.add(s.b());
          for (Pin pin : pins) {
            if (s.holds(pin.at())) {
              grew |= reached.add(pin.at());
            }
          }
        }
      }
    }
  }
}
