package lampwise.sim.score;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * The density of taps for one rhythm at every phase and stretch, summed over both. Phase is the
 * part of a cycle that the middle of the window lies after a cycle's start, even from 0 to 1.
 *
 * <p>Cells of the plane carry an upper bound of the density in them; those that matter are cut in
 * two until they are small, and then summed on points closer than the narrowest peak that so many
 * blinks can make.
 */
final class Grid {
  /** In the first cells blinks move this many timing errors to either side. */
  private static final double FIRST = 8;

  /** In the last cells they move at most this many. */
  private static final double LAST = 1;

  /** Points are at most this many timing errors apart, over the root of the number of blinks. */
  private static final double STEP = 1.2;

  private final Fold fold;
  private final Sighting sighting;
  private final double late;
  private final double burstGap;
  private final double middle;
  private final double half;
  private final double[] begins;
  private final double[] noted;
  private final double[] asides;

  /**
   * A cell of the plane.
   *
   * @param bound logarithm of what the density in it cannot exceed, the stretch's own density
   *     included
   */
  record Cell(double phase, double stretch, double halfPhase, double halfStretch, double bound) {}

  /**
   * Prepares the sum.
   *
   * @param late how much later the first blink of a burst is noted
   * @param burstGap after how much dark a burst begins
   */
  Grid(Fold fold, Sighting sighting, double late, double burstGap) {
    this.fold = fold;
    this.sighting = sighting;
    this.late = late;
    this.burstGap = burstGap;
    this.middle = (sighting.from() + sighting.to()) / 2;
    this.half = (sighting.to() - sighting.from()) / 2;
    int most = (int) (2 * half / (fold.cycle() * fold.stretch().least()));
    this.begins = new double[(most + 6) * fold.blinks()];
    this.noted = new double[begins.length];
    this.asides = new double[begins.length];
  }

  /** The cells to begin with. */
  List<Cell> first(double least) {
    double reach = FIRST * sighting.sd();
    double slow = fold.stretch().most();
    double fast = fold.stretch().least();
    int stretches = Math.max(1, (int) Math.ceil((slow - fast) * half / fast / reach));
    int phases = Math.max(4, (int) Math.ceil(fold.cycle() * slow / reach));
    double halfStretch = (slow - fast) / 2 / stretches;
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < stretches; i++) {
      for (int k = 0; k < phases; k++) {
        double phase = (k + 0.5) / phases;
        cells.add(cell(phase, fast + (2 * i + 1) * halfStretch, 0.5 / phases, halfStretch, least));
      }
    }
    return cells;
  }

  private Cell cell(
      double phase, double stretch, double halfPhase, double halfStretch, double least) {
    double density = 0;
    for (int k = -2; k <= 2; k++) {
      density = Math.max(density, fold.stretch().density(stretch + k / 2.0 * halfStretch));
    }
    double logDensity = Math.log(density);
    double aside = byPhase(halfPhase, stretch + halfStretch) + byStretch(halfStretch, stretch);
    double bound = logDensity + log(phase, stretch, aside, least - logDensity);
    return new Cell(phase, stretch, halfPhase, halfStretch, bound);
  }

  /** How far a blink moves with the phase. */
  private double byPhase(double halfPhase, double stretch) {
    return halfPhase * fold.cycle() * stretch;
  }

  /** How far a blink at the window's border moves with the stretch. */
  private double byStretch(double halfStretch, double stretch) {
    return halfStretch * (half + fold.cycle() * stretch) / stretch;
  }

  /** What a single point at the middle of a cell adds to the sum at least, logarithm. */
  double point(Cell cell) {
    Cell at = cell;
    while (!isLast(at)) {
      at =
          Collections.max(
              cut(at, Double.NEGATIVE_INFINITY), Comparator.comparingDouble(Cell::bound));
    }
    double step = step(at.stretch());
    double area = step * step / (fold.cycle() * half);
    double density = fold.stretch().density(at.stretch());
    return log(at.phase(), at.stretch(), 0, Double.NEGATIVE_INFINITY) + Math.log(density * area);
  }

  private boolean isLast(Cell cell) {
    return byPhase(cell.halfPhase(), cell.stretch()) <= LAST * sighting.sd()
        && byStretch(cell.halfStretch(), cell.stretch()) <= LAST * sighting.sd();
  }

  private List<Cell> cut(Cell cell, double least) {
    boolean across =
        byPhase(cell.halfPhase(), cell.stretch()) > byStretch(cell.halfStretch(), cell.stretch());
    double phase = across ? cell.halfPhase() / 2 : cell.halfPhase();
    double stretch = across ? cell.halfStretch() : cell.halfStretch() / 2;
    List<Cell> parts = new ArrayList<>();
    for (int side = -1; side <= 1; side += 2) {
      parts.add(
          cell(
              cell.phase() + (across ? side * phase : 0),
              cell.stretch() + (across ? 0 : side * stretch),
              phase,
              stretch,
              least));
    }
    return parts;
  }

  /**
   * The sum over the plane.
   *
   * @param cells the cells to begin with
   * @param least logarithm of a density that does not matter
   * @param best a logarithm near that of the sum
   * @return the sum over {@code exp(best)}
   */
  double sum(List<Cell> cells, double least, double best) {
    Deque<Cell> open = new ArrayDeque<>(cells);
    double sum = 0;
    while (!open.isEmpty()) {
      Cell cell = open.pop();
      if (cell.bound() > least) {
        if (isLast(cell)) {
          sum += within(cell, least, best);
        } else {
          open.addAll(cut(cell, least));
        }
      }
    }
    return sum;
  }

  private double step(double stretch) {
    double blinks = Math.max(1, 2 * half / (fold.cycle() * stretch) * fold.blinks());
    return STEP * sighting.sd() / Math.sqrt(blinks);
  }

  private double within(Cell cell, double least, double best) {
    double step = step(cell.stretch());
    int phases = Math.max(2, (int) Math.ceil(2 * byPhase(cell.halfPhase(), cell.stretch()) / step));
    int stretches =
        Math.max(2, (int) Math.ceil(2 * cell.halfStretch() * half / cell.stretch() / step));
    double area = 4 * cell.halfPhase() * cell.halfStretch() / phases / stretches;
    double sum = 0;
    for (int i = 0; i < stretches; i++) {
      double stretch = cell.stretch() + ((2.0 * i + 1) / stretches - 1) * cell.halfStretch();
      double density = fold.stretch().density(stretch);
      for (int k = 0; k < phases && density > 0; k++) {
        double phase = cell.phase() + ((2.0 * k + 1) / phases - 1) * cell.halfPhase();
        sum += density * Math.exp(log(phase, stretch, 0, least) - best);
      }
    }
    return sum * area;
  }

  private double log(double phase, double stretch, double aside, double least) {
    double cycle = fold.cycle() * stretch;
    double start = middle - phase * cycle;
    int first = (int) Math.floor((sighting.from() - aside - start) / cycle) - 1;
    int last = (int) Math.ceil((sighting.to() + aside - start) / cycle);
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
}
