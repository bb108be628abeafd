package lampwise.sim.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lampwise.sim.Chance;

/**
 * Whether a decoder's probabilities mean what they say: of all readings whose likeliest candidate
 * has 0.9, nine in ten should be right.
 *
 * @param bins the readings by their stated probability, in bins of equal count, the least first
 * @param error the expected calibration error: the mean over all readings of the distance between
 *     what their bin states and the share of it that is right; NaN if there are none
 * @param byChance what that would be, on average, if each reading were right with exactly the
 *     probability that it states
 */
public record Calibration(List<Bin> bins, double error, double byChance) {
  private static final int BINS = 10;
  private static final int REDRAWS = 1000;

  /**
   * Readings of about one stated probability.
   *
   * @param count how many
   * @param stated the mean of what they state
   * @param right the share of them that is right
   */
  public record Bin(int count, double stated, Interval right) {}

  /** Keeps a copy of the list. */
  public Calibration {
    bins = List.copyOf(bins);
  }

  /**
   * Measures outcomes.
   *
   * @param outcomes the outcomes; those of equal stated probability keep their order
   * @param seed the seed of the labels that are redrawn
   * @return ten bins, fewer if there are fewer outcomes
   */
  public static Calibration of(List<Outcome> outcomes, long seed) {
    List<Outcome> sorted = new ArrayList<>(outcomes);
    sorted.sort(Comparator.comparingDouble(Outcome::topProbability));
    double[] stated = sorted.stream().mapToDouble(Outcome::topProbability).toArray();
    boolean[] right = new boolean[stated.length];
    for (int i = 0; i < right.length; i++) {
      right[i] = sorted.get(i).isRight();
    }
    List<Bin> bins = new ArrayList<>();
    for (int k = 0; k < BINS; k++) {
      int from = border(k, stated.length);
      int to = border(k + 1, stated.length);
      if (to > from) {
        double sum = 0;
        int hits = 0;
        for (int i = from; i < to; i++) {
          sum += stated[i];
          hits += right[i] ? 1 : 0;
        }
        bins.add(new Bin(to - from, sum / (to - from), Interval.share(hits, to - from)));
      }
    }
    double redrawn = 0;
    Chance chance = Chance.of(seed).branch("redrawn labels");
    boolean[] labels = new boolean[stated.length];
    for (int n = 0; n < REDRAWS; n++) {
      for (int i = 0; i < labels.length; i++) {
        labels[i] = chance.happens(stated[i]);
      }
      redrawn += error(stated, labels) / REDRAWS;
    }
    return new Calibration(bins, error(stated, right), redrawn);
  }

  private static int border(int bin, int all) {
    return (int) ((long) all * bin / BINS);
  }

  private static double error(double[] stated, boolean[] right) {
    double sum = 0;
    for (int k = 0; k < BINS; k++) {
      double off = 0;
      for (int i = border(k, stated.length); i < border(k + 1, stated.length); i++) {
        off += stated[i] - (right[i] ? 1 : 0);
      }
      sum += Math.abs(off);
    }
    return sum / stated.length;
  }

  /**
   * The error less what chance alone gives.
   *
   * @return about 0 for a calibrated decoder; may be below
   */
  public double excess() {
    return error - byChance;
  }
}
