package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * The reference of the settings file is what the program asks for. {@code -Dboostwright.write=true}
 * writes it anew between the headings that a person writes.
 */
class SettingsPageTest {
  private static final String FIRST = "\n### Top of the file";
  private static final String AFTER = "\n## Who else writes it";

  @Test
  void referenceIsWhatTheProgramAsksFor() throws IOException {
    SettingsPage reference = new SettingsPage();
    String tables = reference.tables();
    assertThat(tables).doesNotContain("MISSING");
    assertThat(reference.unused()).isEmpty();
    Path file = Example.path().resolveSibling("settings.md");
    String page = Files.readString(file);
    String expected =
        page.substring(0, page.indexOf(FIRST)) + tables + page.substring(page.indexOf(AFTER));
    if (Boolean.getBoolean("boostwright.write")) {
      Files.writeString(file, expected);
    }
    assertThat(Files.readString(file)).isEqualTo(expected);
  }

  @Test
  void everyKeyOfTheExampleAndEveryEffectiveValueStandsInTheReference() throws IOException {
    LoadResult result = Example.parse(Example.full());
    Set<String> keys = new TreeSet<>(result.stated().keySet());
    SettingsCheck.report("car.toml", result).values().stream()
        .filter(value -> !value.text().equals("not fitted") && !value.text().equals("none"))
        .map(value -> value.key().replaceAll(" \\(.*", ""))
        .filter(key -> !key.equals("target.rows"))
        .forEach(keys::add);
    assertThat(keys).hasSizeGreaterThan(100);
    assertThat(new SettingsPage().keys()).containsAll(keys);
  }
}
