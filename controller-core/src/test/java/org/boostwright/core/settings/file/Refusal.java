package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

/**
 * A change to the full file that must be refused, with its twin: the nearest good value raises
 * nothing.
 *
 * @param code what must be found
 * @param find a piece of its text
 * @param bad what is put in its place
 * @param good the nearest thing that must load
 * @param at the piece of the bad text at whose beginning the problem must be placed; empty for
 *     anywhere
 * @param says what the message must contain
 */
record Refusal(String code, String find, String bad, String good, String at, List<String> says) {

  static Refusal of(String code, String find, String bad, String good, String at, String... says) {
    return new Refusal(code, find, bad, good, at, List.of(says));
  }

  void check() {
    String full = Example.full();
    int from = full.indexOf(find);
    assertThat(from).as("'%s' stands in the full file", find).isNotNegative();
    String before = full.substring(0, from);
    String after = full.substring(from + find.length());
    String badText = before + bad + after;
    LoadResult refused = Example.parse(badText);
    assertThat(refused.ok()).isFalse();
    assertThat(refused.settings()).isNull();
    List<Problem> found =
        refused.problems().stream().filter(problem -> problem.code().equals(code)).toList();
    assertThat(found).as("%s", refused.problems()).isNotEmpty();
    Problem problem = found.get(0);
    assertThat(problem.severity()).isEqualTo(Severity.ERROR);
    assertThat(problem.text()).as("ends with what to do").contains("; ");
    for (String words : says) {
      assertThat(problem.text()).contains(words);
    }
    if (!at.isEmpty()) {
      String line = badText.split("\n", -1)[problem.line() - 1];
      assertThat(line.substring(problem.column() - 1)).startsWith(at);
    }

    LoadResult twin = Example.parse(before + good + after);
    assertThat(twin.problems()).noneMatch(p -> p.code().equals(code));
    assertThat(twin.ok()).as("%s", twin.problems()).isTrue();
  }

  @Override
  public String toString() {
    return code + ": " + bad.strip().replace('\n', ' ');
  }
}
