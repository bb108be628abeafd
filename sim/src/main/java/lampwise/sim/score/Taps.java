package lampwise.sim.score;

import java.util.Arrays;

/** The taps of a person as evidence: blinks in the window, the first of a burst noted late. */
final class Taps implements Evidence {
  /** In the first cells blinks move this many timing errors to either side. */
  private static final double FIRST = 8;

  /** In the last cells they move at most this many. */
  private static final double LAST = 1;

  /** Points are at most this many timing errors apart, over the root of the number of blinks. */
  private static final double STEP = 1.2;

  private final Sighting sighting;
  private final double late;
  private final double burstGap;
  private double[] begins = new double[16];
  private double[] noted = new double[16];
  private double[] asides = new double[16];

  /**
   * The taps.
   *
   * @param late how much later the first blink of a burst is noted
   * @param burstGap after how much dark a burst begins
   */
  Taps(Sighting sighting, double late, double burstGap) {
    this.sighting = sighting;
    this.late = late;
    this.burstGap = burstGap;
  }

  /** How many there are. */
  int count() {
    return sighting.count();
  }

  @Override
  public double from() {
    return sighting.from();
  }

  @Override
  public double to() {
    return sighting.to();
  }

  @Override
  public double reach() {
    return FIRST * sighting.sd();
  }

  @Override
  public double last(double blinks) {
    return LAST * sighting.sd();
  }

  @Override
  public double step(double blinks) {
    return STEP * sighting.sd() / Math.sqrt(blinks);
  }

  @Override
  public double log(
      Fold fold, double start, double stretch, double around, double turn, double least) {
    double cycle = fold.cycle() * stretch;
    double aside = around + turn * ((sighting.to() - sighting.from()) / 2 + cycle);
    int first = (int) Math.floor((sighting.from() - aside - start) / cycle) - 1;
    int last = (int) Math.ceil((sighting.to() + aside - start) / cycle);
    room((last - first + 1) * fold.blinks());
    int count = 0;
    double dark = Double.NEGATIVE_INFINITY;
    for (int n = first; n <= last; n++) {
      for (int k = 0; k < fold.blinks(); k++) {
        double on = start + (n * fold.cycle() + fold.on(k)) * stretch;
        double end = start + (n * fold.cycle() + fold.end(k)) * stretch;
        if (on >= sighting.from() - aside && on <= sighting.to() + aside) {
          double gap = on - dark - burstGap;
          // A bound must cover both where the gap may lie on either side of its border.
          double either = aside > 0 && Math.abs(gap) < 2 * aside ? late / 2 : 0;
          begins[count] = on;
          noted[count] = on + (either > 0 ? either : gap > 0 ? late : 0);
          asides[count++] = aside + either;
        }
        // What ended before the window was not seen: the first blink in it always opens a burst.
        dark = end > sighting.from() ? end : Double.NEGATIVE_INFINITY;
      }
    }
    return sighting.log(noted, begins, count, asides, aside, least);
  }

  private void room(int blinks) {
    if (blinks > begins.length) {
      begins = Arrays.copyOf(begins, 2 * blinks);
      noted = Arrays.copyOf(noted, 2 * blinks);
      asides = Arrays.copyOf(asides, 2 * blinks);
    }
  }
}
