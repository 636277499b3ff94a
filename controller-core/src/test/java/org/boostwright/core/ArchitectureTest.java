package org.boostwright.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The core stays what can be identical everywhere: no files, clocks, threads or libraries. */
class ArchitectureTest {
  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.boostwright.core");

  @Test
  void coreOutsideSettingsFileUsesOnlyTheLanguageAndItself() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.boostwright.core.settings.file..")
        .should()
        .dependOnClassesThat()
        .resideOutsideOfPackages(
            "org.boostwright.core..",
            "java.lang..",
            "java.util..",
            "java.security..",
            "org.jspecify..")
        .check(CORE);
  }

  @Test
  void coreOutsideSettingsFileKnowsNoFileClockThreadOrChance() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.boostwright.core.settings.file..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "java.io..",
            "java.nio..",
            "java.time..",
            "java.util.concurrent..",
            "java.util.stream..")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.lang.Thread")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.util.Random")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.lang.ThreadLocal")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(Math.class, "random")
        .check(CORE);
  }

  @Test
  void theCoreDoesNotKnowItsSurroundings() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.boostwright.rig..", "org.boostwright.pi..")
        .check(CORE);
  }
}
