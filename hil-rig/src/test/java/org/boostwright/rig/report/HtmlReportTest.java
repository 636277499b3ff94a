package org.boostwright.rig.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.rig.result.ResultBuilder;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
  private static final String PAGE =
      HtmlReport.render(SampleResults.pull(UnitSettings.KPA_ABSOLUTE));

  @Test
  void noTextOfAResultCanBreakOutOfThePage() {
    String page = HtmlReport.render(SampleResults.hostile());
    assertThat(page).doesNotContain("<img").doesNotContain("<script>document");
    // Plot data, library and own script; nothing that came out of a text.
    assertThat(Pattern.compile("<script").matcher(page).results().count()).isEqualTo(3);
    assertThat(Pattern.compile("</script").matcher(page).results().count()).isEqualTo(3);
  }

  @Test
  void policyAllowsExactlyTheInlinedStyleAndScripts() throws Exception {
    Matcher policy =
        Pattern.compile("http-equiv=\"Content-Security-Policy\" content=\"([^\"]+)\"")
            .matcher(PAGE);
    assertThat(policy.find()).isTrue();
    String rules = policy.group(1).replace("&#39;", "'");
    assertThat(rules).startsWith("default-src 'none'").doesNotContain("unsafe");
    assertThat(rules).contains(hash(between("<style>", "</style>", 0)));
    int first = PAGE.indexOf("<script>");
    assertThat(rules).contains(hash(between("<script>", "</script>", first)));
    int second = PAGE.indexOf("<script>", first + 1);
    assertThat(rules).contains(hash(between("<script>", "</script>", second)));
  }

  @Test
  void pageLoadsNothing() {
    String withoutLicence = PAGE.replaceAll("(?s)<!--.*?-->", "");
    assertThat(withoutLicence)
        .doesNotContain("src=")
        .doesNotContain("<link")
        .doesNotContain("@import")
        .doesNotContain("url(");
  }

  @Test
  void verdictNextStepAndLimitsAreInWords() {
    assertThat(PAGE)
        .contains("✕ failed")
        .contains("<li>Lower base duty by 3 % from 3500 to 4000 rpm and repeat the pull.")
        .contains("at most 195 kPa absolute")
        .contains("-3 to 3 kPa")
        .contains("not measured");
    assertThat(PAGE.indexOf("Lower base duty")).isLessThan(PAGE.indexOf("Let it cool"));
  }

  @Test
  void pressuresFollowThePersonsUnits() {
    // 182.44 kPa absolute: (182.44 - 101.325) / 6.894757 = 11.765 psi gauge; 7.9 kPa = 1.146 psi.
    String page = HtmlReport.render(SampleResults.pull(new UnitSettings(PressureUnit.PSI, true)));
    assertThat(page).contains("11.76 psi gauge").contains("1.15 psi<");
    assertThat(page.substring(0, page.indexOf("Where this comes from")))
        .doesNotContain(" kPa</td>");
  }

  @Test
  void resultWithoutPlotsHasNoScript() {
    assertThat(HtmlReport.render(new ResultBuilder("check").build())).doesNotContain("<script");
  }

  private static String between(String start, String end, int from) {
    int a = PAGE.indexOf(start, from) + start.length();
    return PAGE.substring(a, PAGE.indexOf(end, a));
  }

  private static String hash(String content) throws Exception {
    byte[] digest =
        MessageDigest.getInstance("SHA-256").digest(content.getBytes(StandardCharsets.UTF_8));
    return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
  }
}
