/**
 * The one result object every command prints, stores and reports from, and its JSON form.
 *
 * <p>No computing of results and no presentation; those are in the commands and in report.
 */
@NullMarked
package org.boostwright.rig.result;

import org.jspecify.annotations.NullMarked;
