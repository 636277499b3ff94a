package org.boostwright.core.settings.file;

import org.boostwright.core.table.Table2d;

/** Is told every effective value of a car's settings, in the order of the file. */
interface SettingsVisitor {
  /** Text, a choice. */
  void text(String key, String value);

  /** Something to know that has no key of its own, such as a sensor that is not fitted. */
  void remark(String key, String words);

  /** True or false. */
  void flag(String key, boolean value);

  /** A whole number; {@link org.boostwright.core.settings.PinSettings#NOT_WIRED} for no wire. */
  void whole(String key, int value);

  /** A number in the units used inside. */
  void number(String key, double value, Quantity quantity);

  /** Numbers in the units used inside. */
  void list(String key, double[] values, Quantity quantity);

  /** A table in the units used inside. */
  void table(String key, Table2d table, Quantity quantity);
}
