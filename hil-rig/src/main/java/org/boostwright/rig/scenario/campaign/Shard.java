package org.boostwright.rig.scenario.campaign;

/**
 * A share of a campaign: every {@code of}-th run, beginning with {@code number}.
 *
 * @param number which share, from 1
 * @param of how many shares
 */
public record Shard(int number, int of) {
  /** All of it. */
  public static final Shard WHOLE = new Shard(1, 1);

  /** Checks the numbers. */
  public Shard {
    if (!(of >= 1 && number >= 1 && number <= of)) {
      throw new IllegalArgumentException(
          "shard " + number + "/" + of + " must be a whole number from 1 to the number of shards");
    }
  }

  /** Reads {@code 2/4}. */
  public static Shard parse(String text) {
    String[] parts = text.split("/", -1);
    if (parts.length == 2) {
      try {
        return new Shard(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip()));
      } catch (NumberFormatException e) {
        throw new IllegalArgumentException("'" + text + "' is no shard; write for example 2/4", e);
      }
    }
    throw new IllegalArgumentException("'" + text + "' is no shard; write for example 2/4");
  }

  /** True for the runs of this share. */
  boolean has(long index) {
    return index % of == number - 1;
  }
}
