package org.boostwright.pi.web;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.boostwright.core.record.LogFormat;
import org.boostwright.pi.loop.GuestBoost;
import org.boostwright.pi.loop.LatestTick;
import org.jspecify.annotations.Nullable;

/**
 * The live page of one run.
 *
 * <p>Two kinds of threads, all behind every thread of the tick: one looks at the newest tick some
 * fifteen times a second and writes one frame for all viewers, a few answer requests. Connections,
 * sizes, times and rates are bounded; what does not fit is refused.
 */
public final class LivePage implements AutoCloseable {
  private static final long FRAME_NANOS = 66_000_000L;
  private static final int FRAMES_PER_HEALTH = 15;
  private static final int WORKERS = 10;
  private static final int CONNECTIONS = 32;
  private static final int MOST_PER_SECOND = 100;
  private static final int NICENESS = 10;

  private final PageFacts facts;
  private final LatestTick latest;
  private final PageGuest guest;
  private final @Nullable GuestBoost driver;
  private final Supplier<PageHealth> health;
  private final EventStream stream = new EventStream();
  private final FaultHistory history = new FaultHistory();
  private final LiveFrame frame;
  private final BenchDesk bench;
  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private @Nullable HttpServer server;
  private @Nullable ExecutorService workers;
  private volatile boolean closing;

  /**
   * @param facts what does not change
   * @param latest newest tick
   * @param guest the page's end inside the tick
   * @param driver the guest setting; null where there is none
   * @param health what loop and recorder say of themselves; asked from the page's own thread
   */
  public LivePage(
      PageFacts facts,
      LatestTick latest,
      PageGuest guest,
      @Nullable GuestBoost driver,
      Supplier<PageHealth> health) {
    this.facts = facts;
    this.latest = latest;
    this.guest = guest;
    this.driver = driver;
    this.health = health;
    frame = new LiveFrame(facts.settings());
    bench = new BenchDesk(facts.settings(), guest);
  }

  /**
   * Serves from now on. Returns at once: whoever starts it has a controller to look after.
   *
   * @param token null where nothing but looking is allowed
   * @throws IOException when the address cannot be had
   */
  public void start(PageAddress address, @Nullable PageToken token) throws IOException {
    start(address, token, MOST_PER_SECOND);
  }

  void start(PageAddress address, @Nullable PageToken token, int mostPerSecond) throws IOException {
    // Read once by the server's class; whoever sets them on the command line keeps them.
    limit("jdk.httpserver.maxConnections", CONNECTIONS);
    limit("sun.net.httpserver.maxIdleConnections", CONNECTIONS / 2);
    limit("sun.net.httpserver.idleInterval", 20);
    limit("sun.net.httpserver.maxReqTime", 5);
    limit("sun.net.httpserver.maxRspTime", 600);
    limit("sun.net.httpserver.maxReqHeaders", 40);
    limit("sun.net.httpserver.maxReqHeaderSize", 8_192);
    HttpServer opened;
    try {
      opened =
          HttpServer.create(new InetSocketAddress(address.address(), address.port()), CONNECTIONS);
    } catch (IOException e) {
      throw new IOException(
          "no page at " + address.host() + ":" + address.port() + ": " + e.getMessage(), e);
    }
    prepare(opened, address, token, mostPerSecond);
    server = opened;
    // Threads take over the place of the thread that makes them; nobody waits for this one.
    thread(
            "page-frames",
            () -> {
              standBack();
              if (begin(opened)) {
                frames();
              }
            })
        .start();
  }

  /** False when it was closed before it began. */
  private synchronized boolean begin(HttpServer opened) {
    if (!closing) {
      opened.start();
    }
    return !closing;
  }

  private static void limit(String property, int value) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, Integer.toString(value));
    }
  }

  private void prepare(
      HttpServer opened, PageAddress address, @Nullable PageToken token, int mostPerSecond) {
    AtomicInteger number = new AtomicInteger();
    ThreadPoolExecutor pool =
        new ThreadPoolExecutor(
            WORKERS,
            WORKERS,
            30,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            task -> thread("page-" + number.incrementAndGet(), task));
    pool.allowCoreThreadTimeOut(true);
    opened.setExecutor(pool);
    Keys keys = new Keys(token);
    PageGuard guard = new PageGuard(address.names(opened.getAddress()), keys, mostPerSecond);
    opened.createContext(
        "/",
        new PageRequests(
            guard,
            keys,
            stream,
            new PageFiles(),
            new RecordingShelf(facts.recordings()),
            new PageState(facts, frame, history, bench, guest, driver, latest)));
    workers = pool;
  }

  private static Thread thread(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    return thread;
  }

  /** Behind every other thread of this machine (renice of util-linux; Java's own has no effect). */
  private static void standBack() {
    try {
      Path self = Files.readSymbolicLink(Path.of("/proc/thread-self"));
      Process renice =
          new ProcessBuilder(
                  "renice", "-n", Integer.toString(NICENESS), "-p", "" + self.getFileName())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      renice.waitFor(1, TimeUnit.SECONDS);
    } catch (IOException e) {
      // As without it: the tick has its own place before all others.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void frames() {
    PageHealth newest = health.get();
    for (int i = 1; !closing; i++) {
      LockSupport.parkNanos(FRAME_NANOS);
      history.take(guest.changes());
      if (i % FRAMES_PER_HEALTH == 0) {
        newest = health.get();
      }
      if (stream.listeners() > 0) {
        stream.publish(json(newest));
      }
    }
  }

  private String json(PageHealth newest) {
    JsonText json = new JsonText().open();
    boolean ticking = latest.read(row);
    json.name("ticking").value(ticking);
    if (ticking) {
      frame.write(json, row);
    }
    GuestBoost kept = driver;
    json.name("guest").value(kept == null ? "" : kept.guest() ? "guest" : "owner");
    json.name("faults").value(history.count());
    json.name("ticks").value(newest.ticks());
    json.name("health").openList();
    for (String line : newest.lines()) {
      json.value(line);
    }
    json.closeList();
    json.name("bench");
    bench.write(json);
    return json.close().toString();
  }

  /** Where it is served; 0 before {@link #start}. */
  public int port() {
    HttpServer opened = server;
    return opened == null ? 0 : opened.getAddress().getPort();
  }

  @Override
  public synchronized void close() {
    closing = true;
    guest.stop();
    stream.close();
    HttpServer opened = server;
    if (opened != null) {
      opened.stop(0);
    }
    ExecutorService pool = workers;
    if (pool != null) {
      pool.shutdownNow();
    }
  }
}
