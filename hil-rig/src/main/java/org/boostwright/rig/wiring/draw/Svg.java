package org.boostwright.rig.wiring.draw;

import java.util.Locale;
import org.boostwright.rig.wiring.draw.Label.Anchor;

/** Writes SVG text: ten pixels per grid unit, one decimal, black on white. */
final class Svg {
  private static final double PIXELS = 10.0;
  private final StringBuilder body = new StringBuilder();

  void shape(Shape shape, double width) {
    switch (shape.kind()) {
      case LINE -> path(shape.xy(), false, "none", width, "");
      case DASHED -> path(shape.xy(), false, "none", width, " stroke-dasharray=\"4 3\"");
      case OUTLINE -> path(shape.xy(), true, "#fff", width, "");
      case FILLED -> path(shape.xy(), true, "#000", width, "");
      case CIRCLE ->
          body.append(
              String.format(
                  Locale.ROOT,
                  "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"#fff\" stroke=\"#000\""
                      + " stroke-width=\"%s\"/>\n",
                  number(shape.xy()[0]),
                  number(shape.xy()[1]),
                  number(shape.xy()[2]),
                  plain(width)));
    }
  }

  private void path(double[] xy, boolean closed, String fill, double width, String more) {
    StringBuilder d = new StringBuilder();
    for (int i = 0; i < xy.length; i += 2) {
      d.append(i == 0 ? "M" : " L").append(number(xy[i])).append(' ').append(number(xy[i + 1]));
    }
    body.append("<path d=\"")
        .append(d)
        .append(closed ? " Z" : "")
        .append("\" fill=\"")
        .append(fill)
        .append("\" stroke=\"#000\" stroke-width=\"")
        .append(plain(width))
        .append("\" stroke-linejoin=\"round\"")
        .append(more)
        .append("/>\n");
  }

  void dot(double x, double y) {
    body.append("<circle cx=\"")
        .append(number(x))
        .append("\" cy=\"")
        .append(number(y))
        .append("\" r=\"3\" fill=\"#000\"/>\n");
  }

  void label(Label label) {
    body.append("<text x=\"")
        .append(number(label.x()))
        .append("\" y=\"")
        .append(number(label.y()))
        .append("\" font-size=\"")
        .append(number(label.size()))
        .append('"')
        .append(
            label.anchor() == Anchor.START ? "" : " text-anchor=\"" + label.anchor().word() + "\"")
        .append(label.bold() ? " font-weight=\"bold\"" : "")
        .append('>')
        .append(escaped(label.text()))
        .append("</text>\n");
  }

  /** The finished drawing around a room. */
  String document(Room room, String title) {
    double width = room.right() - room.left();
    double height = room.bottom() - room.top();
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""
        + number(width)
        + "\" height=\""
        + number(height)
        + "\" viewBox=\""
        + number(room.left())
        + " "
        + number(room.top())
        + " "
        + number(width)
        + " "
        + number(height)
        + "\" font-family=\"Arial, Helvetica, 'Liberation Sans', sans-serif\" fill=\"#000\">\n"
        + "<title>"
        + escaped(title)
        + "</title>\n"
        + "<rect x=\""
        + number(room.left())
        + "\" y=\""
        + number(room.top())
        + "\" width=\""
        + number(width)
        + "\" height=\""
        + number(height)
        + "\" fill=\"#fff\"/>\n"
        + body
        + "</svg>\n";
  }

  private static String number(double grid) {
    return plain(Math.round(grid * PIXELS * 10) / 10.0);
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.1f", value);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
