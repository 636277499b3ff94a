package org.boostwright.rig.scenario.campaign;

/** Rows that do not belong to the campaign asked for, or to none. */
public final class OtherCampaignException extends Exception {
  private static final long serialVersionUID = 1L;

  OtherCampaignException(String message) {
    super(message);
  }
}
