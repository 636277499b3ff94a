package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.boostwright.rig.report.HtmlReport;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultJson;

/** Where a run is kept: {@code runs/<command>-<number>} or the folder the person asked for. */
final class RunFolder {
  static final String RESULT = "result.json";
  static final String REPORT = "report.html";

  private static final Path RUNS = Path.of("runs");

  private RunFolder() {}

  /** Keeps a run and returns its result with the names of the files. */
  static Result keep(Result result, Outcome.Run run) throws IOException {
    Path folder;
    Optional<Path> asked = run.folder();
    if (asked.isPresent()) {
      folder = Files.createDirectories(asked.get());
    } else {
      folder = next(RUNS, result.command());
    }
    Map<String, String> files = new LinkedHashMap<>();
    files.put("result", folder.resolve(RESULT).toString());
    files.put("report", folder.resolve(REPORT).toString());
    for (Outcome.Extra extra : run.extras()) {
      Path file = folder.resolve(extra.name());
      extra.writer().write(file);
      files.put(extra.kind(), file.toString());
    }
    Result named = result.withFiles(files);
    ResultJson.write(folder.resolve(RESULT), named);
    HtmlReport.write(folder.resolve(REPORT), named);
    return named;
  }

  /** Makes the folder with the number after the highest; two runs at once get two folders. */
  static Path next(Path runs, String command) throws IOException {
    Files.createDirectories(runs);
    int number = highest(runs, command) + 1;
    while (true) {
      try {
        return Files.createDirectory(runs.resolve(command + "-" + number));
      } catch (FileAlreadyExistsException e) {
        number++;
      }
    }
  }

  private static int highest(Path runs, String command) throws IOException {
    Pattern pattern = Pattern.compile(Pattern.quote(command) + "-(\\d{1,9})");
    try (Stream<Path> folders = Files.list(runs)) {
      return folders
          .map(folder -> pattern.matcher(folder.getFileName().toString()))
          .filter(Matcher::matches)
          .mapToInt(matcher -> Integer.parseInt(matcher.group(1)))
          .max()
          .orElse(0);
    }
  }
}
