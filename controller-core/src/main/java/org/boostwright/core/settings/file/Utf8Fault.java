package org.boostwright.core.settings.file;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;

/** Finds the first byte of a file that is not UTF-8. */
final class Utf8Fault {
  private Utf8Fault() {}

  static LoadResult locate(String name, byte[] bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    CharBuffer good = CharBuffer.allocate(bytes.length + 1);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CoderResult result = decoder.decode(in, good, true);
    good.flip();
    int line = 1;
    int column = 1;
    for (int i = 0; i < good.length(); i++) {
      if (good.charAt(i) == '\n') {
        line++;
        column = 1;
      } else {
        column++;
      }
    }
    int at = Math.min(in.position(), bytes.length - 1);
    return SettingsFile.unreadable(
        name,
        line,
        column,
        "the byte 0x"
            + String.format("%02X", bytes[at] & 0xFF)
            + " here is not UTF-8 text ("
            + result
            + "); save the file as UTF-8");
  }
}
