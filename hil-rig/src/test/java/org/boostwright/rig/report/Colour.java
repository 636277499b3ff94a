package org.boostwright.rig.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An opaque sRGB colour, 0 to 1 each, and what eyes make of it. */
record Colour(double r, double g, double b) {
  private static final Pattern HEX = Pattern.compile("#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})");

  static Colour of(String css) {
    Matcher hex = HEX.matcher(css);
    if (hex.matches()) {
      return new Colour(part(hex.group(1)), part(hex.group(2)), part(hex.group(3)));
    }
    String[] parts = css.split(",");
    return new Colour(
        Integer.parseInt(parts[0].strip()) / 255.0,
        Integer.parseInt(parts[1].strip()) / 255.0,
        Integer.parseInt(parts[2].strip()) / 255.0);
  }

  private static double part(String hex) {
    return Integer.parseInt(hex, 16) / 255.0;
  }

  /** This colour with that opacity on top of another. */
  Colour over(Colour below, double alpha) {
    return new Colour(
        alpha * r + (1 - alpha) * below.r,
        alpha * g + (1 - alpha) * below.g,
        alpha * b + (1 - alpha) * below.b);
  }

  /** Contrast ratio, 1 to 21 (W3C, Web Content Accessibility Guidelines 2.2, contrast ratio). */
  static double contrast(Colour a, Colour b) {
    double la = a.luminance();
    double lb = b.luminance();
    return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
  }

  /** Relative luminance (the same, relative luminance). */
  double luminance() {
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  }

  private static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private static double encoded(double c) {
    double x = Math.max(0, Math.min(1, c));
    return x <= 0.0031308 ? 12.92 * x : 1.055 * Math.pow(x, 1 / 2.4) - 0.055;
  }

  /** As seen with a colour vision deficiency: the matrix acts on linear light. */
  Colour seenThrough(double[][] m) {
    double[] in = {linear(r), linear(g), linear(b)};
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = m[i][0] * in[0] + m[i][1] * in[1] + m[i][2] * in[2];
    }
    return new Colour(encoded(out[0]), encoded(out[1]), encoded(out[2]));
  }

  /** Difference in CIELAB, D65 (CIE 15:2004, Delta E*ab). */
  static double difference(Colour a, Colour b) {
    double[] p = a.lab();
    double[] q = b.lab();
    return Math.sqrt(
        Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
  }

  private double[] lab() {
    double lr = linear(r);
    double lg = linear(g);
    double lb = linear(b);
    double x = f((0.4124 * lr + 0.3576 * lg + 0.1805 * lb) / 0.95047);
    double y = f(0.2126 * lr + 0.7152 * lg + 0.0722 * lb);
    double z = f((0.0193 * lr + 0.1192 * lg + 0.9505 * lb) / 1.08883);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double f(double t) {
    return t > 216.0 / 24389.0 ? Math.cbrt(t) : (24389.0 / 27.0 * t + 16) / 116;
  }
}
