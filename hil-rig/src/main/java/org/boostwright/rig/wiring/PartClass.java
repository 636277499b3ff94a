package org.boostwright.rig.wiring;

/**
 * A class of parts: what the data sheet of a part must say before it may be fitted. No shop brands.
 *
 * @param id short name in the parts list
 * @param title what it is
 * @param ratings the data-sheet numbers that matter
 * @param why why these numbers
 * @param alternatives what else may be fitted and what changes
 * @param model SPICE model or sub-circuit that stands for it; empty where the value says all
 */
public record PartClass(
    String id, String title, String ratings, String why, String alternatives, String model) {}
