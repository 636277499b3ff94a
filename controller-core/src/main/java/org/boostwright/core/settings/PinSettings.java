package org.boostwright.core.settings;

/**
 * Which pins of the Raspberry Pi the wires are on. All numbers are GPIO numbers of the processor
 * (BCM), not places on the header; {@link #NOT_WIRED} where there is no wire.
 *
 * @param pwmChip number of the PWM chip in the kernel's list; differs between boards
 * @param pwmChannel channel of that chip
 * @param pwm valve coil: 12, 13, 18 or 19, the pins with a hardware PWM
 * @param heartbeat holds the coil supply closed while it is toggled
 * @param coilSupply second condition of the coil supply: low opens it at once
 * @param engineCut engine-cut request
 * @param lamp warning lamp
 * @param key ignition key
 * @param permit permit from an external safety device
 * @param boostSelector low/high boost switch
 * @param springOnlySense position of the spring-only switch
 * @param coilFeedback coil current present
 * @param tach engine-speed pulses
 * @param road road-speed pulses
 * @param i2cInUse the two-wire bus on GPIO 2 and 3 is in use
 * @param spiInUse the SPI bus on GPIO 7 to 11 is in use
 * @param uartInUse the serial port on GPIO 14 and 15 is in use
 * @param audioBoardInUse an audio board (I2S) on GPIO 18 to 21 is in use
 * @param watchdogBoard pin that feeds a watchdog board on the header; the watchdog of the machine
 *     itself needs none
 * @param machineWatchdog the machine's own watchdog has to be there, and is fed while the tick
 *     ticks
 */
public record PinSettings(
    int pwmChip,
    int pwmChannel,
    int pwm,
    int heartbeat,
    int coilSupply,
    int engineCut,
    int lamp,
    int key,
    int permit,
    int boostSelector,
    int springOnlySense,
    int coilFeedback,
    int tach,
    int road,
    boolean i2cInUse,
    boolean spiInUse,
    boolean uartInUse,
    boolean audioBoardInUse,
    int watchdogBoard,
    boolean machineWatchdog) {
  /** Stands for a wire that does not exist. */
  public static final int NOT_WIRED = -1;
}
