package org.boostwright.pi.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * One sysfs attribute that holds a whole number, kept open. One write sets it, one read returns it;
 * nothing is allocated.
 */
final class AttributeFile implements NumberFile {
  private static final int LONGEST = 24;

  private final FileChannel channel;
  private final ByteBuffer buffer = ByteBuffer.allocateDirect(LONGEST);
  private final byte[] digits = new byte[LONGEST];

  AttributeFile(Path path) throws IOException {
    channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
  }

  @Override
  public synchronized void write(long number) throws IOException {
    // No leading zeros: the kernel would read them as an octal number.
    int at = LONGEST;
    digits[--at] = '\n';
    long rest = number;
    do {
      digits[--at] = (byte) ('0' + rest % 10);
      rest /= 10;
    } while (rest > 0);
    buffer.clear();
    buffer.put(digits, at, LONGEST - at).flip();
    channel.write(buffer, 0L);
  }

  @Override
  public synchronized long read() throws IOException {
    buffer.clear();
    int count = channel.read(buffer, 0L);
    long number = count > 0 ? 0L : -1L;
    for (int i = 0; i < count; i++) {
      byte b = buffer.get(i);
      if (b < '0' || b > '9') {
        return i == 0 ? -1L : number;
      }
      number = 10 * number + (b - '0');
    }
    return number;
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      // Nothing more can be done with this file, and off has been written before.
    }
  }
}
