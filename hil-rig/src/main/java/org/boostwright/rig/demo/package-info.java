/**
 * The demonstration: the whole job on the built-in project car, step by step, judged like any other
 * run.
 *
 * <p>Only puts together what other packages compute.
 */
@NullMarked
package org.boostwright.rig.demo;

import org.jspecify.annotations.NullMarked;
