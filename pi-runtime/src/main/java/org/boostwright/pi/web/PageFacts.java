package org.boostwright.pi.web;

import java.nio.file.Path;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;

/**
 * What does not change during a run.
 *
 * @param version of the program
 * @param settings in use
 * @param settingsText the settings file as it was read
 * @param digest fingerprint of the settings
 * @param proof what is proven, in words
 * @param permission how far this run may go
 * @param io where the wires are, in words
 * @param recordings folder of the recordings
 */
public record PageFacts(
    String version,
    Settings settings,
    String settingsText,
    String digest,
    String proof,
    Permission permission,
    String io,
    Path recordings) {}
