package org.boostwright.core.link;

/** What one end knows about the other: whether they may talk, and which frames are new. */
public final class Peer {
  /** Whether the other end may be listened to. */
  public enum State {
    /** No handshake yet. */
    SILENT,
    /** Same protocol, right role. */
    AGREED,
    /** The other end speaks another version of the protocol. */
    OTHER_PROTOCOL,
    /** Two ends of the same kind are joined. */
    SAME_ROLE
  }

  /** A frame this long missing: the next handshake starts the sequence anew. */
  static final long QUIET_NANOS = 1_000_000_000L;

  /** An end that has not repeated its handshake for this long is gone. */
  static final long PRESENT_NANOS = 1_200_000_000L;

  private final int ownRole;
  private final FrameDecoder decoder = new FrameDecoder();
  private final SequenceWatch sequence = new SequenceWatch();
  private final PeerClock clock = new PeerClock();
  private final HelloFrame hello = new HelloFrame();
  private State state = State.SILENT;
  private int session;
  private long settingsDigest;
  private int protocol;
  private boolean heard;
  private long heardNanos;
  private long sessions;
  private boolean greeted;
  private long greetedNanos;

  /**
   * @param ownRole role of this end, {@link HelloFrame#CONTROLLER} or {@link HelloFrame#RIG}
   */
  Peer(int ownRole) {
    this.ownRole = ownRole;
  }

  /**
   * Takes one byte.
   *
   * @param kind the kind of data frame this end listens to
   * @return true when it completed a new frame of that kind that may be used
   */
  boolean take(byte b, int kind, long nowNanos) {
    if (!decoder.take(b)) {
      return false;
    }
    if (decoder.kind() == Frame.HELLO) {
      takeHello(nowNanos);
      return false;
    }
    if (state != State.AGREED || decoder.kind() != kind || !sequence.accept(decoder.sequence())) {
      return false;
    }
    heard = true;
    heardNanos = nowNanos;
    return true;
  }

  private void takeHello(long nowNanos) {
    hello.read(decoder);
    greeted = true;
    greetedNanos = nowNanos;
    protocol = hello.protocol;
    if (protocol != Frame.PROTOCOL) {
      state = State.OTHER_PROTOCOL;
      return;
    }
    if (hello.role == ownRole) {
      state = State.SAME_ROLE;
      return;
    }
    boolean sameSession = state == State.AGREED && hello.session == session;
    boolean quiet = heard && nowNanos - heardNanos >= QUIET_NANOS;
    if (!sameSession || quiet) {
      sequence.restart();
      clock.restart();
    }
    if (!sameSession) {
      sessions++;
    }
    state = State.AGREED;
    session = hello.session;
    settingsDigest = hello.settingsDigest;
  }

  /**
   * True while the other end may be talked to: its handshake fits and came not long ago. Frames
   * sent to nobody would pile up in the port and come out old.
   */
  public boolean present(long nowNanos) {
    return state == State.AGREED && greeted && nowNanos - greetedNanos <= PRESENT_NANOS;
  }

  /** Decoder of this end's incoming bytes. */
  public FrameDecoder decoder() {
    return decoder;
  }

  /** Sequence of the other end's frames. */
  public SequenceWatch sequence() {
    return sequence;
  }

  /** The other end's time stamps. */
  PeerClock clock() {
    return clock;
  }

  /** Whether the other end may be listened to. */
  public State state() {
    return state;
  }

  /** Protocol number of the last handshake; 0 when there was none. */
  public int protocol() {
    return protocol;
  }

  /** Settings digest of the last handshake; 0 when there was none. */
  public long settingsDigest() {
    return settingsDigest;
  }

  /** How many different starts of the other end were seen. */
  public long sessions() {
    return sessions;
  }

  /** Time since the last usable frame, ns; {@link Long#MAX_VALUE} when there was none. */
  public long silenceNanos(long nowNanos) {
    return heard ? nowNanos - heardNanos : Long.MAX_VALUE;
  }
}
