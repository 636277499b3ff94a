package org.boostwright.pi.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.jspecify.annotations.Nullable;

/**
 * Writes the rows of a {@link RowQueue} as CSV.
 *
 * <p>Everything drained is written at once, and forced to the disk every second: a power cut costs
 * at most that. A row counts only with its line end, so a file cut anywhere is read up to its last
 * whole line. A recording that grows beyond {@link Limits#fileBytes} is followed by another; the
 * oldest are deleted to stay within {@link Limits#keepBytes} and to leave {@link Limits#freeBytes}.
 * When the disk is full or fails, rows are dropped and counted, and every ten seconds it is tried
 * again.
 */
public final class Recorder {
  /**
   * How much may be kept.
   *
   * @param fileBytes size at which a recording is followed by another
   * @param keepBytes all recordings together
   * @param freeBytes always left free on the disk
   */
  public record Limits(long fileBytes, long keepBytes, long freeBytes) {
    /** 256 MB (50 minutes), 4 GB, 200 MB. */
    public static final Limits DEFAULT = new Limits(256L << 20, 4L << 30, 200L << 20);
  }

  private static final long FORCE_NANOS = 1_000_000_000L;
  private static final long RETRY_NANOS = 10_000_000_000L;
  private static final int BUFFER_BYTES = 1 << 16;
  private static final int LONGEST_ROW = 4096;

  private final RowQueue rows;
  private final LogStore store;
  private final Limits limits;
  private final String meta;
  private final StringBuilder text = new StringBuilder(LONGEST_ROW);
  private final ByteBuffer buffer = ByteBuffer.allocateDirect(BUFFER_BYTES);
  private LogStore.@Nullable Sink sink;
  private boolean tried;
  private long lastTryNanos;
  private long lastForceNanos;
  private long fileBytes;
  private long fileRows;
  private int bufferedRows;
  private volatile long written;
  private volatile long lost;
  private volatile String file = "";
  private volatile String trouble = "";

  /**
   * @param meta text of the first row's last column: format version, settings digest and so on,
   *     without commas, quotes and line ends
   */
  public Recorder(RowQueue rows, LogStore store, Limits limits, String meta) {
    this.rows = rows;
    this.store = store;
    this.limits = limits;
    this.meta = meta;
  }

  /** Writes what has come; to be called several times a second. Never throws for the disk. */
  public void step(long nowNanos) {
    if (sink == null) {
      open(nowNanos);
    }
    for (double[] row = rows.peek(); row != null; row = rows.peek()) {
      take(row, nowNanos);
      rows.remove();
    }
    flush(nowNanos);
    if (sink != null && nowNanos - lastForceNanos >= FORCE_NANOS) {
      force(nowNanos);
    }
    if (sink != null && fileBytes >= limits.fileBytes()) {
      closeFile();
      open(nowNanos);
    }
  }

  private void open(long nowNanos) {
    if (tried && !trouble.isEmpty() && nowNanos - lastTryNanos < RETRY_NANOS) {
      return;
    }
    tried = true;
    lastTryNanos = nowNanos;
    try {
      List<LogStore.Entry> entries = store.list();
      makeRoom(entries);
      long number = entries.isEmpty() ? 1L : entries.get(entries.size() - 1).number() + 1L;
      String name = FolderStore.name(number);
      sink = store.create(name);
      file = name;
      fileBytes = 0L;
      fileRows = 0L;
      lastForceNanos = nowNanos;
      trouble = "";
      text.setLength(0);
      LogFormat.appendHeader(text);
      line();
    } catch (IOException e) {
      fail("cannot begin a recording: ", e);
    }
  }

  private void makeRoom(List<LogStore.Entry> entries) throws IOException {
    long kept = entries.stream().mapToLong(LogStore.Entry::bytes).sum();
    for (LogStore.Entry oldest : entries) {
      boolean fits = kept + limits.fileBytes() <= limits.keepBytes();
      if (fits && store.freeBytes() >= limits.freeBytes() + limits.fileBytes()) {
        return;
      }
      store.delete(oldest.name());
      kept -= oldest.bytes();
    }
    if (store.freeBytes() < limits.freeBytes()) {
      throw new IOException(
          "less than "
              + (limits.freeBytes() >> 20)
              + " MB are free, and no recording is left to"
              + " delete");
    }
  }

  private void take(double[] row, long nowNanos) {
    if (sink == null) {
      count(0, 1);
      return;
    }
    text.setLength(0);
    LogFormat.appendRow(text, row, fileRows == 0L ? meta : "");
    if (buffer.remaining() <= text.length()) {
      flush(nowNanos);
    }
    if (sink == null) {
      count(0, 1);
      return;
    }
    line();
    fileRows++;
    bufferedRows++;
  }

  private void line() {
    for (int i = 0; i < text.length(); i++) {
      buffer.put((byte) text.charAt(i));
    }
    buffer.put((byte) '\n');
  }

  private void flush(long nowNanos) {
    LogStore.Sink open = sink;
    if (open == null || buffer.position() == 0) {
      return;
    }
    buffer.flip();
    int bytes = buffer.remaining();
    try {
      open.write(buffer);
      fileBytes += bytes;
      count(bufferedRows, 0);
    } catch (IOException e) {
      lastTryNanos = nowNanos;
      count(0, bufferedRows);
      closeFile();
      fail("the recording stopped: ", e);
    }
    buffer.clear();
    bufferedRows = 0;
  }

  private void force(long nowNanos) {
    LogStore.Sink open = sink;
    lastForceNanos = nowNanos;
    if (open == null) {
      return;
    }
    try {
      open.force();
    } catch (IOException e) {
      lastTryNanos = nowNanos;
      closeFile();
      fail("the recording stopped: ", e);
    }
  }

  private void fail(String what, IOException e) {
    sink = null;
    trouble = what + (e.getMessage() == null ? e.toString() : e.getMessage());
  }

  private void closeFile() {
    LogStore.Sink open = sink;
    sink = null;
    if (open == null) {
      return;
    }
    try (open) {
      open.force();
    } catch (IOException e) {
      trouble = "the end of " + file + " may be missing: " + e.getMessage();
    }
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // only the recorder's thread counts
  private void count(long writtenNow, long lostNow) {
    written += writtenNow;
    lost += lostNow;
  }

  /** Writes what is left and closes the recording. */
  public void close(long nowNanos) {
    step(nowNanos);
    closeFile();
  }

  /** Rows written. */
  public long written() {
    return written;
  }

  /** Rows that came and could not be written; those the queue dropped come on top. */
  public long lost() {
    return lost;
  }

  /** Name of the present or last recording; empty before the first. */
  public String file() {
    return file;
  }

  /** What is wrong with recording; empty when nothing is. */
  public String trouble() {
    return trouble;
  }
}
