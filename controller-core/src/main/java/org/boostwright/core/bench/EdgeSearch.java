package org.boostwright.core.bench;

import org.boostwright.core.bench.model.EdgeBracket;
import org.jspecify.annotations.Nullable;

/**
 * Searches by halving for the shortest pulse (or pause) that moves the spool at one frequency.
 *
 * <p>Before each trial the valve is held where it came from, so that the trial asks one clear
 * question also where the two edges overlap. The line has moved when its mean, or the lowest (or
 * highest) place of its period, has left the reference by more than the noise allows.
 */
final class EdgeSearch {
  private static final double MEAN_KPA = 0.25;
  private static final double PLACE_KPA = 0.4;
  private static final double SIGMAS = 5.5;
  private static final double MEASURE_SECONDS = 1.0;
  private static final double LONGEST_SHARE = 0.97;

  private final double frequencyHz;
  private final boolean onEdge;
  private final double resolutionSeconds;
  private final double widenSeconds;

  private double still;
  private double moved;
  private boolean stillKnown;
  private boolean movedKnown;
  private double trialSeconds;
  private boolean trialRunning;
  private double referenceKpaAbs = Double.NaN;
  private double referenceSigma;

  EdgeSearch(
      double frequencyHz,
      boolean onEdge,
      double guessSeconds,
      double slackSeconds,
      double resolutionSeconds) {
    this.frequencyHz = frequencyHz;
    this.onEdge = onEdge;
    this.resolutionSeconds = resolutionSeconds;
    this.widenSeconds = slackSeconds;
    double longest = LONGEST_SHARE / frequencyHz;
    still = Math.max(0.0, Math.min(guessSeconds - slackSeconds, longest));
    moved = Math.min(guessSeconds + slackSeconds, longest);
    stillKnown = still == 0.0;
  }

  /** Next drive; null when the bracket is narrow enough or the edge is not to be found. */
  @Nullable Action next(Outcome last) {
    if (trialRunning) {
      take(last.driven());
      trialRunning = false;
      referenceKpaAbs = Double.NaN;
    } else if (last.reading() != null) {
      referenceKpaAbs = last.driven().meanKpaAbs();
      referenceSigma = last.driven().meanSigmaKpa();
    }
    if (finished()) {
      return null;
    }
    if (Double.isNaN(referenceKpaAbs)) {
      return Action.settle(frequencyHz, onEdge ? 0.0 : 1.0, 0.3);
    }
    trialSeconds = !movedKnown ? moved : !stillKnown ? still : 0.5 * (still + moved);
    trialRunning = true;
    double pulse = trialSeconds * frequencyHz;
    return Action.settle(frequencyHz, onEdge ? pulse : 1.0 - pulse, MEASURE_SECONDS);
  }

  private void take(Reading reading) {
    double sign = onEdge ? 1.0 : -1.0;
    double mean = sign * (referenceKpaAbs - reading.meanKpaAbs());
    double place =
        onEdge ? referenceKpaAbs - reading.lowKpaAbs() : reading.highKpaAbs() - referenceKpaAbs;
    boolean hasMoved =
        mean > Math.max(MEAN_KPA, SIGMAS * Math.hypot(referenceSigma, reading.meanSigmaKpa()))
            || place > PLACE_KPA + SIGMAS * Math.hypot(referenceSigma, reading.binSigmaKpa());
    double longest = LONGEST_SHARE / frequencyHz;
    if (hasMoved) {
      moved = trialSeconds;
      movedKnown = true;
      if (!stillKnown && moved <= still) {
        still = Math.max(0.0, moved - widenSeconds);
        stillKnown = still == 0.0;
      }
    } else {
      still = trialSeconds;
      stillKnown = true;
      if (!movedKnown) {
        moved = still >= longest ? Double.NaN : Math.min(longest, still + 2.0 * widenSeconds);
      }
    }
  }

  private boolean finished() {
    return Double.isNaN(moved) || (stillKnown && movedKnown && moved - still <= resolutionSeconds);
  }

  /** The bracket; null when no pulse moved the spool. */
  @Nullable EdgeBracket bracket() {
    return Double.isNaN(moved) ? null : new EdgeBracket(frequencyHz, onEdge, still, moved);
  }
}
