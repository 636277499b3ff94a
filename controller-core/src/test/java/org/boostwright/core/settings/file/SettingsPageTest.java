package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The page about the settings file names every key there is. */
class SettingsPageTest {

  @Test
  void everyKeyStandsOnThePage() throws IOException {
    String page = Files.readString(Example.path().resolveSibling("settings.md"));
    LoadResult result = Example.parse(Example.full());
    Set<String> keys = new TreeSet<>(result.stated().keySet());
    for (CheckReport.Value value : SettingsCheck.report("car.toml", result).values()) {
      keys.add(value.key().replaceAll(" \\(.*", ""));
    }
    keys.add("sensors.assumed_ambient");
    assertThat(keys).hasSizeGreaterThan(100);
    for (String key : keys) {
      String last = key.substring(key.lastIndexOf('.') + 1);
      if (!key.equals("target.rows")) {
        assertThat(page).containsAnyOf("`" + last + "`", "[" + key + "]");
      }
    }
  }
}
