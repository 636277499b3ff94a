package org.boostwright.pi.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.EnumSet;
import java.util.Set;

/**
 * The secret without which the page only shows. It is kept in a file that only its owner may read,
 * never on a command line, and is compared in constant time; only its digest is held.
 */
public final class PageToken {
  private static final int LEAST = 16;
  private static final int MOST = 200;
  private static final String LETTERS = "abcdefghijkmnpqrstuvwxyz23456789";
  private static final int MADE = 20;
  private static final Set<PosixFilePermission> OTHERS =
      EnumSet.of(
          PosixFilePermission.GROUP_READ,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_READ,
          PosixFilePermission.OTHERS_WRITE);

  private final byte[] digest;

  PageToken(String secret) {
    digest = sha256(secret);
  }

  /**
   * The token of a file; a missing file is made with a new one.
   *
   * @throws IOException when it cannot be read or made, is too short or may be read by others; the
   *     message says what to do and never holds the secret
   */
  public static PageToken load(Path file) throws IOException {
    if (!Files.exists(file)) {
      make(file);
    }
    Set<PosixFilePermission> open = EnumSet.copyOf(OTHERS);
    open.retainAll(Files.getPosixFilePermissions(file));
    if (!open.isEmpty()) {
      throw new IOException(file + " may be read or written by others; chmod 600 " + file);
    }
    if (Files.size(file) > MOST) {
      throw new IOException(file + " holds more than " + MOST + " bytes; one line is a token");
    }
    String secret = Files.readString(file, StandardCharsets.UTF_8).strip();
    if (secret.length() < LEAST) {
      throw new IOException(
          file + " holds fewer than " + LEAST + " characters; delete it to get a new token");
    }
    return new PageToken(secret);
  }

  /**
   * Puts a new secret in the place of the old one, whole and for its owner only; a page that runs
   * keeps the old one until it is started again.
   *
   * @return the new secret
   */
  public static String reset(Path file) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    Files.deleteIfExists(fresh);
    make(fresh);
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    return Files.readString(file, StandardCharsets.UTF_8).strip();
  }

  private static void make(Path file) throws IOException {
    SecureRandom random = new SecureRandom();
    StringBuilder secret = new StringBuilder();
    for (int i = 0; i < MADE; i++) {
      secret.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    try {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      Files.writeString(file, secret + "\n", StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      // Somebody made it meanwhile; it is checked like any other.
    }
  }

  /** Whether that is the secret. */
  boolean matches(String given) {
    return MessageDigest.isEqual(digest, sha256(given));
  }

  private static byte[] sha256(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
