/**
 * The kernel bench: the controller's program as packaged for the Pi, on a real arm64 Linux kernel
 * under emulation, with the virtual car at the kernel's other end. Nothing of the guest itself
 * belongs here, that is in {@code hil-rig/kernel-bench}.
 */
@NullMarked
package org.boostwright.rig.kernel;

import org.jspecify.annotations.NullMarked;
