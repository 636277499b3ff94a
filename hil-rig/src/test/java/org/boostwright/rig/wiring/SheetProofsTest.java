package org.boostwright.rig.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.rig.wiring.draw.SheetOverlaps;
import org.junit.jupiter.api.Test;

/** The proofs that a sheet is sound find what they are there to find. */
class SheetProofsTest {
  private static final PartClass R = PartClasses.RESISTOR;

  @Test
  void soundSheetHasNoProblem() {
    Block block = pair().wire("R1.2 -- R2.1").build();
    assertThat(SheetGeometry.problems(block)).isEmpty();
    assertThat(SheetOverlaps.problems(block)).isEmpty();
  }

  @Test
  void missingWireIsFound() {
    assertThat(SheetGeometry.problems(pair().build()))
        .anyMatch(t -> t.contains("not drawn connected"));
  }

  @Test
  void wireOverAnotherNetIsFound() {
    Block block = pair().wire("R1.2 -- R2.1").wire("R1.1 -- 10,10 -- R2.2").build();
    assertThat(SheetGeometry.problems(block)).anyMatch(t -> t.contains("runs over"));
  }

  @Test
  void slantedWireIsFound() {
    Block block = pair().wire("R1.2 -- 16,13 -- R2.1").build();
    assertThat(SheetGeometry.problems(block)).anyMatch(t -> t.contains("slanted"));
  }

  @Test
  void textOnASymbolIsFound() {
    Block block = pair().wire("R1.2 -- R2.1").note(11, 10, "on top of R1").build();
    assertThat(SheetOverlaps.problems(block)).anyMatch(t -> t.contains("on top of R1"));
  }

  @Test
  void wireThroughASymbolIsFound() {
    Block block = pair().wire("R1.2 -- R2.1").wire("R1.1 -- 10,9 -- 22,9 -- 22,12").build();
    assertThat(SheetOverlaps.problems(block)).anyMatch(t -> t.contains("R2"));
  }

  @Test
  void harnessAndSheetsAgree() {
    assertThat(Harness.problems(Circuit.own())).isEmpty();
    Circuit moved = Circuit.own();
    Block power = moved.fitted().get(0);
    Circuit without =
        new Circuit(
            moved.settings(),
            moved.fitted().subList(1, moved.fitted().size()),
            moved.alternatives());
    assertThat(Harness.problems(without)).isNotEmpty();
    assertThat(power.id()).isEqualTo("power");
  }

  /** Two resistors in a row from A over B to C. */
  private static BlockBuilder pair() {
    BlockBuilder b = new BlockBuilder("test", "Test");
    b.part("R1", Symbol.RESISTOR, R, 1000, 10, 10, Turn.NONE, "A", "B");
    b.part("R2", Symbol.RESISTOR, R, 1000, 20, 10, Turn.NONE, "B", "C");
    b.flag("A", 8, 10, false).flag("C", 26, 10, true);
    return b.wire("R1.1 -- 8,10").wire("R2.2 -- 26,10");
  }
}
