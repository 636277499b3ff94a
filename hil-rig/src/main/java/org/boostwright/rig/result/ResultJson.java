package org.boostwright.rig.result;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.boostwright.core.settings.file.AtomicFile;

/**
 * The JSON form of a {@link Result}, described in docs/json.md.
 *
 * <p>A number that is not finite is written as null and read back as NaN.
 */
public final class ResultJson {
  private ResultJson() {}

  /** JSON text, indented, with a newline at its end. */
  public static String toJson(Result result) {
    return ResultJsonWriter.write(result);
  }

  /**
   * Reads JSON text.
   *
   * @throws UnreadableResultException when it is not a result, saying where and why
   */
  public static Result fromJson(String json) throws UnreadableResultException {
    return ResultJsonReader.read(json);
  }

  /** Writes a result file; a reader sees the old one or the new one, never half of either. */
  public static void write(Path file, Result result) throws IOException {
    AtomicFile.write(file, toJson(result).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Reads a result file.
   *
   * @throws UnreadableResultException when it is missing or not a result, saying where and why
   */
  public static Result read(Path file) throws IOException {
    try {
      return fromJson(Files.readString(file));
    } catch (NoSuchFileException e) {
      throw new UnreadableResultException(file + " does not exist", e);
    } catch (UnreadableResultException e) {
      throw new UnreadableResultException(file + ": " + e.getMessage(), e);
    }
  }
}
