/**
 * The physical model of valve, hose and actuator chamber that the bench fits, and what follows from
 * a fit.
 *
 * <p>Pure computation; how the readings came about belongs in the parent package.
 */
@NullMarked
package org.boostwright.core.bench.model;

import org.jspecify.annotations.NullMarked;
