package org.boostwright.rig.report;

import org.boostwright.rig.result.Judgement;
import org.boostwright.rig.result.Verdict;

/** Verdicts as the page shows them: a sign besides the word, so that colour is never needed. */
final class Words {
  private Words() {}

  /** The verdict of the whole run. */
  static String of(Verdict verdict) {
    String sign =
        switch (verdict) {
          case PASSED -> "✓ ";
          case FAILED -> "✕ ";
          case REFUSED -> "■ ";
        };
    return sign + verdict.word();
  }

  /** The verdict of one number. */
  static void judgement(Html html, Judgement judgement) {
    String sign =
        switch (judgement) {
          case PASSED -> "✓ ";
          case FAILED, NOT_MEASURED -> "✕ ";
          case NOT_JUDGED -> "";
        };
    html.element("span", "j " + judgement.word().replace(' ', '-'), sign + judgement.word());
  }
}
