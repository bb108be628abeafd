package lampwise.decode;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;

/**
 * What a light curve was read by, to be drawn beside it: at each sample the level that counts as
 * dark, and either the level from which on the lamp counts as lit or, where blinks do not stand out
 * one by one, what speaks for a blink at each moment. Immutable.
 */
public final class LightTrace {
  private final double[] seconds;
  private final double[] dark;
  private final double[] lit;
  private final double[] times;
  private final double[] evidence;
  private final List<Window> saturated;

  private LightTrace(
      double[] seconds,
      double[] dark,
      double[] lit,
      double[] times,
      double[] evidence,
      List<Window> saturated) {
    this.seconds = seconds;
    this.dark = dark;
    this.lit = lit;
    this.times = times;
    this.evidence = evidence;
    this.saturated = saturated;
  }

  /**
   * What the decoder read a curve by.
   *
   * @param sheet the sheet that it is read against; without one, blinks are cut at a level
   * @param curve the curve
   * @param blinks the blinks that were read in it
   * @return the trace, in the times and levels of the curve; without samples if it cannot be read
   */
  public static LightTrace of(Optional<CodeSheet> sheet, LightCurve curve, List<SeenBlink> blinks) {
    Saturation saturation = Saturation.of(curve);
    Sight sight = Sight.of(curve);
    double[] none = new double[0];
    if (sight.evidence().isEmpty()) {
      return new LightTrace(none, none, none, none, none, saturation.stretches());
    }
    LightCurve rest = saturation.curve();
    Evidence found = sight.evidence().get();
    boolean folded =
        sheet.isPresent()
            && !sight.clear()
            && LightLikelihoods.of(sheet.get(), rest, found).isPresent();
    if (!folded) {
      return cut(rest, found.window(), saturation.stretches());
    }
    LightSamples samples = LightSamples.of(rest, found.window(), LitSpans.isHeld(rest));
    double blink = sheet.get().blinkSeconds().orElse(TrainBuilder.USUAL_BLINK);
    LightEvidence light = LightEvidence.of(samples, blink);
    float[] logs = light.logRatios()[lamp(light, blinks)];
    double[] times = new double[logs.length];
    double[] evidence = new double[logs.length];
    for (int g = 0; g < logs.length; g++) {
      times[g] = light.seconds(g);
      evidence[g] = logs[g];
    }
    return new LightTrace(
        samples.seconds(), dark(rest, samples), none, times, evidence, saturation.stretches());
  }

  /** The lamp whose brightness explains the blinks best. */
  private static int lamp(LightEvidence light, List<SeenBlink> blinks) {
    int best = (light.faintest() + light.brightest()) / 2;
    double most = Double.NEGATIVE_INFINITY;
    for (int k = light.faintest(); k <= light.brightest() && !blinks.isEmpty(); k++) {
      float[] logs = light.logRatios()[k];
      double sum = 0;
      for (SeenBlink seen : blinks) {
        double place = (seen.blink().onSeconds() - light.fromSeconds()) / light.stepSeconds();
        sum += logs[(int) Math.max(0, Math.min(logs.length - 1, Math.rint(place)))];
      }
      best = sum > most ? k : best;
      most = Math.max(most, sum);
    }
    return best;
  }

  /** The level of the newest row at each sample, less what it is above the baseline. */
  private static double[] dark(LightCurve curve, LightSamples samples) {
    double sign = curve.lit() == LightCurve.Lit.DARKER ? -1 : 1;
    double[] dark = new double[samples.seconds().length];
    double level = Double.NaN;
    int row = 0;
    for (int i = 0; i < dark.length; i++) {
      for (; row < curve.size() && curve.seconds(row) <= samples.seconds()[i]; row++) {
        level = Double.isNaN(curve.level(row)) ? level : curve.level(row);
      }
      dark[i] = level - sign * samples.above()[i];
    }
    return dark;
  }

  private static LightTrace cut(LightCurve curve, Window window, List<Window> saturated) {
    LitSpans.Samples samples = LitSpans.Samples.of(curve, window);
    Optional<LitSpans.Cut> cut = LitSpans.cut(samples);
    double[] none = new double[0];
    if (cut.isEmpty()) {
      return new LightTrace(none, none, none, none, none, saturated);
    }
    double sign = curve.lit() == LightCurve.Lit.DARKER ? -1 : 1;
    int size = samples.seconds().length;
    double[] dark = new double[size];
    double[] lit = new double[size];
    for (int i = 0; i < size; i++) {
      double zero = samples.levels()[i] - cut.get().above()[i];
      dark[i] = sign * (zero + cut.get().dark());
      lit[i] = sign * (zero + cut.get().lit());
    }
    return new LightTrace(samples.seconds(), dark, lit, none, none, saturated);
  }

  /**
   * How many samples were looked at; those of a file written on change are filled up.
   *
   * @return zero or more
   */
  public int size() {
    return seconds.length;
  }

  /**
   * The time of a sample.
   *
   * @param index from 0 to {@code size() - 1}
   * @return seconds
   */
  public double seconds(int index) {
    return seconds[index];
  }

  /**
   * The level that counts as dark at a sample.
   *
   * @param index from 0 to {@code size() - 1}
   * @return the level in the curve's unit; NaN where the sample was left out
   */
  public double darkLevel(int index) {
    return dark[index];
  }

  /**
   * Whether the lamp counts as lit from a level on.
   *
   * @return true if there is such a level at each sample; false if evidence was added up, or
   *     nothing stood out
   */
  public boolean hasLitLevel() {
    return lit.length > 0;
  }

  /**
   * The level from which on the lamp counts as lit at a sample.
   *
   * @param index from 0 to {@code size() - 1}
   * @return the level in the curve's unit; NaN if there is none
   */
  public double litLevel(int index) {
    return hasLitLevel() ? lit[index] : Double.NaN;
  }

  /**
   * At how many moments there is evidence.
   *
   * @return zero where the lamp counts as lit from a level on
   */
  public int evidenceSize() {
    return times.length;
  }

  /**
   * One of these moments.
   *
   * @param index from 0 to {@code evidenceSize() - 1}
   * @return seconds
   */
  public double evidenceSeconds(int index) {
    return times[index];
  }

  /**
   * What the samples say of a blink that began at that moment.
   *
   * @param index from 0 to {@code evidenceSize() - 1}
   * @return the natural logarithm of how much likelier they are with it than without: over zero
   *     for, below zero against
   */
  public double evidence(int index) {
    return evidence[index];
  }

  /**
   * The longer stretches that were left out because the sensor was at the top of its range.
   *
   * @return the stretches, in order
   */
  public List<Window> saturated() {
    return List.copyOf(saturated);
  }

  @Override
  public String toString() {
    return "LightTrace["
        + seconds.length
        + " samples, "
        + times.length
        + " moments of evidence, saturated "
        + Arrays.toString(saturated.toArray())
        + "]";
  }
}
