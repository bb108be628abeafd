package lampwise.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A level that changes in straight ramps: the sum of any number of them. */
final class Slopes {
  private record Bend(double atSeconds, double slope, int opens) {}

  private final double[] at;
  private final double[] level;
  private final double[] slope;

  /** The piece in which the last average began. */
  private int piece;

  private Slopes(double[] at, double[] level, double[] slope) {
    this.at = at;
    this.level = level;
    this.slope = slope;
  }

  /** Collects ramps. */
  static final class Builder {
    private final List<Bend> bends = new ArrayList<>();
    private double start;

    Builder(double start) {
      this.start = start;
    }

    /** Moves the level by so much, evenly from one time to a later one. */
    Builder ramp(double fromSeconds, double toSeconds, double by) {
      double slope = by / (toSeconds - fromSeconds);
      bends.add(new Bend(fromSeconds, slope, 1));
      bends.add(new Bend(toSeconds, -slope, -1));
      return this;
    }

    /** Moves the level before every ramp. */
    Builder lift(double by) {
      start += by;
      return this;
    }

    Slopes build() {
      bends.sort(Comparator.comparingDouble(Bend::atSeconds));
      int size = bends.size() + 1;
      double[] at = new double[size];
      double[] level = new double[size];
      double[] slope = new double[size];
      at[0] = bends.isEmpty() ? 0 : bends.get(0).atSeconds();
      level[0] = start;
      int open = 0;
      for (int i = 1; i < size; i++) {
        Bend bend = bends.get(i - 1);
        at[i] = bend.atSeconds();
        level[i] = level[i - 1] + slope[i - 1] * (at[i] - at[i - 1]);
        open += bend.opens();
        // Exactly level again where no ramp is left, however many there were.
        slope[i] = open == 0 ? 0 : slope[i - 1] + bend.slope();
      }
      return new Slopes(at, level, slope);
    }
  }

  /**
   * The mean between two times, exactly; the first must not be before that of the call before.
   *
   * @param from the first time
   * @param to the second, after the first
   * @return the mean level
   */
  double mean(double from, double to) {
    while (piece + 1 < at.length && at[piece + 1] <= from) {
      piece++;
    }
    if (piece + 1 == at.length || at[piece + 1] >= to) {
      return in(piece, (from + to) / 2);
    }
    double sum = 0;
    double start = from;
    for (int i = piece; start < to; i++) {
      double end = i + 1 < at.length ? Math.min(to, at[i + 1]) : to;
      sum += in(i, (start + end) / 2) * (end - start);
      start = end;
    }
    return sum / (to - from);
  }

  private double in(int index, double seconds) {
    return level[index] + slope[index] * (seconds - at[index]);
  }
}
