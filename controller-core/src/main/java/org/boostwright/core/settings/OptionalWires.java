package org.boostwright.core.settings;

/**
 * Which optional inputs are wired; what is not wired is neither expected nor watched.
 *
 * @param keyInput ignition key input
 * @param permitInput permit input from an external safety device
 * @param boostSelector low/high boost switch
 * @param coilFeedback wire that shows coil current
 * @param springOnlySense wire that shows the spring-only switch
 */
public record OptionalWires(
    boolean keyInput,
    boolean permitInput,
    boolean boostSelector,
    boolean coilFeedback,
    boolean springOnlySense) {}
