package org.boostwright.pi;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** The runtime never sees the rig. */
class ArchitectureTest {
  @Test
  void theRuntimeDoesNotKnowTheRig() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.boostwright.rig..")
        .check(new ClassFileImporter().importPackages("org.boostwright.pi"));
  }
}
