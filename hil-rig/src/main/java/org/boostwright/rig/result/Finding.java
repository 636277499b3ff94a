package org.boostwright.rig.result;

/**
 * Something a person should know, with what to do about it.
 *
 * @param code stable snake_case name
 * @param severity how much it matters
 * @param text what was found: value, unit, limit and place
 * @param next what to do next; empty when nothing
 */
public record Finding(String code, Severity severity, String text, String next) {}
