package org.boostwright.rig.wiring.block;

import java.util.List;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.settings.WiringSettings.Clamp;
import org.boostwright.core.settings.WiringSettings.PressureInput;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.block.SensorInputBlock.Names;

/** All sheets: those of the circuit as fitted, and those that may stand in their place. */
public final class Blocks {
  /** Coil resistance of the valve that is drawn and simulated, ohm. */
  public static final double COIL_OHMS = 30.0;

  /** The divider of the 3.3 V way. */
  public static final PressureInput MAP_3V3 =
      new PressureInput(5.0, true, 51e3, 10e3, 15e3, 0.0, 680e-9);

  /** Without a follower: the filter must be fast enough to empty through the bias. */
  public static final PressureInput MAP_SIMPLE =
      new PressureInput(5.0, false, 51e3, 0.0, 0.0, 4700.0, 68e-9);

  private Blocks() {}

  /** The circuit as fitted. */
  public static List<Block> fitted(WiringSettings w) {
    return List.of(
        PowerBlock.build(w),
        ValveDriverBlock.build(w, Clamp.DIODE),
        HeartbeatGateBlock.build(w),
        EngineCutBlock.build(),
        SensorInputBlock.build(map("map-input", "Manifold pressure input"), w.map()),
        SensorInputBlock.build(
            new Names(
                "throttle-input",
                "Throttle input",
                520,
                "J2.4",
                "throttle",
                Nets.TPS_SIG,
                Nets.TPS_ADC),
            WiringSettings.DEFAULT.map()),
        SlowInputsBlock.build(false),
        ConverterBlock.twoWire(),
        PulseInputBlock.tach(),
        PulseInputBlock.coil(),
        PulseInputBlock.road(),
        SensorTapsBlock.build(),
        DigitalInputsBlock.build());
  }

  /** Sheets that may stand in the place of a fitted one. */
  public static List<Block> alternatives(WiringSettings w) {
    return List.of(
        ValveDriverBlock.build(w, Clamp.ZENER),
        ValveDriverBlock.build(w, Clamp.TVS),
        SensorInputBlock.build(
            map("map-input-3v3", "Manifold pressure input, converter at 3.3 V"), MAP_3V3),
        SensorInputBlock.build(
            map("map-input-simple", "Manifold pressure input without a follower"), MAP_SIMPLE),
        SlowInputsBlock.build(true),
        ConverterBlock.spi(),
        ModuleBuildBlock.build(w));
  }

  private static Names map(String id, String title) {
    return new Names(id, title, 500, "J2.3", "pressure sensor", Nets.MAP_SIG, Nets.MAP_ADC);
  }
}
