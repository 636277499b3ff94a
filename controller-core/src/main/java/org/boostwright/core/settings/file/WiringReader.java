package org.boostwright.core.settings.file;

import java.util.Map;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.settings.WiringSettings.Clamp;
import org.boostwright.core.settings.WiringSettings.Coil;
import org.boostwright.core.settings.WiringSettings.Driver;
import org.boostwright.core.settings.WiringSettings.Heartbeat;
import org.boostwright.core.settings.WiringSettings.PressureInput;

/**
 * Reads {@code [wiring]}: the circuit's values. Every key may be left out; the project's own
 * circuit stands in.
 */
final class WiringReader {
  static final Map<String, Clamp> CLAMPS =
      Map.of("none", Clamp.NONE, "diode", Clamp.DIODE, "zener", Clamp.ZENER, "tvs", Clamp.TVS);

  private static final Quantity OHM = Quantity.plain("ohm");
  static final Quantity NANOFARAD = new Quantity(Quantity.Kind.PLAIN, "nF", 1.0, 1e9, 0.0);
  static final Quantity MILLIHENRY = new Quantity(Quantity.Kind.PLAIN, "mH", 1.0, 1e3, 0.0);
  static final Quantity MILLISECOND = new Quantity(Quantity.Kind.PLAIN, "ms", 1.0, 1e3, 0.0);
  static final Quantity AMPERE = Quantity.plain("A");
  private static final Bounds ANY_OHMS = new Bounds(0.0, 10e6);
  private static final Bounds FARADS = new Bounds(1e-11, 1e-3);
  private static final Bounds GATE_VOLTS = new Bounds(0.1, 20.0);

  private final Section section;

  private WiringReader(Section section) {
    this.section = section;
  }

  static WiringSettings read(Section section) {
    WiringReader reader = new WiringReader(section);
    WiringSettings own = WiringSettings.DEFAULT;
    return new WiringSettings(
        reader.volts("converter_supply_volts", own.converterSupplyVolts(), new Bounds(1.0, 6.0)),
        reader.map(own.map()),
        reader.coil(own.coil()),
        reader.driver(own.driver()),
        reader.heartbeat(own.heartbeat()));
  }

  private PressureInput map(PressureInput own) {
    return new PressureInput(
        volts("sensor_supply_volts", own.sensorSupplyVolts(), new Bounds(1.0, 30.0)),
        section.flag("map_buffered", own.buffered()),
        ohms("map_bias_ohms", own.biasOhms()),
        ohms("map_divider_top_ohms", own.dividerTopOhms()),
        ohms("map_divider_bottom_ohms", own.dividerBottomOhms()),
        ohms("map_filter_ohms", own.filterOhms()),
        section.number("map_filter_nf", own.filterFarads(), NANOFARAD, FARADS));
  }

  private Coil coil(Coil own) {
    Clamp clamp = section.choice("clamp", own.clamp(), CLAMPS);
    double usual =
        switch (clamp) {
          case NONE, DIODE -> 0.8;
          case ZENER -> 12.8;
          case TVS -> 38.6;
        };
    return new Coil(
        section.number("coil_mh", own.henries(), MILLIHENRY, new Bounds(1e-3, 2.0)),
        amps("pick_up_a", own.pickUpAmps()),
        amps("drop_out_a", own.dropOutAmps()),
        section.number("spool_on_ms", own.spoolOnSeconds(), MILLISECOND, new Bounds(0.0, 0.05)),
        section.number("spool_off_ms", own.spoolOffSeconds(), MILLISECOND, new Bounds(0.0, 0.05)),
        clamp,
        volts("clamp_volts", usual, new Bounds(0.2, 200.0)));
  }

  private Driver driver(Driver own) {
    return new Driver(
        volts("gate_drive_volts", own.gateDriveVolts(), GATE_VOLTS),
        volts("mosfet_threshold_max_volts", own.thresholdMaxVolts(), GATE_VOLTS),
        volts("mosfet_rating_volts", own.drainRatingVolts(), new Bounds(10.0, 500.0)),
        section.number("mosfet_on_ohms", own.onOhms(), OHM, new Bounds(0.001, 10.0)),
        ohms("pull_down_ohms", own.pullDownOhms()),
        section.number("coil_fuse_a", own.fuseAmps(), AMPERE, new Bounds(0.1, 50.0)),
        volts("load_dump_volts", own.loadDumpVolts(), new Bounds(16.0, 120.0)));
  }

  private Heartbeat heartbeat(Heartbeat own) {
    return new Heartbeat(
        ohms("heartbeat_bleed_ohms", own.bleedOhms()),
        section.number("heartbeat_reservoir_nf", own.reservoirFarads(), NANOFARAD, FARADS),
        section.number("heartbeat_coupling_nf", own.couplingFarads(), NANOFARAD, FARADS),
        volts("heartbeat_pump_volts", own.pumpVolts(), new Bounds(1.0, 20.0)),
        volts("heartbeat_threshold_min_volts", own.thresholdMinVolts(), GATE_VOLTS),
        volts("heartbeat_threshold_max_volts", own.thresholdMaxVolts(), GATE_VOLTS));
  }

  private double volts(String key, double fallback, Bounds bounds) {
    return section.number(key, fallback, Quantity.VOLTS, bounds);
  }

  private double ohms(String key, double fallback) {
    return section.number(key, fallback, OHM, ANY_OHMS);
  }

  private double amps(String key, double fallback) {
    return section.number(key, fallback, AMPERE, new Bounds(0.001, 10.0));
  }
}
