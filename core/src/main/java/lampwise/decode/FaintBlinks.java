package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.LightCurve;

/**
 * Blinks that stand out one by one from raw samples, by the matched filter.
 *
 * @param notes the blinks, in order
 * @param weight the logarithms of their ratios above what was asked of each, summed
 */
record FaintBlinks(List<Evidence.Note> notes, double weight) {
  /** Lengths that are looked for where no sheet says one, seconds. */
  private static final double[] LENGTHS = {0.05, 0.1, 0.2, 0.35};

  /** The logarithm of its ratio from which on a blink is believed without a rhythm (chosen). */
  private static final double LEAST = 10;

  /** Fewer blinks are not believed: uneven noise and beats leave one or two (chosen). */
  private static final int FEWEST = 3;

  /** Blinks of one length, for the lamp that explains most. */
  static FaintBlinks of(LightEvidence light, double blink, double least) {
    FaintBlinks best = new FaintBlinks(List.of(), 0);
    int near = Math.max(2, (int) Math.rint(1.5 * blink / light.stepSeconds()));
    for (int k = light.faintest(); k <= light.brightest(); k++) {
      List<Evidence.Note> notes = new ArrayList<>();
      double sum = 0;
      float[] logs = light.logRatios()[k];
      for (int g = 0; g < logs.length; g++) {
        if (logs[g] > least && isPeak(logs, g, near)) {
          double on = light.seconds(g);
          notes.add(new Evidence.Note(on, on + blink, false, false, 0.98));
          sum += logs[g] - least;
        }
      }
      if (sum > best.weight()) {
        best = new FaintBlinks(notes, sum);
      }
    }
    return best;
  }

  /**
   * What a light curve shows without a sheet: blinks of the length that explains most where no two
   * levels stand out, else what was found by the levels. How long such blinks are is not known.
   *
   * @param found what was found by the levels
   */
  static Evidence shown(LightCurve curve, Evidence found) {
    if (!found.notes().isEmpty()
        || !found.blind().isEmpty()
        || found.window().lengthSeconds() > LightLikelihoods.MOST_SECONDS) {
      return found;
    }
    LightSamples samples = LightSamples.of(curve, found.window(), LitSpans.isHeld(curve));
    if (!(samples.noise() > 0) || !(samples.periodSeconds() > 0)) {
      return found;
    }
    FaintBlinks best = new FaintBlinks(List.of(), 0);
    for (double length : LENGTHS) {
      FaintBlinks blinks = of(LightEvidence.of(samples, length), length, LEAST);
      best = blinks.weight() > best.weight() ? blinks : best;
    }
    if (best.notes().size() < FEWEST) {
      return found;
    }
    return found.with(best.notes().stream().map(FaintBlinks::startOnly).toList());
  }

  private static Evidence.Note startOnly(Evidence.Note note) {
    return new Evidence.Note(note.on(), Double.NaN, false, false, note.probability());
  }

  private static boolean isPeak(float[] logs, int place, int near) {
    for (int g = Math.max(0, place - near); g <= Math.min(logs.length - 1, place + near); g++) {
      if (logs[g] > logs[place] || (logs[g] == logs[place] && g < place)) {
        return false;
      }
    }
    return true;
  }
}
