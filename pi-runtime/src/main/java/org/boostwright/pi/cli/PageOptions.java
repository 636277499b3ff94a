package org.boostwright.pi.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.HdrHistogram.Histogram;
import org.boostwright.core.settings.Settings;
import org.boostwright.pi.loop.TickStats;
import org.boostwright.pi.web.LivePage;
import org.boostwright.pi.web.PageAddress;
import org.boostwright.pi.web.PageFacts;
import org.boostwright.pi.web.PageGuest;
import org.boostwright.pi.web.PageHealth;
import org.boostwright.pi.web.PageToken;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Whether and where the live page is served. */
final class PageOptions {
  @Option(
      names = "--page",
      arity = "0..1",
      fallbackValue = PageAddress.DEFAULT,
      paramLabel = "ADDRESS[:PORT]",
      converter = AddressConverter.class,
      description = {
        "Serve the live page (docs/live-page.md). Without a value only this machine sees it, at",
        PageAddress.DEFAULT + ". On a network state the one address to listen at, and give",
        "--page-token-file."
      })
  Optional<PageAddress> address = Optional.empty();

  @Option(
      names = "--page-token-file",
      paramLabel = "FILE",
      description =
          "File with the secret that opens bench and recordings on the page; made with a new one "
              + "when it is missing. Only its owner may be able to read it. Without it the page only shows.")
  Optional<Path> tokenFile = Optional.empty();

  /** Reads an address. */
  static final class AddressConverter implements ITypeConverter<PageAddress> {
    @Override
    public PageAddress convert(String value) {
      try {
        return PageAddress.parse(value);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  /**
   * Before anything is opened.
   *
   * @return why the page may not be served so; empty when all is well
   */
  String complaint() {
    if (address.isEmpty()) {
      return tokenFile.isPresent() ? "--page-token-file needs --page" : "";
    }
    if (!address.get().local() && tokenFile.isEmpty()) {
      return "a page on a network needs --page-token-file";
    }
    try {
      token();
    } catch (IOException e) {
      return "--page-token-file: " + e.getMessage();
    }
    return "";
  }

  private @Nullable PageToken token() throws IOException {
    return tokenFile.isPresent() ? PageToken.load(tokenFile.get()) : null;
  }

  /** The page's end inside the tick; null when there is no page. */
  @Nullable PageGuest guest(Settings settings) {
    return address.isPresent() ? new PageGuest(settings.valve().frequencyHz()) : null;
  }

  /**
   * Serves the page. Where it cannot be had the drive goes on without it.
   *
   * @return words about where it is, or why it is not
   */
  String start(ControllerRun run, PageGuest guest, PageFacts facts) {
    PageAddress at = address.orElseThrow();
    LivePage page =
        new LivePage(facts, run.loop().latest(), guest, run.driver(), () -> health(run));
    try {
      page.start(at, token());
      return "live page: http://"
          + at.host()
          + ":"
          + page.port()
          + (tokenFile.isPresent() ? ", its token is in " + tokenFile.get() : ", to look only");
    } catch (IOException e) {
      return e.getMessage() + "; the drive goes on without a page";
    }
  }

  private static PageHealth health(ControllerRun run) {
    TickStats stats = run.loop().stats();
    Histogram late = stats.lateness();
    return new PageHealth(
        stats.ticks(),
        stats.leftOut(),
        stats.beats(),
        late.getValueAtPercentile(99) * 1e-3,
        late.getMaxValue() * 1e-3,
        run.io().health(),
        run.recordingFile().map(file -> String.valueOf(file.getFileName())).orElse(""),
        run.recorder().lost() + run.droppedRows(),
        run.recorder().trouble());
  }
}
