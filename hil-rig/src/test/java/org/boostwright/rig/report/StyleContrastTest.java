package org.boostwright.rig.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every colour of the style sheets against what it stands on, in every theme: 4.5 for text, 3 for
 * lines, signs and the edges of controls (WCAG 2.2, success criteria 1.4.3 and 1.4.11, level AA).
 */
class StyleContrastTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));
  private static final double TEXT = 4.5;
  private static final double GRAPHIC = 3.0;

  /**
   * G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, <i>A Physiologically-based Model for
   * Simulation of Color Vision Deficiency</i>, IEEE TVCG 15(6), 2009: protanopia, deuteranopia,
   * tritanopia. From memory; every row sums to 1, so white stays white.
   */
  private static final double[][][] DEFICIENCIES = {
    {
      {0.152286, 1.052583, -0.204868},
      {0.114503, 0.786281, 0.099216},
      {-0.003882, -0.048116, 1.051998}
    },
    {
      {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.01182, 0.04294, 0.968881}
    },
    {
      {1.255528, -0.076749, -0.178779},
      {-0.078411, 0.930809, 0.147602},
      {0.004733, 0.691367, 0.3039}
    }
  };

  /** Style sheets of ours: the report's, and the live page's in the other module. */
  static Stream<Path> sheets() {
    return Stream.of(
            "hil-rig/src/main/resources/org/boostwright/rig/report/report.css",
            "pi-runtime/src/main/resources/org/boostwright/pi/web/live.css")
        .map(ROOT::resolve);
  }

  private static Colour colour(Map<String, String> theme, String value) {
    String name = value.replaceAll("^var\\((--[a-z0-9-]+)\\)$", "$1");
    assertThat(theme).as(value).containsKey(name);
    return Colour.of(theme.get(name));
  }

  private static void check(String what, Colour a, Colour b, double least) {
    assertThat(Colour.contrast(a, b)).as(what).isGreaterThanOrEqualTo(least);
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void everyTextMeetsAa(Path file) throws Exception {
    StyleSheet sheet = new StyleSheet(Files.readString(file));
    int judged = 0;
    for (Map.Entry<String, Map<String, String>> entry : sheet.themes.entrySet()) {
      Map<String, String> theme = entry.getValue();
      for (StyleSheet.Rule rule : sheet.rules) {
        String text = rule.declarations().get("color");
        if (text == null || text.equals("inherit")) {
          continue;
        }
        if (text.equals("var(--tone)")) {
          continue; // one of passed, failed, refused: judged below
        }
        String own = rule.declarations().get("background");
        List<String> grounds =
            own == null || own.equals("none") ? List.of("var(--paper)", "var(--card)") : List.of(own);
        for (String ground : grounds) {
          String what = entry.getKey() + " " + rule.selector() + " on " + ground;
          check(what, colour(theme, text), colour(theme, ground), TEXT);
          judged++;
        }
      }
      for (String tone : List.of("--passed", "--failed", "--refused", "--ink", "--soft")) {
        check(entry.getKey() + tone, colour(theme, tone), colour(theme, "--paper"), TEXT);
        check(entry.getKey() + tone, colour(theme, tone), colour(theme, "--card"), TEXT);
      }
    }
    assertThat(judged).isGreaterThan(20);
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void everyLineSignAndEdgeMeetsAa(Path file) throws Exception {
    StyleSheet sheet = new StyleSheet(Files.readString(file));
    sheet.themes.forEach(
        (name, theme) -> {
          for (String property : theme.keySet()) {
            if (property.matches("--(c[0-9]|limit|focus|edge)")) {
              check(name + property, colour(theme, property), colour(theme, "--card"), GRAPHIC);
              check(name + property, colour(theme, property), colour(theme, "--paper"), GRAPHIC);
            }
          }
          assertThat(theme).containsKeys("--focus", "--edge");
        });
  }

  @Test
  void shadedCellsStripAndLimitOfTheReportAreReadable() throws Exception {
    StyleSheet sheet = new StyleSheet(Files.readString(sheets().findFirst().orElseThrow()));
    sheet.themes.forEach(
        (name, theme) -> {
          Colour ink = colour(theme, "--ink");
          Colour card = colour(theme, "--card");
          int steps = 0;
          for (StyleSheet.Rule rule : sheet.rules) {
            if (rule.selector().matches("\\.h[0-9]")) {
              String alpha = rule.declarations().get("background").replaceAll(".*, (.*)\\)", "$1");
              Colour cell = colour(theme, "--heat").over(card, Double.parseDouble(alpha));
              check(name + rule.selector(), ink, cell, TEXT);
              steps++;
            }
          }
          assertThat(steps).isEqualTo(10);
          check(name + " strip", ink, colour(theme, "--band-a"), TEXT);
          check(name + " strip", ink, colour(theme, "--band-b"), TEXT);
          check(name + " limit", colour(theme, "--limit"), card, TEXT);
        });
  }

  /**
   * Lines also differ in stroke and stand in panels of their own; their colours alone still differ
   * by several times what an eye can just see (2.3: M. Mahy et al., Color Res. Appl. 19, 1994).
   */
  @Test
  void linesAndVerdictsStayApartWithoutFullColourVision() throws Exception {
    StyleSheet sheet = new StyleSheet(Files.readString(sheets().findFirst().orElseThrow()));
    sheet.themes.forEach(
        (name, theme) -> {
          for (double[][] deficiency : DEFICIENCIES) {
            for (int a = 0; a < 6; a++) {
              for (int b = a + 1; b < 6; b++) {
                Colour first = colour(theme, "--c" + a).seenThrough(deficiency);
                Colour second = colour(theme, "--c" + b).seenThrough(deficiency);
                assertThat(Colour.difference(first, second))
                    .as("%s: c%d and c%d", name, a, b)
                    .isGreaterThan(4 * 2.3);
              }
            }
          }
        });
  }

  /** The published example values of the contrast ratio: black on white 21, #777777 on white 4.48. */
  @Test
  void contrastIsComputedAsPublished() {
    Colour white = Colour.of("#ffffff");
    assertThat(Colour.contrast(white, Colour.of("#000000"))).isEqualTo(21.0);
    assertThat(Colour.contrast(white, Colour.of("#777777"))).isBetween(4.47, 4.49);
  }
}
