package org.boostwright.core.settings.file;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.Map;
import org.boostwright.core.ladder.SettingsPart;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;

/**
 * Fingerprints of settings, so that a proof can say what it proved. SHA-256 (FIPS 180-4) over one
 * line for every effective value with its exact bits; comments, order, units and spelling in the
 * file make no difference, nor does the car's name.
 */
public final class SettingsDigest {
  private SettingsDigest() {}

  /** Everything that decides what the controller does; 64 hexadecimal digits. */
  public static String of(Settings settings) {
    Canonical canonical = new Canonical(null);
    new SettingsWalk(settings, canonical).behaviour();
    return canonical.digest();
  }

  /**
   * What the bench proves only: valve, driver, pressure sensor, what is screwed, plumbed and
   * soldered around them; 64 hexadecimal digits.
   */
  public static String ofHardware(Settings settings) {
    return ofPart(settings, SettingsPart.HARDWARE);
  }

  /** One part of the settings; 64 hexadecimal digits. */
  public static String ofPart(Settings settings, SettingsPart part) {
    Canonical canonical = new Canonical(part);
    new SettingsWalk(settings, canonical).behaviour();
    return canonical.digest();
  }

  /** Every part of the settings. */
  public static Map<SettingsPart, String> ofParts(Settings settings) {
    Map<SettingsPart, String> parts = new EnumMap<>(SettingsPart.class);
    for (SettingsPart part : SettingsPart.values()) {
      parts.put(part, ofPart(settings, part));
    }
    return parts;
  }

  private static final class Canonical implements SettingsVisitor {
    private final StringBuilder text = new StringBuilder();
    private final @Nullable SettingsPart only;

    /**
     * @param only the part to take; null for all
     */
    Canonical(@Nullable SettingsPart only) {
      this.only = only;
    }

    @Override
    public void text(String key, String value) {
      line(key, value);
    }

    @Override
    public void remark(String key, String words) {
      line(key, words);
    }

    @Override
    public void flag(String key, boolean value) {
      line(key, Boolean.toString(value));
    }

    @Override
    public void whole(String key, int value) {
      line(key, Integer.toString(value));
    }

    @Override
    public void number(String key, double value, Quantity quantity) {
      line(key, bits(value));
    }

    @Override
    public void list(String key, double[] values, Quantity quantity) {
      StringBuilder all = new StringBuilder();
      for (double value : values) {
        all.append(bits(value)).append(' ');
      }
      line(key, all.toString());
    }

    @Override
    public void table(String key, Table2d table, Quantity quantity) {
      list(key + " rows", table.rows().points(), quantity);
      list(key + " columns", table.columns().points(), quantity);
      list(key, table.values(), quantity);
    }

    private void line(String key, String value) {
      if (only != null && SettingsPart.of(key) != only) {
        return;
      }
      text.append(key).append('=').append(value).append('\n');
    }

    /** Minus zero counts as zero, every NaN as the same. */
    private static String bits(double value) {
      return Long.toHexString(Double.doubleToLongBits(value + 0.0));
    }

    private String digest() {
      try {
        MessageDigest sha = MessageDigest.getInstance("SHA-256");
        return HexFormat.of()
            .formatHex(sha.digest(text.toString().getBytes(StandardCharsets.UTF_8)));
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
  }
}
