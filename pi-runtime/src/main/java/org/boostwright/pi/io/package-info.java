/**
 * Small interfaces between the runtime and wires, and what is built on them: converter chips, PWM,
 * pulses, switches, coil.
 *
 * <p>Everything here works on bytes, levels and edges; the library that reaches the kernel is
 * behind {@code io.pi4j}, and device models in tests stand in its place.
 */
@NullMarked
package org.boostwright.pi.io;

import org.jspecify.annotations.NullMarked;
