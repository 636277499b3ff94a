package org.boostwright.core.ladder;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.jspecify.annotations.Nullable;

/**
 * A car's commissioning history and what follows from it. Immutable; entries are only added.
 *
 * <p>A rung holds when its last entry was made with the present settings (the parts it depends on)
 * and, on the bench and from the spring drive up, with the present bench proof, and no work reported
 * after it voids it. The bench needs its own proof besides, newer than any work that voids it. A rung
 * can be signed only when every rung below holds.
 *
 * @param entries oldest first
 */
public record Ladder(List<Entry> entries) {
  /** Nothing ever happened. */
  public static final Ladder EMPTY = new Ladder(List.of());

  /** Shortest reason for skipping a rung, characters. */
  public static final int SHORTEST_REASON = 20;

  /** Copies the list. */
  public Ladder {
    entries = List.copyOf(entries);
  }

  /**
   * Signs a rung with what was measured.
   *
   * @throws LadderRefusedException when a rung below does not hold
   */
  public Ladder pass(
      Rung rung,
      Facts facts,
      String date,
      String toolVersion,
      String words,
      List<ProofMeasurement> measurements)
      throws LadderRefusedException {
    climbable(rung, facts);
    return plus(entry(Entry.Kind.PASSED, rung, facts, date, toolVersion, words, measurements));
  }

  /**
   * Skips a rung, in words that stay in the record.
   *
   * @throws LadderRefusedException when a rung below does not hold, the rung cannot be skipped, or
   *     the reason is none
   */
  public Ladder skip(Rung rung, Facts facts, String date, String toolVersion, String reason)
      throws LadderRefusedException {
    if (!rung.skippable()) {
      throw new LadderRefusedException(
          "the rung '" + rung.words() + "' cannot be skipped: " + rung.next());
    }
    if (!Entry.plain(reason) || !(reason.strip().length() >= SHORTEST_REASON)) {
      throw new LadderRefusedException(
          "say in at least "
              + SHORTEST_REASON
              + " plain characters why the rung '"
              + rung.words()
              + "' is skipped and who answers for it; it stays in the record");
    }
    climbable(rung, facts);
    return plus(entry(Entry.Kind.SKIPPED, rung, facts, date, toolVersion, reason, List.of()));
  }

  /** Reports work on the car. */
  public Ladder report(Change change, Facts facts, String date, String toolVersion, String words) {
    return plus(
        new Entry(
            Entry.Kind.CHANGED,
            null,
            change,
            facts.practice(),
            date,
            toolVersion,
            facts.settings(),
            facts.benchSeal(),
            words,
            List.of()));
  }

  private static Entry entry(
      Entry.Kind kind,
      Rung rung,
      Facts facts,
      String date,
      String toolVersion,
      String words,
      List<ProofMeasurement> measurements) {
    Map<SettingsPart, String> settings = new EnumMap<>(SettingsPart.class);
    for (SettingsPart part : rung.parts()) {
      settings.put(part, facts.settings().getOrDefault(part, ""));
    }
    return new Entry(
        kind,
        rung,
        null,
        facts.practice(),
        date,
        toolVersion,
        settings,
        facts.benchSeal(),
        words,
        measurements);
  }

  private void climbable(Rung rung, Facts facts) throws LadderRefusedException {
    if (rung == Rung.BENCH) {
      freshBench(facts);
      return;
    }
    Rung next = standing(facts).next();
    if (next != null && rung.compareTo(next) > 0) {
      throw new LadderRefusedException(
          "the rung '"
              + rung.words()
              + "' comes after '"
              + next.words()
              + "', which is open: "
              + next.next());
    }
  }

  /** A proof that is older than work that voids it proves nothing, wherever it was kept. */
  private void freshBench(Facts facts) throws LadderRefusedException {
    if (!facts.benchProven()) {
      throw new LadderRefusedException(facts.benchWords());
    }
    boolean seenBefore = false;
    for (Entry entry : entries) {
      seenBefore |= entry.benchSeal().equals(facts.benchSeal());
      Change change = entry.change();
      boolean voids =
          change != null && change.voids(Rung.BENCH) && entry.practice() == facts.practice();
      if (voids && (seenBefore || !later(facts.benchDate(), entry.date()))) {
        throw new LadderRefusedException(
            "the bench proof of "
                + day(facts.benchDate())
                + " is older than the work reported on "
                + day(entry.date())
                + " (see that the clock is right); run the bench again");
      }
    }
  }

  /** ISO 8601 in UTC, with or without a fraction of the second. */
  private static boolean later(String date, String other) {
    return date.replace("Z", "").compareTo(other.replace("Z", "")) > 0;
  }

  /** Day and minute of an ISO 8601 date. */
  private static String day(String date) {
    return date.length() < 16 ? date : date.substring(0, 16).replace('T', ' ');
  }

  private Ladder plus(Entry entry) {
    List<Entry> all = new ArrayList<>(entries);
    all.add(entry);
    return new Ladder(all);
  }

  /** Where the car stands. */
  public Standing standing(Facts facts) {
    List<RungState> states = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      states.add(state(rung, facts));
    }
    return new Standing(states);
  }

  /** For a ladder that cannot be read: nothing holds. */
  public static Standing damaged(String why) {
    List<RungState> states = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      states.add(
          new RungState(
              rung, RungState.Status.VOID, "the record of the ladder is damaged (" + why + ")", null));
    }
    return new Standing(states);
  }

  private RungState state(Rung rung, Facts facts) {
    Entry last = null;
    Entry voidedBy = null;
    for (Entry entry : entries) {
      if (entry.practice() != facts.practice()) {
        continue;
      }
      Change change = entry.change();
      if (entry.rung() == rung) {
        last = entry;
        voidedBy = null;
      } else if (change != null && change.voids(rung) && last != null && voidedBy == null) {
        voidedBy = entry;
      }
    }
    if (rung == Rung.BENCH && !facts.benchProven()) {
      RungState.Status status =
          facts.benchSeal().isEmpty() ? RungState.Status.MISSING : RungState.Status.VOID;
      return new RungState(rung, status, facts.benchWords(), last);
    }
    if (last == null) {
      String words = rung == Rung.BENCH ? "the bench proof is not signed yet" : "not proven yet";
      return new RungState(rung, RungState.Status.MISSING, words, null);
    }
    String why = whyVoid(rung, last, voidedBy, facts);
    if (!why.isEmpty()) {
      return new RungState(rung, RungState.Status.VOID, why + " since " + day(last.date()), last);
    }
    return last.kind() == Entry.Kind.SKIPPED
        ? new RungState(
            rung,
            RungState.Status.SKIPPED,
            "skipped on " + day(last.date()) + ": " + last.words(),
            last)
        : new RungState(rung, RungState.Status.PROVEN, "proven on " + day(last.date()), last);
  }

  private static String whyVoid(Rung rung, Entry last, @Nullable Entry voidedBy, Facts facts) {
    Change change = voidedBy == null ? null : voidedBy.change();
    if (change != null) {
      return change.words();
    }
    for (SettingsPart part : SettingsPart.values()) {
      if (rung.parts().contains(part)) {
        String then = last.settings().getOrDefault(part, "");
        if (then.isEmpty() || !then.equals(facts.settings().get(part))) {
          return part.words() + " changed in the settings";
        }
      }
    }
    if (rung.tiedToBench() && !last.benchSeal().equals(facts.benchSeal())) {
      return "the valve was on the bench again";
    }
    return "";
  }
}
