package org.boostwright.core.bench;

/** What a session asks of the person at the bench; the coil is off while it waits. */
public enum Question {
  AIR_OFF(
      "Shut the air off and let the line empty. Leave everything plugged in.", "enter when done"),
  CLICK_COUNT(
      "The coil was switched on and off a few times. How many double clicks did you hear?",
      "a number, 0 for none"),
  COIL_OHMS(
      "Pull the coil's plug and measure the resistance between its two pins.",
      "ohm; 'open' when the meter shows nothing"),
  BATTERY_CLICK(
      "Touch the coil's pins to a 9 to 12 V battery for a second. Does it click?", "yes or no"),
  AIR_ON(
      "Eye protection on, hoses secured, relief valve at 150 kPa (22 psi) or below. Set the"
          + " regulator to 80 to 100 kPa (12 to 14 psi) gauge and open the air.",
      "what the regulator's own gauge shows"),
  LISTEN_AT_VENT(
      "The valve was held on for a second and off for a second, three times. What came out of the"
          + " port that should be the vent?",
      "nothing, puff (short, each time it went on), on (steady while on), off (steady while off)"),
  UNPLUG_COIL(
      "Pull the coil's plug and leave the air on.", "what the gauge on the actuator line shows"),
  PLUG_COIL("Put the coil's plug back.", "enter when done"),
  REGULATOR_WORKING(
      "The valve just worked at half duty for two seconds. What did the regulator's own gauge show"
          + " meanwhile?",
      "gauge reading"),
  SUPPLY_SHUT("Shut the tap right before the valve; do not move any hose.", "enter when done"),
  SUPPLY_OPEN("Open the tap again.", "enter when done"),
  ROD_CRACK(
      "Connect the regulated air straight to the actuator, start from 0 and raise it slowly. At"
          + " which pressure does the rod begin to move?",
      "gauge reading"),
  ROD_FULL("Raise it further. At which pressure does the rod stop moving (full stroke)?", "gauge"),
  ROD_HELD(
      "Shut the tap and wait 60 s at that pressure. What does the gauge show now?",
      "gauge reading"),
  ROD_PRELOAD(
      "By how many millimetres must the rod be pulled out to reach the wastegate lever?",
      "mm; 0 when it hangs loose");

  private final String words;
  private final String answer;

  Question(String words, String answer) {
    this.words = words;
    this.answer = answer;
  }

  /** The request as shown to people. */
  public String words() {
    return words;
  }

  /** What kind of answer is expected, for people. */
  public String answer() {
    return answer;
  }
}
