package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finer settings of the noise than those that every candidate is looked at with: a grid of timing
 * errors and of how late the first blink of a burst is noted, with pairs of misses and strays at
 * each point, each with its share of one prior.
 */
final class NoiseGrid {
  /** Timing errors in seconds, even in the logarithm; each as common. */
  private static final double[] SD = {0.012, 0.018, 0.027, 0.04, 0.06, 0.09};

  /** A first blink is noted as late as this at the most, seconds. */
  static final double MOST_LATE = 0.15;

  /** How common it is that the first is not late; how late it is else is even. */
  private static final double IN_TIME = 0.25;

  /** Neighbours are no farther apart in how late the first is than so many timing errors. */
  private static final double STEP = 1.5;

  private static final int LEAST_STEPS = 3;

  /** Misses, strays per minute, and how common the pair is: those that go together twice. */
  private static final double[][] PAIRS = {
    {0.004, 0.1, 2},
    {0.03, 0.3, 2},
    {0.1, 1, 2},
    {0.2, 3, 2},
    {0.02, 1, 1},
    {0.05, 3, 1},
    {0.15, 0.5, 1}
  };

  /** How far apart two timings are in the end of a blink, where they are not alike. */
  private static final double OTHER_ENDS = 100;

  /** A point: the row of its timing error, and the settings. */
  private record Point(int row, double step, Timing timing) {
    double late() {
      return timing.any().firstLate();
    }

    boolean endsAs(Timing other) {
      return timing.any().late() == other.any().late();
    }

    boolean isBeside(Point other) {
      double away = Math.abs(late() - other.late());
      double reach = Math.max(step, other.step);
      if (!endsAs(other.timing)) {
        return row == other.row && away == 0;
      }
      return row == other.row
          ? away > 0 && away < 1.5 * reach
          : Math.abs(row - other.row) == 1 && away <= 0.5 * reach;
    }

    double far(Timing other) {
      double sd = Math.abs(Math.log(timing.any().sd() / other.any().sd()));
      double late = Math.abs(late() - other.any().firstLate()) / MOST_LATE;
      return sd + late + (endsAs(other) ? 0 : OTHER_ENDS);
    }
  }

  private final List<Point> points;

  private NoiseGrid(List<Point> points) {
    this.points = List.copyOf(points);
  }

  /** The settings for blinks noted by people. */
  static NoiseGrid ofPeople(double resolutionSeconds, boolean lengths) {
    List<Point> points = new ArrayList<>();
    for (double ends : Noise.ends(lengths)) {
      for (int row = 0; row < SD.length; row++) {
        int steps = Math.max(LEAST_STEPS, (int) Math.round(MOST_LATE / (STEP * SD[row])));
        for (int i = 0; i <= steps; i++) {
          double share = i == 0 ? IN_TIME : (1 - IN_TIME) / steps;
          double late = i * MOST_LATE / steps;
          List<Noise> settings = new ArrayList<>();
          for (double[] pair : PAIRS) {
            settings.add(
                Noise.ofPerson(SD[row], resolutionSeconds, pair[0], pair[1] / 60, ends, late)
                    .times(share * pair[2]));
          }
          points.add(new Point(row, MOST_LATE / steps, Timing.of(settings).get(0)));
        }
      }
    }
    return new NoiseGrid(points);
  }

  /** How many points there are. */
  int size() {
    return points.size();
  }

  /** The settings of a point. */
  Timing timing(int number) {
    return points.get(number).timing();
  }

  /** How common all settings are together. */
  double weight() {
    return points.stream().mapToDouble(point -> point.timing().weight()).sum();
  }

  /** The point that is most like a timing. */
  int nearest(Timing timing) {
    int nearest = 0;
    for (int i = 1; i < points.size(); i++) {
      nearest = points.get(i).far(timing) < points.get(nearest).far(timing) ? i : nearest;
    }
    return nearest;
  }

  /** The points beside one. */
  List<Integer> beside(int number) {
    Point here = points.get(number);
    return IntStream.range(0, points.size())
        .filter(other -> here.isBeside(points.get(other)))
        .boxed()
        .toList();
  }
}
