package org.boostwright.pi.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Recording: complete, bounded, readable after a cut anywhere, and never in the tick's way. */
@Tag("R1")
@Tag("E2")
class RecorderTest {
  private static final long MILLI = 1_000_000L;
  private static final String META = LogFormat.VERSION + " settings=0123";

  private final RowQueue queue = new RowQueue(4096);
  private final MemoryStore store = new MemoryStore();
  private final Random random = new Random(9);
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private long nowNanos = -3_000_000_000L;

  private Recorder recorder(Recorder.Limits limits) {
    return new Recorder(queue, store, limits, META);
  }

  private static Recorder.Limits limits(long file, long keep, long free) {
    return new Recorder.Limits(file, keep, free);
  }

  /** Ticks of 5 ms with a recorder that is stepped every 100 ms. */
  private void ticks(Recorder recorder, int count) {
    for (int i = 0; i < count; i++) {
      nowNanos += 5 * MILLI;
      inputs.volts[0] = 5.0 * random.nextDouble();
      inputs.sampleNanos[0] = nowNanos;
      inputs.answered[0] = true;
      outputs.dutyFraction = random.nextDouble();
      outputs.mapKpaAbs = random.nextBoolean() ? Double.NaN : 100.0 * random.nextDouble();
      double[] row = queue.claim();
      if (row != null) {
        LogFormat.fill(row, nowNanos, inputs, outputs);
        queue.publish();
      }
      if (i % 20 == 19) {
        recorder.step(nowNanos);
      }
    }
  }

  /** The numbers of every whole line; throws for a line that is none of ours. */
  private static double[][] read(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.US_ASCII);
    int end = text.lastIndexOf('\n');
    if (end < 0) {
      return new double[0][];
    }
    String[] lines = text.substring(0, end).split("\n", -1);
    StringBuilder header = new StringBuilder();
    LogFormat.appendHeader(header);
    assertThat(lines[0]).isEqualTo(header.toString());
    double[][] rows = new double[lines.length - 1][];
    for (int i = 1; i < lines.length; i++) {
      String[] cells = lines[i].split(",", -1);
      assertThat(cells).hasSize(LogFormat.COLUMN_COUNT + 1);
      double[] row = new double[LogFormat.COLUMN_COUNT];
      for (int c = 0; c < row.length; c++) {
        row[c] =
            LogFormat.isWords(c)
                ? LogFormat.parseWords(c, cells[c])
                : cells[c].isEmpty() ? Double.NaN : Double.parseDouble(cells[c]);
      }
      rows[i - 1] = row;
    }
    return rows;
  }

  @Test
  void everyRowComesBackToTheBitAndTheFirstSaysWhatItIs() {
    Recorder recorder = recorder(Recorder.Limits.DEFAULT);
    ticks(recorder, 1000);
    recorder.close(nowNanos);
    String text = store.text("drive-000001.csv");
    double[][] rows = read(text.getBytes(StandardCharsets.US_ASCII));
    assertThat(rows).hasNumberOfRows(1000);
    assertThat(text.split("\n")[1]).endsWith("," + META);
    assertThat(text.split("\n")[2]).endsWith(",");
    assertThat(rows[999][LogFormat.TIME_NS]).isEqualTo(nowNanos);
    assertThat(rows[999][LogFormat.DUTY]).isEqualTo(outputs.dutyFraction);
    assertThat(recorder.written()).isEqualTo(1000);
    assertThat(recorder.lost()).isZero();
    assertThat(queue.dropped()).isZero();
  }

  @Test
  void cutAtAThousandRandomBytesItIsAlwaysReadableToTheLastWholeRow() {
    Recorder recorder = recorder(Recorder.Limits.DEFAULT);
    ticks(recorder, 400);
    recorder.close(nowNanos);
    byte[] whole = store.text("drive-000001.csv").getBytes(StandardCharsets.US_ASCII);
    double[][] all = read(whole);
    for (int i = 0; i < 1000; i++) {
      int cut = random.nextInt(whole.length + 1);
      double[][] left = read(Arrays.copyOf(whole, cut));
      int lines = 0;
      for (int b = 0; b < cut; b++) {
        lines += whole[b] == '\n' ? 1 : 0;
      }
      assertThat(left.length).isEqualTo(Math.max(0, lines - 1));
      for (int r = 0; r < left.length; r++) {
        assertThat(Arrays.equals(left[r], all[r])).isTrue();
      }
    }
  }

  @Test
  void aPowerCutCostsAtMostWhatCameSinceTheLastSecond() {
    Recorder recorder = recorder(Recorder.Limits.DEFAULT);
    ticks(recorder, 200);
    recorder.step(nowNanos);
    int before = store.forces;
    ticks(recorder, 2000);
    assertThat(store.forces - before).isBetween(9, 11);
    // Everything that came up to the last step is in the file, not in the program.
    assertThat(read(store.files.get("drive-000001.csv").toByteArray())).hasNumberOfRows(2200);
  }

  @Test
  void aFullDiskDropsRowsCountsThemAndIsTriedAgain() {
    Recorder recorder = recorder(limits(1L << 20, 10L << 20, 0L));
    ticks(recorder, 200);
    store.diskBytes = store.files.get("drive-000001.csv").size() + 10_000L;
    ticks(recorder, 400);
    assertThat(recorder.trouble()).contains("no space left");
    assertThat(recorder.lost()).isPositive();
    assertThat(queue.dropped()).as("the recorder keeps emptying the queue").isZero();
    assertThat(read(store.files.get("drive-000001.csv").toByteArray()).length)
        .isGreaterThanOrEqualTo(200);
    store.diskBytes = Long.MAX_VALUE;
    ticks(recorder, 2400);
    assertThat(recorder.trouble()).isEmpty();
    assertThat(recorder.file()).isEqualTo("drive-000002.csv");
    assertThat(read(store.files.get("drive-000002.csv").toByteArray()).length).isPositive();
    recorder.close(nowNanos);
    assertThat(recorder.written() + recorder.lost()).isEqualTo(3000);
  }

  @Test
  void aDiskThatCannotBeWrittenAtAllNeverStopsTheTick() {
    store.createFails = true;
    Recorder recorder = recorder(Recorder.Limits.DEFAULT);
    ticks(recorder, 5000);
    assertThat(recorder.trouble()).contains("read-only");
    assertThat(recorder.lost()).isEqualTo(5000);
    assertThat(queue.dropped()).isZero();
  }

  @Test
  void aRecorderThatStallsFillsTheQueueAndTheTickGoesOn() {
    Recorder recorder = recorder(Recorder.Limits.DEFAULT);
    for (int i = 0; i < 10_000; i++) {
      double[] row = queue.claim();
      if (row != null) {
        LogFormat.fill(row, i, inputs, outputs);
        queue.publish();
      }
    }
    assertThat(queue.dropped()).isEqualTo(10_000 - 4096);
    recorder.step(0L);
    assertThat(recorder.written()).isEqualTo(4096);
    assertThat(queue.claim()).isNotNull();
  }

  @Test
  void itRotatesAndKeepsWithinItsBounds() {
    Recorder recorder = recorder(limits(100_000L, 350_000L, 0L));
    ticks(recorder, 4000);
    recorder.close(nowNanos);
    long kept = store.list().stream().mapToLong(LogStore.Entry::bytes).sum();
    assertThat(kept).isLessThan(350_000L + 20_000L);
    assertThat(store.deleted).isNotEmpty().isSorted();
    assertThat(store.deleted.get(0)).isEqualTo("drive-000001.csv");
    assertThat(recorder.lost()).isZero();
    assertThat(store.list()).hasSizeBetween(2, 4);
    for (LogStore.Entry entry : store.list()) {
      assertThat(read(store.files.get(entry.name()).toByteArray())).isNotEmpty();
    }
  }

  @Test
  void theOldestAreDeletedToLeaveRoomOnTheDisk() {
    store.diskBytes = 500_000L;
    Recorder recorder = recorder(limits(100_000L, Long.MAX_VALUE, 200_000L));
    ticks(recorder, 4000);
    recorder.close(nowNanos);
    assertThat(store.freeBytes()).isGreaterThanOrEqualTo(190_000L);
    assertThat(recorder.lost()).isZero();
  }

  @Test
  void inAFolderItGoesOnCountingAfterTheHighestNumber(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("drive-000041.csv"), "old");
    Files.writeString(folder.resolve("notes.txt"), "mine");
    FolderStore files = new FolderStore(folder);
    Recorder recorder = new Recorder(queue, files, Recorder.Limits.DEFAULT, META);
    ticks(recorder, 100);
    recorder.close(nowNanos);
    assertThat(recorder.file()).isEqualTo("drive-000042.csv");
    assertThat(read(Files.readAllBytes(folder.resolve("drive-000042.csv")))).hasNumberOfRows(100);
    assertThat(files.list()).extracting(LogStore.Entry::number).containsExactly(41L, 42L);
    assertThat(files.freeBytes()).isPositive();
  }

  /** A real device that is always full. */
  @Test
  void onAFullDeviceRowsAreLostAndNothingElse() {
    Path full = Path.of("/dev/full");
    assumeThat(full).as("/dev/full, to try a device without space").exists();
    LogStore device =
        new LogStore() {
          @Override
          public List<Entry> list() {
            return List.of();
          }

          @Override
          public Sink create(String name) throws IOException {
            FileChannel channel = FileChannel.open(full, StandardOpenOption.WRITE);
            return new Sink() {
              @Override
              public void write(ByteBuffer bytes) throws IOException {
                channel.write(bytes);
              }

              @Override
              public void force() {}

              @Override
              public void close() throws IOException {
                channel.close();
              }
            };
          }

          @Override
          public void delete(String name) {}

          @Override
          public long freeBytes() {
            return Long.MAX_VALUE;
          }
        };
    Recorder recorder = new Recorder(queue, device, Recorder.Limits.DEFAULT, META);
    ticks(recorder, 400);
    recorder.close(nowNanos);
    assertThat(recorder.trouble()).contains("No space left");
    assertThat(recorder.lost()).isEqualTo(400);
    assertThat(recorder.written()).isZero();
  }
}
