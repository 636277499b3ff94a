package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.boostwright.rig.replay.csv.Logs.read;

import java.nio.file.Path;
import org.assertj.core.api.AbstractThrowableAssert;
import org.junit.jupiter.api.Test;

/** What is no log is refused with a place and what to do. */
class RefusalTest {

  private static AbstractThrowableAssert<?, ? extends Throwable> refused(byte[] bytes) {
    return assertThatThrownBy(() -> LogImport.parse(bytes, "log.csv", LogMapping.NONE))
        .isInstanceOf(LogRefusedException.class);
  }

  private static AbstractThrowableAssert<?, ? extends Throwable> refused(String text) {
    return assertThatThrownBy(() -> read(text)).isInstanceOf(LogRefusedException.class);
  }

  @Test
  void emptyAndBlankFiles() {
    refused("").hasMessage("log.csv: the file is empty; export the log again");
    refused("\n\n  \n").hasMessageContaining("no line with anything in it");
  }

  @Test
  void aHeaderWithoutRowsAndASingleRow() {
    refused("time [s],rpm\n").hasMessageContaining("no row to read");
    refused("time [s],rpm\n0,900\n").hasMessageContaining("a single row is no log");
  }

  @Test
  void binaryJunk() {
    refused(new byte[] {'a', 'b', '\n', 0, 1, 2}).hasMessageStartingWith("log.csv:2: zero bytes");
    refused("time\u0001\u0002\u0003\u0004,rpm\n0,1\n").hasMessageContaining("control characters");
    refused(new byte[] {(byte) 0xFF, (byte) 0xFE, 't', 0}).hasMessageContaining("UTF-16");
  }

  @Test
  void aCellLongerThanAThousandCharacters() {
    refused("time [s],rpm\n0,900\n1," + "9".repeat(2000) + "\n")
        .hasMessageContaining("cell longer than 1000 characters");
    refused("x".repeat(100_000)).hasMessageContaining("1000 characters");
  }

  @Test
  void moreCellsThanAnyLogHas() {
    refused("time [s],rpm" + ",a".repeat(5000) + "\n0,1\n").hasMessageContaining("log.csv:1");
  }

  @Test
  void aQuoteThatIsNotClosed() {
    refused("time [s],rpm\n0,900\n1,\"901\n2,902\n3,903\n").hasMessageContaining("quote");
    refused("time [s],rpm\n0,\"900\n1,901\"\n2,902\n").hasMessageStartingWith("log.csv:2:2: ");
  }

  @Test
  void noTimeColumnOrNoSignal() {
    refused("rpm,throttle\n900,15\n901,15\n").hasMessageContaining("no header line");
    refused("time [s],colour\n0,1\n1,2\n")
        .hasMessageContaining("name the columns in a mapping file");
    refused("0,900\n1,901\n").hasMessageContaining("the file begins '0 900'");
  }

  @Test
  void aPressureWithoutUnitOrReferenceIsAskedFor() {
    refused("time [s],boost\n0,1\n1,2\n")
        .hasMessageContaining(
            "'boost' looks like map but has no unit; declare one of: kPa, hPa, bar");
    refused("time [s],manifold pressure [kPa]\n0,98\n1,99\n")
        .hasMessageContaining("absolute or gauge");
    refused("time [s],MAP [stone]\n0,98\n1,99\n").hasMessageContaining("unknown unit");
  }

  @Test
  void aFileThatIsNotThere() {
    assertThatThrownBy(() -> LogImport.read(Path.of("no", "such.csv"), LogMapping.NONE))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("cannot be read");
  }

  @Test
  void aSignalThatIsNeededButNotThereNamesWhatLooksLikeIt() throws LogRefusedException {
    RecordedLog log = read("time [s],rpm,boost\n0,900,1\n1,901,2\n");
    assertThatThrownBy(() -> log.require(LogSignal.MAP))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("'boost' looks like map but has no unit")
        .hasMessageContaining("under [map]");
    assertThat(log.require(LogSignal.ENGINE_SPEED).value(1)).isEqualTo(901.0);
  }
}
