package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.sim.Chance;

/** Where points of all forms are drawn: a part from the prior itself, the rest from peaks. */
final class FreeMixture {
  /** The share of points that are drawn from the prior; with more taps, which tell more, less. */
  private static final double FROM_PRIOR = 0.5;

  private static final double FEW_TAPS = 2;

  /** The share that all peaks have alike. */
  private static final double ALIKE = 0.15;

  private final FreePrior prior;
  private final double window;
  private final List<FreePeak> peaks;
  private final List<Double> shares = new ArrayList<>();

  /**
   * A mixture.
   *
   * @param taps how many taps there are
   * @param weights how much each peak is worth
   */
  FreeMixture(FreePrior prior, double window, int taps, List<FreePeak> peaks, double[] weights) {
    this.prior = prior;
    this.window = window;
    this.peaks = List.copyOf(peaks);
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    double few = Math.min(1, FEW_TAPS / Math.max(FEW_TAPS, taps));
    double fromPeaks = peaks.isEmpty() ? 0 : 1 - FROM_PRIOR * few;
    shares.add(1 - fromPeaks);
    for (double weight : weights) {
      shares.add(fromPeaks * (ALIKE / weights.length + (1 - ALIKE) * weight / sum));
    }
  }

  /** A point and its form's number. */
  @SuppressWarnings("ArrayRecordComponent") // Inner loops; nobody outside the package sees it.
  record Point(int number, double[] values) {}

  List<FreePeak> peaks() {
    return peaks;
  }

  /** A point; empty where one was drawn that cannot be. */
  Optional<Point> draw(Chance chance) {
    int which = chance.pick(shares);
    if (which > 0) {
      FreePeak peak = peaks.get(which - 1);
      return peak.draw(chance).map(values -> new Point(peak.number(), values));
    }
    int number = prior.pick(chance);
    double[] values = prior.forms().get(number).draw(window, chance);
    return values.length == 0 ? Optional.empty() : Optional.of(new Point(number, values));
  }

  /** The part of the density at a point that each peak has, and that of the prior before all. */
  double[] densities(Point point) {
    double[] densities = new double[shares.size()];
    FreeForm form = prior.forms().get(point.number());
    double drawn = prior.share(point.number()) * Math.exp(form.logPrior(point.values(), window));
    densities[0] = shares.get(0) * drawn;
    for (int i = 1; i < densities.length; i++) {
      FreePeak peak = peaks.get(i - 1);
      if (peak.number() == point.number()) {
        densities[i] = shares.get(i) * peak.density(point.values());
      }
    }
    return densities;
  }
}
