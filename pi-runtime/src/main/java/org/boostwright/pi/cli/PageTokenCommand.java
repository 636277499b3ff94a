package org.boostwright.pi.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.boostwright.pi.web.PageToken;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A new secret for the live page: after a hand-over the last owner's opens nothing. */
@Command(
    name = "page-token",
    mixinStandardHelpOptions = true,
    description = {
      "Replace the secret that opens bench and recordings on the live page, and show the new one.",
      "A page that runs keeps the old one until 'drive' is started again."
    },
    footer = {"", "Example:", "  boostwright page-token /var/lib/boostwright/page-token"})
final class PageTokenCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "File of 'drive --page-token-file'.")
  Path file = Path.of("page-token");

  @Override
  public Integer call() throws IOException {
    System.out.println(PageToken.reset(file));
    System.err.println("page-token: counts from the next start of 'drive' on");
    return PiExit.PASSED;
  }
}
