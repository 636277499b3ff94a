/**
 * Before anything is bought and driven: whether a project fits together, and its first tables.
 *
 * <p>Works from the settings file, the bench and the virtual car; corrections from real logs are
 * {@code rig.logs}.
 */
@NullMarked
package org.boostwright.rig.plan;

import org.jspecify.annotations.NullMarked;
