package org.boostwright.rig.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/**
 * Style and scripts of the page, inlined so that it opens from disk, and the content security
 * policy that lets nothing else run (W3C, <i>Content Security Policy Level 3</i>: hash sources).
 */
final class PageAssets {
  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/";

  private PageAssets() {}

  /** The whole style sheet. */
  static String style() {
    return resource(UPLOT + "dist/uPlot.min.css") + "\n" + own("report.css");
  }

  /** The plotting library. */
  static String library() {
    return resource(UPLOT + "dist/uPlot.iife.min.js");
  }

  /** The library's licence, which has to go where the library goes. */
  static String libraryLicence() {
    return resource(UPLOT + "LICENSE");
  }

  /** The page's own script. */
  static String script() {
    return own("report.js");
  }

  /** Only these styles and scripts, no network, no frames, no forms. */
  static String policy(String style, String... scripts) {
    StringBuilder policy = new StringBuilder("default-src 'none'; style-src ").append(hash(style));
    policy.append("; script-src");
    for (String script : scripts) {
      policy.append(' ').append(hash(script));
    }
    return policy.append("; base-uri 'none'; form-action 'none'").toString();
  }

  private static String hash(String content) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(content.getBytes(StandardCharsets.UTF_8));
      return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String own(String name) {
    return resource("/org/boostwright/rig/report/" + name);
  }

  private static String resource(String path) {
    try (InputStream in = PageAssets.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalStateException(path + " is not on the class path");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
