package org.boostwright.rig;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** The rig never sees the Pi runtime. */
class ArchitectureTest {
  @Test
  void theRigDoesNotKnowThePiRuntime() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.boostwright.pi..")
        .check(new ClassFileImporter().importPackages("org.boostwright.rig"));
  }
}
