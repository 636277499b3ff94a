package org.boostwright.core.ladder;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.jspecify.annotations.Nullable;

/**
 * A garage: the settings, the bench proof's and the ladder's file as they lie there, and beside them
 * what was honestly proven, kept by rules of its own ({@link VoidedBy}).
 *
 * @param edited parts of the settings that now differ from the first version
 * @param proofsMade bench proofs made so far
 * @param proof number of the bench proof that lies beside the settings; 0 none, -1 damaged
 * @param ladderText the ladder's file; null when there is none
 * @param honest what was honestly proven, by rung: the settings and bench proof then; a rung that
 *     work voided is missing
 * @param spoiled highest number of a bench proof that work has made worthless
 */
record LadderWorld(
    Set<SettingsPart> edited,
    int proofsMade,
    int proof,
    @Nullable String ladderText,
    Map<Rung, String> honest,
    int spoiled) {

  /** Something that happens; null when it changes nothing. */
  interface Event {
    @Nullable LadderWorld apply(LadderWorld world);
  }

  static LadderWorld start() {
    return new LadderWorld(Set.of(), 0, 0, null, Map.of(), 0);
  }

  String key() {
    boolean damaged = ladderText != null && ladder() == null;
    return new TreeMap<>(honest)
        + " edited "
        + new java.util.TreeSet<>(edited)
        + " proofs "
        + proofsMade
        + " proof "
        + proof
        + " spoiled "
        + spoiled
        + (damaged ? " damaged" : "");
  }

  private Facts facts() {
    Map<SettingsPart, String> parts = new EnumMap<>(SettingsPart.class);
    for (SettingsPart part : SettingsPart.values()) {
      parts.put(part, part.id() + (edited.contains(part) ? "B" : "A"));
    }
    boolean proven = proof > 0;
    return new Facts(parts, proven, "", proven ? "seal-" + proof : "", time(2 * proof - 1), false);
  }

  /** Bench proof n is made at 2n - 1, work after it reported at 2n. */
  private static String time(int at) {
    return String.format("2026-01-%02dT00:00:00Z", 1 + Math.max(0, at));
  }

  private @Nullable Ladder ladder() {
    String text = ladderText;
    if (text == null) {
      return Ladder.EMPTY;
    }
    try {
      return LadderText.read(text);
    } catch (DamagedProofException e) {
      return null;
    }
  }

  Standing standing() {
    Ladder ladder = ladder();
    return ladder == null ? Ladder.damaged("test") : ladder.standing(facts());
  }

  /** Whether a rung was honestly proven with what now lies in the garage. */
  boolean honestlyHolds(Rung rung) {
    boolean proofHolds = rung != Rung.BENCH || proof > 0;
    return ladder() != null && proofHolds && basis(rung).equals(honest.get(rung));
  }

  private String basis(Rung rung) {
    StringBuilder basis = new StringBuilder();
    for (SettingsPart part : SettingsPart.values()) {
      if (VoidedBy.SETTINGS.getOrDefault(part, Set.of()).contains(rung)) {
        basis.append(edited.contains(part) ? 'B' : 'A');
      }
    }
    boolean tied = rung == Rung.BENCH || rung.compareTo(Rung.SPRING_DRIVE) >= 0;
    return basis + (tied ? "/" + Math.max(0, proof) : "");
  }

  private LadderWorld with(
      Set<SettingsPart> newEdited,
      int newMade,
      int newProof,
      @Nullable String newText,
      Map<Rung, String> newHonest,
      int newSpoiled) {
    return new LadderWorld(newEdited, newMade, newProof, newText, newHonest, newSpoiled);
  }

  private LadderWorld withLadder(Ladder ladder, Map<Rung, String> newHonest, int newSpoiled) {
    return with(edited, proofsMade, proof, LadderText.write(ladder), newHonest, newSpoiled);
  }

  /** An attempt at every rung, allowed or not; the model takes it only when all below holds. */
  static List<Event> passes() {
    List<Event> events = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      events.add(world -> world.climb(rung, false));
    }
    return events;
  }

  static List<Event> skips() {
    List<Event> events = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      events.add(world -> world.climb(rung, true));
    }
    return events;
  }

  private @Nullable LadderWorld climb(Rung rung, boolean skip) {
    Ladder ladder = ladder();
    if (ladder == null) {
      return null;
    }
    boolean honestly = rung != Rung.BENCH || (proof > 0 && proof > spoiled);
    for (Rung below : Rung.values()) {
      honestly &= below.compareTo(rung) >= 0 || honestlyHolds(below);
    }
    honestly &= !skip || rung.compareTo(Rung.CUT_PROVEN) > 0;
    Ladder after;
    try {
      after =
          skip
              ? ladder.skip(rung, facts(), Ladders.DATE, "v", Ladders.REASON)
              : ladder.pass(rung, facts(), Ladders.DATE, "v", "", List.of());
    } catch (LadderRefusedException e) {
      if (honestly) {
        throw new AssertionError("refused " + rung + " in " + key(), e);
      }
      return null;
    }
    if (!honestly) {
      throw new AssertionError("took " + rung + " in " + key());
    }
    Map<Rung, String> proven = new EnumMap<>(Rung.class);
    proven.putAll(honest);
    proven.put(rung, basis(rung));
    return withLadder(after, proven, spoiled);
  }

  static Event work(Change change) {
    return world -> {
      Ladder ladder = world.ladder();
      if (ladder == null) {
        return null;
      }
      Map<Rung, String> left = new EnumMap<>(Rung.class);
      left.putAll(world.honest);
      Set<Rung> voided = VoidedBy.WORK.getOrDefault(change, Set.of());
      left.keySet().removeAll(voided);
      int spoiled = voided.contains(Rung.BENCH) ? world.proofsMade : world.spoiled;
      String when = time(2 * world.proofsMade);
      return world.withLadder(
          ladder.report(change, world.facts(), when, "v", ""), left, spoiled);
    };
  }

  static Event edit(SettingsPart part) {
    return world -> {
      Set<SettingsPart> after = new java.util.HashSet<>(world.edited);
      if (!after.remove(part)) {
        after.add(part);
      }
      return world.with(
          Set.copyOf(after),
          world.proofsMade,
          world.proof,
          world.ladderText,
          world.honest,
          world.spoiled);
    };
  }

  /** A new bench proof, up to a number; an older one laid back; none; a damaged one. */
  static List<Event> benchFile(int most) {
    List<Event> events = new ArrayList<>();
    for (int number = -1; number <= most; number++) {
      int lay = number;
      events.add(
          world ->
              lay > world.proofsMade + 1
                  ? null
                  : world.with(
                      world.edited,
                      Math.max(world.proofsMade, lay),
                      lay,
                      world.ladderText,
                      world.honest,
                      world.spoiled));
    }
    return events;
  }

  /** The ladder's file deleted, cut short, one letter changed, or another car's or practice's. */
  static List<Event> ladderFile() {
    return List.of(
        world ->
            world.ladderText == null
                ? null
                : world.with(
                    world.edited, world.proofsMade, world.proof, null, Map.of(), 0),
        world -> world.withText(text -> text.substring(0, text.length() / 2)),
        world -> world.withText(text -> text.substring(0, text.lastIndexOf('\n', text.length() - 2) + 1)),
        world -> world.withText(text -> text.replaceFirst("car", "cat")),
        world -> world.withText(text -> text.replace("passed", "Passed")),
        world -> {
          Facts f = world.facts();
          Facts practice =
              new Facts(Ladders.parts("A"), true, "", f.benchSeal(), f.benchDate(), true);
          try {
            return world.with(
                world.edited,
                world.proofsMade,
                world.proof,
                LadderText.write(Ladders.climbed(practice)),
                Map.of(),
                0);
          } catch (LadderRefusedException e) {
            throw new AssertionError(e);
          }
        });
  }

  private @Nullable LadderWorld withText(java.util.function.UnaryOperator<String> damage) {
    String text = ladderText;
    if (text == null || damage.apply(text).equals(text)) {
      return null;
    }
    return with(edited, proofsMade, proof, damage.apply(text), honest, spoiled);
  }
}
