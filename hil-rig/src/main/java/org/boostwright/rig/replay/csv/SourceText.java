package org.boostwright.rig.replay.csv;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** Turns the bytes of a log into text: UTF-8, else Latin-1; refuses what is no text. */
final class SourceText {
  /** Largest log read, bytes: two hours of a 200 Hz log with 60 columns stay below it. */
  static final int MAX_BYTES = 1 << 29;

  private SourceText() {}

  static String decode(byte[] bytes, String file, RepairLog repairs) throws LogRefusedException {
    if (bytes.length == 0) {
      throw new LogRefusedException(file, "the file is empty; export the log again");
    }
    if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
      throw new LogRefusedException(
          file, "the text is UTF-16; save it as CSV in UTF-8 and try again");
    }
    int from = 0;
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      from = 3;
      repairs.add(RepairKind.BYTE_ORDER_MARK, "", 1, "");
    }
    refuseBinary(bytes, file);
    ByteBuffer buffer = ByteBuffer.wrap(bytes, from, bytes.length - from);
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(buffer).toString();
    } catch (CharacterCodingException notUtf8) {
      repairs.add(RepairKind.LATIN_1, "", firstForeignLine(bytes), "");
      return new String(bytes, from, bytes.length - from, StandardCharsets.ISO_8859_1);
    }
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    if (bytes.length < start.length) {
      return false;
    }
    for (int i = 0; i < start.length; i++) {
      if ((bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  private static void refuseBinary(byte[] bytes, String file) throws LogRefusedException {
    int line = 1;
    int control = 0;
    for (byte b : bytes) {
      if (b == '\n') {
        line++;
      } else if (b == 0) {
        throw new LogRefusedException(
            file, line, 0, "zero bytes: this is no text; export the log as CSV");
      } else if (b >= 0 && b < ' ' && b != '\r' && b != '\t') {
        control++;
      }
    }
    if (control > bytes.length / 100) {
      throw new LogRefusedException(
          file, control + " control characters: this is no text; export the log as CSV");
    }
  }

  private static int firstForeignLine(byte[] bytes) {
    int line = 1;
    for (byte b : bytes) {
      if (b == '\n') {
        line++;
      } else if (b < 0) {
        return line;
      }
    }
    return line;
  }
}
