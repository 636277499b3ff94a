package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** File errors in words; Java's own messages are often only the file's name. */
final class FileTrouble {
  private FileTrouble() {}

  static String words(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + " does not exist";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + " may not be opened by this user";
    }
    if (e instanceof NotDirectoryException notFolder) {
      return notFolder.getFile() + " is not a folder";
    }
    if (e instanceof FileAlreadyExistsException there) {
      return there.getFile() + " is there already";
    }
    if (e instanceof FileSystemException other) {
      return other.getFile() + ": " + other.getReason();
    }
    if (e instanceof CharacterCodingException) {
      return "the file is not UTF-8 text";
    }
    return String.valueOf(e.getMessage());
  }
}
