package org.boostwright.core.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Test;

/** A permission as the word that stands in a recording. */
class PermissionTest {
  @Test
  void whatIsWrittenIsRead() {
    for (Permission permission :
        List.of(
            Permission.NONE,
            Permission.FULL,
            new Permission(true, 0.2725, false),
            new Permission(true, 1.0, false))) {
      assertThat(Permission.parse(permission.text())).isEqualTo(permission);
      assertThat(permission.text()).doesNotContain(" ").doesNotContain(",");
      String meta = LogFormat.meta("0123", permission, "pi") + " ambient_kpa_abs=101.3";
      assertThat(LogFormat.metaValue(meta, LogFormat.META_PERMISSION)).isEqualTo(permission.text());
      assertThat(LogFormat.metaValue(meta, LogFormat.META_SETTINGS)).isEqualTo("0123");
      assertThat(LogFormat.metaValue(meta, LogFormat.META_SOURCE)).isEqualTo("pi");
      assertThat(LogFormat.metaValue(meta, LogFormat.META_CUT_TEST)).isEmpty();
    }
  }

  @Test
  void anythingElseIsRefused() {
    for (String text : List.of("", "full", "1.1", "-0.1", "NaN", "NaN+trim", "+trim", "none+trim")) {
      assertThatThrownBy(() -> Permission.parse(text))
          .as(text)
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
