package lampwise.sim.score;

import java.util.Arrays;
import java.util.Optional;
import lampwise.sim.Chance;

/**
 * Guesses which points of a form may fit taps: taps that follow each other are given to one cycle,
 * some left out by chance, and the durations are fitted to them by least squares, to more and more
 * cycles around. A guess only says where to look; nothing hangs on its being right.
 */
final class FreeGuess {
  /** A blink is passed over, or a tap, so often. */
  private static final double PASSED_OVER = 0.1;

  /** How many cycles to either side are fitted, one after the other. */
  private static final int[] REACHES = {1, 4, 16, 64, 1000};

  /** A tap may belong to a blink that is this many deviations away. */
  private static final double GATE = 5;

  /** Spread of a start that the taps do not tell, as a part of the cycle. */
  private static final double START_UNKNOWN = 0.3;

  /** Where fewer of the blinks have a tap it is not worth to go on. */
  private static final double LEAST_GIVEN = 0.5;

  private static final double LEAST_SECONDS = 0.02;

  private final Sighting sighting;
  private final double[] taps;
  private final double window;
  private final double sd;
  private final double late;
  private final double dark;

  /**
   * Gets ready.
   *
   * @param late how much later the first blink of a burst is noted
   * @param dark the time between the beginnings of two blinks after which the later is noted late
   */
  FreeGuess(Sighting sighting, double late, double dark) {
    this.sighting = sighting;
    this.taps = sighting.fromMiddle();
    this.window = sighting.to() - sighting.from();
    this.sd = sighting.sd();
    this.late = late;
    this.dark = dark;
  }

  /**
   * A point that may fit.
   *
   * @param point the point
   * @param peak a peak there
   * @param log about the logarithm of the taps' density there
   */
  @SuppressWarnings("ArrayRecordComponent") // Inner loops; nobody outside the package sees it.
  record Guess(double[] point, FreePeak peak, double log) {}

  /** A guess; empty if none was found. */
  Optional<Guess> guess(int number, FreeForm form, Chance chance) {
    return point(form, chance).map(point -> at(number, form, point));
  }

  private Optional<double[]> point(FreeForm form, Chance chance) {
    double[] point = form.draw(window, chance);
    if (point.length == 0) {
      return Optional.empty();
    }
    if (taps.length > 0) {
      Sums sums = new Sums(form, point);
      int tap = chance.below(taps.length);
      int begin = form.repeats() ? chance.below(form.blinks()) : 0;
      sums.startAt(taps[tap] - form.on(point, begin));
      sums.add(begin, 0, tap);
      int steps = form.repeats() ? form.blinks() : form.blinks() - 1;
      for (int i = begin + 1; i <= begin + steps; i++) {
        double which = chance.uniform();
        if (which >= PASSED_OVER) {
          tap += which < 2 * PASSED_OVER ? 2 : 1;
          if (tap >= taps.length) {
            break;
          }
          sums.add(i % form.blinks(), i / form.blinks(), tap);
        }
      }
      point = sums.solved();
      for (int reach : REACHES) {
        if (!isPossible(point)) {
          return Optional.empty();
        }
        Sums near = matched(form, point, -reach, reach);
        if (near.given < LEAST_GIVEN * near.blinks) {
          return Optional.empty();
        }
        point = near.solved();
        if (reach * form.cycle(point) > window) {
          break;
        }
      }
    }
    if (!isPossible(point)) {
      return Optional.empty();
    }
    if (form.repeats()) {
      point[0] -= Math.ceil(point[0] / form.cycle(point)) * form.cycle(point);
    }
    return Optional.of(point);
  }

  private static boolean isPossible(double[] point) {
    boolean possible = true;
    for (int i = 1; i < point.length; i++) {
      possible &= point[i] > LEAST_SECONDS;
    }
    return possible;
  }

  /** A point as a guess: its peak is as wide as the taps near its blinks leave it. */
  Guess at(int number, FreeForm form, double[] point) {
    int most = REACHES[REACHES.length - 1];
    Sums sums = matched(form, point, -most, most);
    double[][] precision = sums.matrix;
    for (int i = 0; i < point.length; i++) {
      for (int k = 0; k < point.length; k++) {
        precision[i][k] *= (i == 0 ? 1 : point[i]) * (k == 0 ? 1 : point[k]);
      }
    }
    return new Guess(
        point,
        new FreePeak(number, form, point, precision),
        sighting.logAbout(sums.blinks, sums.given, sums.squares));
  }

  /** Gives the taps to the blinks of these cycles that are near them. */
  private Sums matched(FreeForm form, double[] point, int from, int to) {
    Sums sums = new Sums(form, point);
    double cycle = form.cycle(point);
    int first = form.repeats() ? (int) Math.floor((-window / 2 - point[0]) / cycle) - 1 : 0;
    int last = form.repeats() ? (int) Math.ceil((window / 2 - point[0]) / cycle) : 0;
    for (int n = Math.max(first, from); n <= Math.min(last, to); n++) {
      for (int i = 0; i < form.blinks(); i++) {
        double at = point[0] + n * (form.repeats() ? cycle : 0) + form.on(point, i);
        int tap = nearest(at + sums.late(i));
        sums.blinks += Math.abs(at) <= window / 2 ? 1 : 0;
        double off = tap < 0 ? sums.gate : Math.abs(taps[tap] - at - sums.late(i));
        if (off < sums.gate) {
          sums.add(i, n, tap);
          sums.given++;
          sums.squares += off * off;
        }
      }
    }
    return sums;
  }

  /** The tap nearest to a time; -1 without any. */
  private int nearest(double at) {
    int next = Arrays.binarySearch(taps, at);
    next = next < 0 ? -next - 1 : next;
    boolean before = next > 0 && (next == taps.length || at - taps[next - 1] < taps[next] - at);
    return before ? next - 1 : next < taps.length ? next : -1;
  }

  /** The sums of least squares for a form, near a point. */
  private final class Sums {
    private final FreeForm form;
    private final double[] gaps;
    private final double[][] matrix;
    private final double[] values;
    private final double gate;
    private int blinks;
    private int given;
    private double squares;

    Sums(FreeForm form, double[] point) {
      this.form = form;
      this.gaps = new double[form.blinks()];
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < gaps.length; i++) {
        gaps[i] =
            i > 0
                ? form.on(point, i) - form.on(point, i - 1)
                : form.cycle(point) - form.on(point, gaps.length - 1);
        least = Math.min(least, gaps[i]);
      }
      this.gate = Math.max(1.5 * sd, Math.min(GATE * sd, 0.45 * least));
      this.matrix = new double[point.length][point.length];
      this.values = new double[point.length];
      for (int i = 0; i < point.length; i++) {
        double spread =
            i > 0
                ? form.spread() * point[i]
                : START_UNKNOWN * (form.repeats() ? form.cycle(point) : window);
        matrix[i][i] = 1 / (spread * spread);
        values[i] = point[i] * matrix[i][i];
      }
    }

    /** Takes another start for the likeliest. */
    void startAt(double seconds) {
      values[0] = seconds * matrix[0][0];
    }

    double late(int blink) {
      return gaps[blink] > dark ? late : 0;
    }

    void add(int blink, int cycle, int tap) {
      double at = taps[tap] - late(blink);
      for (int i = 0; i < values.length; i++) {
        double part = form.part(blink, cycle, i) / (sd * sd);
        values[i] += part * at;
        for (int k = 0; k < values.length; k++) {
          matrix[i][k] += part * form.part(blink, cycle, k);
        }
      }
    }

    double[] solved() {
      return Squares.solve(matrix, values);
    }
  }
}
