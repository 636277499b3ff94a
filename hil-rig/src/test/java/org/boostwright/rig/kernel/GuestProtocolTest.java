package org.boostwright.rig.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The bytes between rig and kernel module, against the module's own header. */
class GuestProtocolTest {
  private static ByteBuffer buffer(int bytes) {
    return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static byte[] report(int magic, int kind, String text) {
    byte[] said = text.getBytes(StandardCharsets.UTF_8);
    return buffer(64 + said.length)
        .putInt(magic)
        .putInt(1)
        .putInt(said.length)
        .putInt(7)
        .putLong(123_456_789_012L)
        .putInt(1 << 17)
        .putInt(42)
        .putInt(kind)
        .putShort((short) 0)
        .putShort((short) 1)
        .putLong(123_000_000_000L)
        .putLong(33_333_333L)
        .putLong(10_000_000L)
        .put(said)
        .array();
  }

  private static GuestReport read(byte[] bytes) throws IOException {
    return GuestReport.read(new ByteArrayInputStream(bytes));
  }

  @Test
  void aReportIsReadAsTheModuleWritesIt() throws IOException {
    GuestReport report = read(report(0x42775231, 1, "hello\n"));
    assertThat(report.nanos()).isEqualTo(123_456_789_012L);
    assertThat(report.outputs()).isEqualTo(1 << 17);
    assertThat(report.transfers()).isEqualTo(42L);
    assertThat(report.lostEvents()).isEqualTo(7L);
    assertThat(report.text()).isEqualTo("hello\n");
    KernelEvent event = report.events().get(0);
    assertThat(event.kind()).isEqualTo(KernelEvent.Kind.PWM_APPLY);
    assertThat(event.on()).isTrue();
    assertThat(event.periodNanos()).isEqualTo(33_333_333L);
    assertThat(event.dutyNanos()).isEqualTo(10_000_000L);
  }

  @Test
  void aReportCutOffOrSpoiltIsRefused() {
    byte[] whole = report(0x42775231, 1, "hello");
    for (int length = 0; length < whole.length; length++) {
      byte[] cut = java.util.Arrays.copyOf(whole, length);
      assertThatThrownBy(() -> read(cut)).isInstanceOf(EOFException.class);
    }
    assertThatThrownBy(() -> read(report(1, 1, ""))).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> read(report(0x42775231, 99, ""))).isInstanceOf(IOException.class);
  }

  @Test
  void ordersAreWrittenAsTheModuleReadsThem() {
    GuestOrders orders = new GuestOrders();
    orders.faults = GuestOrders.NAK | GuestOrders.STUCK;
    orders.level(22, true);
    orders.microVolts[3] = -5;
    orders.pulseLine[GuestOrders.TACH] = 5;
    orders.halfNanos[GuestOrders.TACH] = 2_500_000L;
    orders.stepNanos = 5_000_000;
    orders.type("ls\n");
    ByteBuffer bytes = ByteBuffer.wrap(orders.take()).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(bytes.remaining()).isEqualTo(64 + 3);
    assertThat(bytes.getInt(0)).isEqualTo(0x42774f31);
    assertThat(bytes.getInt(4)).isEqualTo(3);
    assertThat(bytes.getInt(8)).isEqualTo(5);
    assertThat(bytes.getInt(12)).isEqualTo(1 << 22);
    assertThat(bytes.getInt(28)).isEqualTo(-5);
    assertThat(bytes.getInt(32)).isEqualTo(5);
    assertThat(bytes.getInt(36)).isEqualTo(2_500_000);
    assertThat(bytes.getInt(56)).isEqualTo(5_000_000);
    assertThat(orders.take()).as("typed once").hasSize(64);
  }

  @Test
  void numbersAgreeWithTheModulesHeader() throws IOException {
    Path root = Path.of(System.getProperty("boostwright.root", ".."));
    String header = Files.readString(root.resolve("hil-rig/kernel-bench/module/bwbench.h"));
    for (KernelEvent.Kind kind : KernelEvent.Kind.values()) {
      assertThat(number(header, "BW_" + kind.name() + " = (\\d+)")).isEqualTo(wire(kind));
    }
    assertThat(number(header, "BW_FAULT_NAK 0x(\\w+)")).isEqualTo(GuestOrders.NAK);
    assertThat(number(header, "BW_FAULT_HANG 0x(\\w+)")).isEqualTo(GuestOrders.HANG);
    assertThat(number(header, "BW_FAULT_STUCK 0x(\\w+)")).isEqualTo(GuestOrders.STUCK);
    assertThat(number(header, "BW_FAULT_WRONG 0x(\\w+)")).isEqualTo(GuestOrders.WRONG_CHIP);
    assertThat(number(header, "BW_FAULT_PERIOD 0x(\\w+)")).isEqualTo(GuestOrders.REFUSE_PERIOD);
  }

  private static int wire(KernelEvent.Kind kind) {
    for (int wire = 0; wire < 100; wire++) {
      if (KernelEvent.Kind.of(wire) == kind) {
        return wire;
      }
    }
    throw new IllegalStateException(kind + " has no number");
  }

  private static int number(String header, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(header);
    assertThat(matcher.find()).as(pattern).isTrue();
    return Integer.parseInt(matcher.group(1), 16);
  }
}
