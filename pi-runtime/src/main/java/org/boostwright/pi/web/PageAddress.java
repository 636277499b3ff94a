package org.boostwright.pi.web;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Where the page is served: one stated address of this machine, and the names under which a browser
 * may ask for it. Any other name in a request is refused, so that a foreign page cannot reach this
 * one through a name of its own (DNS rebinding).
 *
 * @param host as stated, a name or an address
 * @param address what it stands for
 * @param port TCP port; 0 for any free one
 */
public record PageAddress(String host, InetAddress address, int port) {
  /** Port when none is stated. */
  public static final int DEFAULT_PORT = 8475;

  /** This machine alone. */
  public static final String DEFAULT = "127.0.0.1:" + DEFAULT_PORT;

  /**
   * Reads {@code HOST:PORT}, {@code HOST} or {@code PORT}.
   *
   * @throws IllegalArgumentException when it is none, with words for people
   */
  public static PageAddress parse(String text) {
    String host = text.strip();
    int port = DEFAULT_PORT;
    int colon = host.lastIndexOf(':');
    boolean bracketed = host.endsWith("]");
    if (host.matches("\\d{1,5}")) {
      return of("127.0.0.1", number(host));
    }
    if (colon >= 0 && !bracketed) {
      port = number(host.substring(colon + 1));
      host = host.substring(0, colon);
    }
    if (host.startsWith("[") && host.endsWith("]")) {
      host = host.substring(1, host.length() - 1);
    }
    return of(host, port);
  }

  private static int number(String text) {
    if (!text.matches("\\d{1,5}") || Integer.parseInt(text) > 65535) {
      throw new IllegalArgumentException("'" + text + "' is no port; 1 to 65535");
    }
    return Integer.parseInt(text);
  }

  private static PageAddress of(String host, int port) {
    InetAddress address;
    try {
      address = InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("nobody knows the address of '" + host + "'", e);
    }
    if (host.isEmpty() || address.isAnyLocalAddress()) {
      throw new IllegalArgumentException(
          "'" + host + "' is every network of this machine; state the one address to listen at");
    }
    return new PageAddress(host, address, port);
  }

  /** True when only this machine can reach it. */
  public boolean local() {
    return address.isLoopbackAddress();
  }

  /** What the {@code Host} header may say, in small letters. */
  Set<String> names(InetSocketAddress bound) {
    Set<String> hosts = new TreeSet<>();
    hosts.add(host.toLowerCase(Locale.ROOT));
    hosts.add(address.getHostAddress());
    if (local()) {
      hosts.add("localhost");
    }
    Set<String> names = new TreeSet<>();
    for (String name : hosts) {
      String written = name.indexOf(':') >= 0 ? "[" + name + "]" : name;
      names.add(written + ":" + bound.getPort());
      if (bound.getPort() == 80) {
        names.add(written);
      }
    }
    return names;
  }
}
