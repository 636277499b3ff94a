package org.boostwright.rig.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A style sheet of ours, read far enough to judge its colours: the custom properties of each theme
 * and the plain rules.
 */
final class StyleSheet {
  /** A rule outside the themes: selector and declarations. */
  record Rule(String selector, Map<String, String> declarations) {}

  private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");

  final Map<String, Map<String, String>> themes = new LinkedHashMap<>();
  final List<Rule> rules = new ArrayList<>();

  StyleSheet(String css) {
    String rest = css.replaceAll("(?s)/\\*.*?\\*/", "");
    Map<String, String> light = new LinkedHashMap<>();
    themes.put("light", light);
    int at = 0;
    while (at < rest.length()) {
      int open = rest.indexOf('{', at);
      if (open < 0) {
        break;
      }
      String head = rest.substring(at, open).strip();
      int close = closing(rest, open);
      if (head.startsWith("@media")) {
        String name =
            head.contains("dark") ? "dark" : head.contains("print") ? "print" : "other";
        Map<String, String> theme = new LinkedHashMap<>(themes.getOrDefault(name, light));
        read(rest.substring(open + 1, close), theme);
        if (!name.equals("other")) {
          themes.put(name, theme);
        }
      } else {
        read(rest.substring(at, close + 1), light);
      }
      at = close + 1;
    }
  }

  private void read(String block, Map<String, String> theme) {
    Matcher matcher = RULE.matcher(block);
    while (matcher.find()) {
      Map<String, String> declarations = new LinkedHashMap<>();
      for (String declaration : matcher.group(2).split(";")) {
        int colon = declaration.indexOf(':');
        if (colon > 0) {
          declarations.put(
              declaration.substring(0, colon).strip(), declaration.substring(colon + 1).strip());
        }
      }
      if (matcher.group(1).strip().equals(":root")) {
        theme.putAll(declarations);
      } else {
        rules.add(new Rule(matcher.group(1).strip(), declarations));
      }
    }
  }

  private static int closing(String css, int open) {
    int depth = 0;
    for (int i = open; i < css.length(); i++) {
      depth += css.charAt(i) == '{' ? 1 : css.charAt(i) == '}' ? -1 : 0;
      if (depth == 0) {
        return i;
      }
    }
    throw new IllegalArgumentException("brace at " + open + " is never closed");
  }
}
