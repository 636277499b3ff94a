package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.scenario.file.Scenario;
import org.boostwright.rig.scenario.file.ScenarioFile;
import org.junit.jupiter.api.Test;

/** Every row of the fault list stands in the safety case and is shown by a test that names it. */
class RequirementsTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root", ".."));
  private static final Pattern ROW = Pattern.compile("^\\| ([A-Z][0-9]+) \\|", Pattern.MULTILINE);

  private static Set<String> rows() {
    return SafetyCaseText.ROWS.stream()
        .map(SafetyCaseText.Row::id)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static Set<String> idsIn(String page) {
    Set<String> ids = new LinkedHashSet<>();
    Matcher row = ROW.matcher(page);
    while (row.find()) {
      ids.add(row.group(1));
    }
    return ids;
  }

  @Test
  void everyRowHasATestThatCarriesItsIdAndThePageNamesIt() throws Exception {
    Map<String, TreeSet<String>> tests = TestTags.scan(ROOT);
    String page = Files.readString(ROOT.resolve("docs/safety-case.md"));
    List<Scenario> scenarios = ScenarioFile.readAll(ROOT.resolve("hil-rig/scenarios"));
    for (String row : rows()) {
      Set<String> shown = new TreeSet<>(tests.getOrDefault(row, new TreeSet<>()));
      scenarios.stream().filter(s -> s.row().equals(row)).forEach(s -> shown.add(s.id()));
      String line =
          page.lines().filter(l -> l.startsWith("| " + row + " |")).findFirst().orElse("");
      // Tests newer than the page may be missing on it; one that is gone may not stand there.
      List<String> named =
          Arrays.asList(
              line.substring(line.lastIndexOf('|', line.length() - 2) + 1)
                  .replaceAll("[`|]", "")
                  .strip()
                  .split(", "));
      assertThat(named).as(row).isNotEmpty().isSubsetOf(shown);
    }
    assertThat(idsIn(page)).containsExactlyElementsOf(rows());
  }

  @Test
  void nothingCarriesAnIdThatIsNoRow() {
    Set<String> rows = rows();
    for (FaultKind kind : FaultKinds.all()) {
      assertThat(rows).as(kind.id()).contains(kind.row());
    }
    for (FaultCode code : FaultCode.values()) {
      assertThat(rows).as(code.id()).containsAll(Arrays.asList(code.requirement().split(" ")));
    }
  }

  @Test
  void theRowsAreThoseOfTheFaultList() throws Exception {
    String shared = System.getProperty("boostwright.shared", "");
    assumeTrue(!shared.isEmpty(), "the fault list is not here");
    Path list = Path.of(shared).resolve("faults.md");
    assumeTrue(Files.exists(list), "the fault list is not here");
    assertThat(rows()).containsExactlyInAnyOrderElementsOf(idsIn(Files.readString(list)));
  }
}
