package org.boostwright.pi.web;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;

/**
 * What is answered to what. Looking is free; taking a recording away and the bench need the token.
 * There is nothing here that moves the valve of a running engine.
 */
final class PageRequests implements HttpHandler {
  private static final String RECORDING = "/api/recording/";

  private final PageGuard guard;
  private final Keys keys;
  private final EventStream stream;
  private final PageFiles files;
  private final RecordingShelf shelf;
  private final PageState state;
  private final Semaphore downloads = new Semaphore(2);

  PageRequests(
      PageGuard guard,
      Keys keys,
      EventStream stream,
      PageFiles files,
      RecordingShelf shelf,
      PageState state) {
    this.guard = guard;
    this.keys = keys;
    this.stream = stream;
    this.files = files;
    this.shelf = shelf;
    this.state = state;
  }

  @Override
  public void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      PageGuard.harden(exchange.getResponseHeaders());
      int refusal = guard.refusal(exchange, System.nanoTime());
      String path = exchange.getRequestURI().getRawPath();
      if (refusal != 0) {
        Answers.text(exchange, refusal, "refused");
      } else if (path == null || exchange.getRequestURI().getRawQuery() != null) {
        Answers.text(exchange, 404, "there is nothing here");
      } else if (exchange.getRequestMethod().equals("POST")) {
        post(exchange, path);
      } else {
        get(exchange, path);
      }
    }
  }

  private void get(HttpExchange exchange, String path) throws IOException {
    PageFiles.Held file = files.get(path);
    if (file != null) {
      Answers.bytes(exchange, 200, file.type(), file.body());
      return;
    }
    boolean unlocked = guard.unlocked(exchange, System.nanoTime());
    switch (path) {
      case "/api/about" -> Answers.json(exchange, state.about(keys.canUnlock(), unlocked));
      case "/api/faults" -> Answers.json(exchange, state.faults());
      case "/api/recordings" -> Answers.json(exchange, recordings());
      case "/api/events" -> {
        if (exchange.getRequestMethod().equals("HEAD")) {
          Answers.text(exchange, 200, "");
        } else {
          stream.serve(exchange);
        }
      }
      default -> {
        if (!path.startsWith(RECORDING)) {
          Answers.text(exchange, 404, "there is nothing here");
        } else if (!unlocked) {
          Answers.text(exchange, 401, "the token is needed");
        } else {
          recording(exchange, path.substring(RECORDING.length()));
        }
      }
    }
  }

  private JsonText recordings() throws IOException {
    JsonText json = new JsonText().open().name("recordings").openList();
    for (RecordingShelf.Item item : shelf.list()) {
      json.open().name("name").value(item.name()).name("bytes").value(item.bytes()).close();
    }
    return json.closeList().close();
  }

  private void recording(HttpExchange exchange, String name) throws IOException {
    Optional<Path> file = shelf.file(name);
    if (file.isEmpty()) {
      Answers.text(exchange, 404, "there is no such recording");
      return;
    }
    if (!downloads.tryAcquire()) {
      Answers.text(exchange, 429, "two recordings are on their way already");
      return;
    }
    try {
      exchange.getResponseHeaders().set("Content-Type", "text/csv; charset=utf-8");
      exchange
          .getResponseHeaders()
          .set("Content-Disposition", "attachment; filename=\"" + name + "\"");
      exchange.sendResponseHeaders(200, exchange.getRequestMethod().equals("HEAD") ? -1 : 0);
      if (!exchange.getRequestMethod().equals("HEAD")) {
        Files.copy(file.get(), exchange.getResponseBody());
      }
    } finally {
      downloads.release();
    }
  }

  private void post(HttpExchange exchange, String path) throws IOException {
    Optional<Map<String, String>> form = Answers.form(exchange);
    if (form.isEmpty()) {
      Answers.text(exchange, 400, "not understood");
      return;
    }
    Map<String, String> fields = form.get();
    switch (path) {
      case "/api/unlock" -> unlock(exchange, fields.getOrDefault("token", ""));
      case "/api/bench" -> {
        if (guard.unlocked(exchange, System.nanoTime())) {
          bench(exchange, fields);
        } else {
          Answers.text(exchange, 401, "The token is needed.");
        }
      }
      case "/api/driver" -> {
        if (guard.unlocked(exchange, System.nanoTime())) {
          said(exchange, state.drives(fields.getOrDefault("who", "")));
        } else {
          Answers.text(exchange, 401, "The token is needed.");
        }
      }
      default -> Answers.text(exchange, 404, "there is nothing here");
    }
  }

  /** Done, or why not. */
  private static void said(HttpExchange exchange, @Nullable String complaint) throws IOException {
    Answers.text(exchange, complaint == null ? 200 : 409, complaint == null ? "" : complaint);
  }

  private void unlock(HttpExchange exchange, String token) throws IOException {
    Keys.Answer answer = keys.unlock(token, System.nanoTime());
    switch (answer.outcome()) {
      case GIVEN -> {
        exchange
            .getResponseHeaders()
            .set(
                "Set-Cookie",
                PageGuard.COOKIE + "=" + answer.key() + "; Path=/; HttpOnly; SameSite=Strict");
        Answers.text(exchange, 200, "Unlocked.");
      }
      case WRONG -> Answers.text(exchange, 401, "That is not the token.");
      case TOO_MANY -> Answers.text(exchange, 429, "Too many tries; wait a minute.");
    }
  }

  private void bench(HttpExchange exchange, Map<String, String> fields) throws IOException {
    @Nullable String complaint =
        switch (fields.getOrDefault("action", "")) {
          case "begin" -> state.benchBegin(fields.getOrDefault("steps", ""));
          case "answer" ->
              state.benchAnswer(
                  fields.getOrDefault("question", ""), fields.getOrDefault("value", ""));
          case "stop" -> {
            state.benchStop();
            yield null;
          }
          default -> "There is no such action.";
        };
    said(exchange, complaint);
  }
}
