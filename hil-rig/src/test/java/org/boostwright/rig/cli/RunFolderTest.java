package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunFolderTest {
  @Test
  void numbersGoOnAfterTheHighestAndIgnoreOtherFolders(@TempDir Path runs) throws Exception {
    assertThat(RunFolder.next(runs, "pull").getFileName()).hasToString("pull-1");
    Files.createDirectory(runs.resolve("pull-9"));
    Files.createDirectory(runs.resolve("pull-notes"));
    Files.createDirectory(runs.resolve("replay-40"));
    assertThat(RunFolder.next(runs, "pull").getFileName()).hasToString("pull-10");
  }

  @Test
  void aKeptRunNamesItsFilesInItsOwnResult(@TempDir Path folder) throws Exception {
    Path wanted = folder.resolve("mine");
    Outcome outcome =
        Outcome.kept(
            new ResultBuilder("pull").build(),
            Optional.of(wanted),
            new Outcome.Extra("log", "log.csv", file -> Files.writeString(file, "a,b\n")));
    Result kept = RunFolder.keep(outcome.result(), outcome.run().orElseThrow());
    assertThat(kept.files()).containsOnlyKeys("result", "report", "log");
    assertThat(wanted.resolve("log.csv")).hasContent("a,b");
    assertThat(wanted.resolve("report.html")).exists();
    assertThat(ResultJson.read(wanted.resolve("result.json")).files()).isEqualTo(kept.files());
  }
}
