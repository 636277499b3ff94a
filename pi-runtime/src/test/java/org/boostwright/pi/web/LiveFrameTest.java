package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.monitor.FaultCode;
import org.junit.jupiter.api.Test;

/** What the page says of a fault. */
class LiveFrameTest {
  private static String said(FaultCode code) {
    JsonText json = new JsonText();
    LiveFrame.fault(json, code);
    return json.toString();
  }

  @Test
  void aFaultThatRestsSaysWhatToCheckInOrderAndWhetherToDriveOn() {
    assertThat(said(FaultCode.OVERBOOST))
        .contains("\"order\":\"actuator hose")
        .contains("\"onwards\":\"only if hose and rod are sound");
    assertThat(said(FaultCode.PERMIT_OPEN)).contains("\"onwards\":\"no,");
  }

  @Test
  void aRemarkDoesNot() {
    assertThat(said(FaultCode.TARGET_LIMITED)).doesNotContain("onwards").contains("\"next\"");
  }
}
