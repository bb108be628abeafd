package lampwise.sim.score;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The density of what was seen for one rhythm at every phase and stretch, summed over both. Phase
 * is the part of a cycle that the middle of the window lies after a cycle's start, even from 0 to
 * 1.
 *
 * <p>Cells of the plane carry an upper bound of the density in them; those that matter are cut in
 * two until they are small, and then summed on points closer than the narrowest peak that so many
 * blinks can make.
 */
final class Grid {
  private final Fold fold;
  private final Evidence evidence;
  private final double middle;
  private final double half;

  /**
   * A cell of the plane.
   *
   * @param bound logarithm of what the density in it cannot exceed, the stretch's own density
   *     included
   */
  record Cell(double phase, double stretch, double halfPhase, double halfStretch, double bound) {}

  /** Prepares the sum. */
  Grid(Fold fold, Evidence evidence) {
    this.fold = fold;
    this.evidence = evidence;
    this.middle = (evidence.from() + evidence.to()) / 2;
    this.half = (evidence.to() - evidence.from()) / 2;
  }

  /** The cells to begin with. */
  List<Cell> first(double least) {
    double reach = evidence.reach();
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
    double aside = byPhase(halfPhase, stretch + halfStretch);
    double turn = halfStretch / stretch;
    double bound = logDensity + log(phase, stretch, aside, turn, least - logDensity);
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
    return log(at.phase(), at.stretch(), 0, 0, Double.NEGATIVE_INFINITY) + Math.log(density * area);
  }

  private boolean isLast(Cell cell) {
    double last = evidence.last(blinks(cell.stretch()));
    return byPhase(cell.halfPhase(), cell.stretch()) <= last
        && byStretch(cell.halfStretch(), cell.stretch()) <= last;
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
   * The sum over the plane, the cells of the highest bound first.
   *
   * @param cells the cells to begin with
   * @param least logarithm of a density that does not matter
   * @param hopeless what lies this far below the sum (natural logarithm) does not matter either
   * @return logarithm of the sum; negative infinity if nothing in it matters
   */
  double logSum(List<Cell> cells, double least, double hopeless) {
    PriorityQueue<Cell> open =
        new PriorityQueue<>(Comparator.comparingDouble(Cell::bound).reversed());
    open.addAll(cells);
    double log = Double.NEGATIVE_INFINITY;
    while (!open.isEmpty()) {
      Cell cell = open.poll();
      double matters = Math.max(least, log - hopeless);
      if (!(cell.bound() > matters)) {
        return log;
      }
      if (isLast(cell)) {
        log = Logs.add(log, within(cell, matters));
      } else {
        open.addAll(cut(cell, matters));
      }
    }
    return log;
  }

  private double step(double stretch) {
    return evidence.step(blinks(stretch));
  }

  /** How many blinks are in the window. */
  private double blinks(double stretch) {
    return Math.max(1, 2 * half / (fold.cycle() * stretch) * fold.blinks());
  }

  /** Logarithm of the sum over a last cell. */
  private double within(Cell cell, double least) {
    double step = step(cell.stretch());
    int phases = Math.max(2, (int) Math.ceil(2 * byPhase(cell.halfPhase(), cell.stretch()) / step));
    int stretches =
        Math.max(2, (int) Math.ceil(2 * cell.halfStretch() * half / cell.stretch() / step));
    double area = 4 * cell.halfPhase() * cell.halfStretch() / phases / stretches;
    double most = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (int i = 0; i < stretches; i++) {
      double stretch = cell.stretch() + ((2.0 * i + 1) / stretches - 1) * cell.halfStretch();
      double density = fold.stretch().density(stretch);
      for (int k = 0; k < phases && density > 0; k++) {
        double phase = cell.phase() + ((2.0 * k + 1) / phases - 1) * cell.halfPhase();
        double log = log(phase, stretch, 0, 0, least);
        if (log > most) {
          sum *= Math.exp(most - log);
          most = log;
        }
        sum += Double.isInfinite(log) ? 0 : density * Math.exp(log - most);
      }
    }
    return sum > 0 ? most + Math.log(sum * area) : Double.NEGATIVE_INFINITY;
  }

  private double log(double phase, double stretch, double aside, double turn, double least) {
    double start = middle - phase * fold.cycle() * stretch;
    return evidence.log(fold, start, stretch, aside, turn, least);
  }
}
