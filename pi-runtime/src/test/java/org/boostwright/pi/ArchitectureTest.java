package org.boostwright.pi;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The runtime never sees the rig; its tests do, to have one at the other end. */
class ArchitectureTest {
  @Test
  void theRuntimeDoesNotKnowTheRig() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.boostwright.rig..")
        .check(
            new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("org.boostwright.pi"));
  }
}
