package org.boostwright.pi.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The four files the page consists of, held in memory. */
final class PageFiles {
  /**
   * One file.
   *
   * @param type media type
   * @param body content
   */
  record Held(String type, byte[] body) {}

  private final Map<String, Held> files =
      Map.of(
          "/", held("live.html", "text/html; charset=utf-8"),
          "/live.css", held("live.css", "text/css; charset=utf-8"),
          "/live.js", held("live.js", "text/javascript; charset=utf-8"),
          "/icon.svg", held("icon.svg", "image/svg+xml"));

  /** The file of a path; null when there is none. */
  @Nullable Held get(String path) {
    return files.get(path);
  }

  private static Held held(String name, String type) {
    try (InputStream in = PageFiles.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is not on the class path");
      }
      return new Held(type, in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
