/**
 * Small interfaces between the runtime and wires: analogue in, pulses in, switches, PWM, outputs.
 *
 * <p>Implementations for the Pi and for the serial link come beside them; device models in tests
 * stand behind the same interfaces.
 */
@NullMarked
package org.boostwright.pi.io;

import org.jspecify.annotations.NullMarked;
