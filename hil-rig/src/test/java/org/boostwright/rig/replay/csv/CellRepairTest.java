package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.boostwright.rig.replay.csv.Logs.mapping;
import static org.boostwright.rig.replay.csv.Logs.plain;
import static org.boostwright.rig.replay.csv.Logs.read;
import static org.boostwright.rig.replay.csv.Logs.repairs;
import static org.boostwright.rig.replay.csv.Logs.value;
import static org.boostwright.rig.replay.csv.Logs.withLine;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cells and rows that are not as they should be; the plain log is the twin of every case. */
class CellRepairTest {

  @Test
  void thePlainLogNeedsNoRepair() throws LogRefusedException {
    RecordedLog log = read(plain());
    assertThat(log.rows()).isEqualTo(12);
    assertThat(log.repairs()).isEmpty();
    assertThat(log.notes()).isEmpty();
    assertThat(log.unusedColumns()).isEmpty();
    assertThat(log.line(11)).isEqualTo(13);
  }

  @ParameterizedTest
  @CsvSource({
    "'', MISSING_CELL",
    "n/a, NO_VALUE_WORD",
    "--, NO_VALUE_WORD",
    "NaN, NO_VALUE_WORD",
    "1O3, UNREADABLE_CELL",
    "0x67, UNREADABLE_CELL",
    "103d, UNREADABLE_CELL",
    "Infinity, UNREADABLE_CELL",
    "1e999, UNREADABLE_CELL",
    "-40, IMPOSSIBLE_VALUE",
    "99999, IMPOSSIBLE_VALUE"
  })
  void aCellWithoutAValueHoldsTheLastOne(String cell, RepairKind kind) throws LogRefusedException {
    RecordedLog log = read(withLine(5, "0.3," + cell + ",3030,53.0"));
    assertThat(value(log, LogSignal.MAP, 3)).isNaN();
    assertThat(log.require(LogSignal.MAP).isFresh(3)).isFalse();
    assertThat(value(log, LogSignal.MAP, 4)).isEqualTo(104.0);
    assertThat(value(log, LogSignal.ENGINE_SPEED, 3)).isEqualTo(3030.0);
    assertThat(log.repairs()).containsExactly(new Repair(kind, "MAP [kPa]", 1, 5, 5, cell));
  }

  @ParameterizedTest
  @ValueSource(strings = {"103", "+103", "103.0", "1.03e2", " 103 ", "\"103\""})
  void numbersMayBeWrittenInEveryUsualWay(String cell) throws LogRefusedException {
    RecordedLog log = read(withLine(5, "0.3," + cell + ",3030,53.0"));
    assertThat(value(log, LogSignal.MAP, 3)).isEqualTo(103.0);
    assertThat(log.repairs()).isEmpty();
  }

  @Test
  void aShortRowLacksItsLastCells() throws LogRefusedException {
    RecordedLog log = read(withLine(5, "0.3,103"));
    assertThat(value(log, LogSignal.MAP, 3)).isEqualTo(103.0);
    assertThat(value(log, LogSignal.THROTTLE, 3)).isNaN();
    assertThat(repairs(log, RepairKind.SHORT_ROW))
        .containsExactly(new Repair(RepairKind.SHORT_ROW, "", 1, 5, 5, "2 of 4 cells"));
  }

  @Test
  void aLongRowIsLeftOut() throws LogRefusedException {
    RecordedLog log = read(withLine(5, "0.3,103,3030,53.0,7"));
    assertThat(log.rows()).isEqualTo(11);
    assertThat(repairs(log, RepairKind.LONG_ROW))
        .containsExactly(new Repair(RepairKind.LONG_ROW, "", 1, 5, 5, "5 instead of 4 cells"));
  }

  @Test
  void aSeparatorAtTheEndIsIgnored() throws LogRefusedException {
    RecordedLog log = read(plain().replace("\n", ",\n"));
    assertThat(log.rows()).isEqualTo(12);
    assertThat(log.repairs())
        .containsExactly(new Repair(RepairKind.TRAILING_SEPARATOR, "", 12, 2, 13, ""));
  }

  @Test
  void emptyLinesAndWindowsLineEndsAreNoTrouble() throws LogRefusedException {
    RecordedLog log = read(plain().replace("\n", "\r\n\r\n"));
    assertThat(log.rows()).isEqualTo(12);
    assertThat(log.repairs()).isEmpty();
    assertThat(log.line(11)).isEqualTo(25);
  }

  @Test
  void manyUnreadableCellsAreRefusedWithTheFirstPlace() {
    String text = plain().replace(",10", ",1O");
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageStartingWith(
            "log.csv:2:2: 'MAP [kPa]': 10 of 12 cells cannot be used, first '1O0'; ");
  }

  @Test
  void gaugePressureTakenForAbsoluteIsCaughtAndCanBeDeclared() throws LogRefusedException {
    String text = "time [s],MAP [kPa]\n0,-60\n1,-55\n2,-50\n3,-20\n4,0\n5,40\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("is it gauge?");
    RecordedLog log = read(text, mapping("[map]\nreference = \"gauge\""));
    assertThat(value(log, LogSignal.MAP, 4)).isEqualTo(101.325);
  }

  @Test
  void absolutePressureTakenForGaugeIsCaughtAndCanBeDeclared() throws LogRefusedException {
    String text = "time [s],boost [kPa]\n0,98\n1,99\n2,180\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("is it absolute?");
    RecordedLog log = read(text, mapping("[map]\nreference = \"absolute\""));
    assertThat(value(log, LogSignal.MAP, 2)).isEqualTo(180.0);
  }

  @Test
  void decimalCommasBetweenCommasAreRefused() {
    String text =
        "time [s],MAP [kPa],rpm\n0,0,100,5,900,0\n0,1,101,5,901,0\n0,2,1,1,1,1\n0,3,1,1,1,1\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("decimal commas need ; or tab");
  }

  @Test
  void thousandsSeparatorsAreNotGuessed() {
    String text =
        "time [s];rpm;MAP [kPa]\n0.0;1,200;100\n0.1;1,300;101\n0.2;1,400;101\n0.3;1,1;1\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("declare the decimal sign");
  }
}
