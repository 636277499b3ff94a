package org.boostwright.core.bench.proof;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;

/**
 * The last line of a proof or a ladder: SHA-256 (FIPS 180-4) over everything before it.
 *
 * <p>It finds every change and every missing end, by accident or by hand. It holds no secret:
 * somebody who sets out to forge a proof can compute it anew.
 */
public final class Seal {
  private static final String SEAL = "seal\t";

  private Seal() {}

  /** Adds a line: fields separated by tabs. */
  public static void line(StringBuilder text, String... fields) {
    text.append(String.join("\t", fields)).append('\n');
  }

  /**
   * The lines between the first, which names the format, and the seal.
   *
   * @throws DamagedProofException when the seal does not fit, or another format is named
   */
  public static List<String> lines(String text, String first) throws DamagedProofException {
    List<String> lines = List.of(check(text).split("\n", -1));
    if (!lines.get(0).equals(first)) {
      throw new DamagedProofException("it does not begin with '" + first + "'");
    }
    return lines.subList(1, lines.size() - 1);
  }

  /** The text with its seal; {@code body} ends with a line end. */
  public static String put(String body) {
    return body + SEAL + over(body) + "\n";
  }

  /**
   * The text before the seal.
   *
   * @throws DamagedProofException when the seal is missing or does not fit
   */
  public static String check(String text) throws DamagedProofException {
    int at = text.lastIndexOf(SEAL);
    if (at < 1 || text.charAt(at - 1) != '\n') {
      throw new DamagedProofException("it ends before its seal");
    }
    String body = text.substring(0, at);
    if (!text.equals(put(body))) {
      throw new DamagedProofException("its seal does not fit its text");
    }
    return body;
  }

  /** Fingerprint of a text, 64 hexadecimal digits. */
  public static String over(String text) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(bytes(text)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("this Java has no SHA-256", e);
    }
  }

  /** Proofs are plain ASCII; anything else takes both its bytes, so that no two texts agree. */
  private static byte[] bytes(String text) {
    byte[] bytes = new byte[2 * text.length()];
    int count = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c > 126) {
        bytes[count++] = (byte) (c >>> 8 | 0x80);
      }
      bytes[count++] = (byte) c;
    }
    return Arrays.copyOf(bytes, count);
  }
}
