package org.boostwright.rig.result;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A file that should hold a result does not; the message says where and why. */
public final class UnreadableResultException extends IOException {
  private static final long serialVersionUID = 1L;

  /** With the sentence for people. */
  public UnreadableResultException(String message) {
    this(message, null);
  }

  /** With the sentence for people and the cause. */
  public UnreadableResultException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
