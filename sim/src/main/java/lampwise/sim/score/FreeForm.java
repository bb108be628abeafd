package lampwise.sim.score;

import java.util.Arrays;
import java.util.Optional;
import lampwise.rhythm.Limits;
import lampwise.sim.Chance;

/**
 * One form of rhythm that nobody lists: so many blinks, laid out by a few durations of which only a
 * broad prior is known. A point is the start of a cycle, from the middle of the window, and then
 * the durations, in seconds; the start is the last one at or before the middle.
 *
 * <p>Spacings are even in the logarithm between 0.12 and 3 s, pauses between 1.5 and 8 times the
 * largest spacing inside the groups; a cycle is long enough for its blinks and a closing pause of
 * 1.5 times the longest of these; its start is even over it.
 */
final class FreeForm {
  private static final double LOG_SPACINGS =
      Math.log(Limits.APART_MOST_SECONDS / Limits.APART_LEAST_SECONDS);
  private static final double PAUSE_LEAST = Limits.PAUSE_RATIO_LEAST;
  private static final double PAUSE_MOST = 8;
  private static final double SINGLE_LEAST = 0.1;

  /** A show that does not repeat begins in so many seconds up to the window's end, or in it. */
  private static final double ONCE_SECONDS = 60;

  /** Stands for a cycle without an end. */
  private static final double NEVER_AGAIN = 1e6;

  private enum Role {
    SPACING,
    PAUSE,
    CYCLE
  }

  private final Role[] roles;

  /** How often each duration goes into the beginning of each blink. */
  private final double[][] on;

  /** Whole spacings of a cycle; 0 where a cycle is a duration of its own. */
  private final int beats;

  /** A rhythm of which nothing but the stretch is open; empty where more is. */
  private final Optional<Fold> known;

  private FreeForm(Role[] roles, double[][] on, int beats, Optional<Fold> known) {
    this.roles = roles;
    this.on = on;
    this.beats = beats;
    this.known = known;
  }

  private static FreeForm of(Role[] roles, double[][] on) {
    return new FreeForm(roles, on, 0, Optional.empty());
  }

  /** A rhythm that is known but for its stretch, which is spread as it says. */
  static FreeForm known(Fold fold) {
    double[][] on = new double[fold.blinks()][1];
    for (int i = 0; i < on.length; i++) {
      on[i][0] = (fold.on(i) - fold.on(0)) / fold.cycle();
    }
    return new FreeForm(new Role[] {Role.CYCLE}, on, 0, Optional.of(fold));
  }

  /** One group of blinks, each as far from the next; single blinks if it is one. */
  static FreeForm even(int blinks) {
    if (blinks == 1) {
      return of(new Role[] {Role.CYCLE}, new double[1][1]);
    }
    double[][] on = new double[blinks][2];
    for (int i = 0; i < blinks; i++) {
      on[i][0] = i;
    }
    return of(new Role[] {Role.SPACING, Role.CYCLE}, on);
  }

  /** Blinks at a constant rate that leaves out some: the cycle is a whole number of spacings. */
  static FreeForm onBeat(int blinks, int leftOut) {
    double[][] on = new double[blinks][1];
    for (int i = 0; i < blinks; i++) {
      on[i][0] = (double) i / (blinks + leftOut);
    }
    return new FreeForm(new Role[] {Role.CYCLE}, on, blinks + leftOut, Optional.empty());
  }

  /** Two groups of blinks, with one spacing for both or one for each. */
  static FreeForm twoGroups(int first, int second, boolean shared) {
    Role[] roles =
        shared
            ? new Role[] {Role.SPACING, Role.PAUSE, Role.CYCLE}
            : new Role[] {Role.SPACING, Role.SPACING, Role.PAUSE, Role.CYCLE};
    double[][] on = new double[first + second][roles.length];
    for (int i = 1; i < on.length; i++) {
      on[i] = on[i - 1].clone();
      on[i][i < first ? 0 : i == first ? roles.length - 2 : shared ? 0 : 1]++;
    }
    return of(roles, on);
  }

  /** Blinks that show once and never again, every spacing another. */
  static FreeForm once(int blinks) {
    Role[] roles = new Role[blinks - 1];
    Arrays.fill(roles, Role.SPACING);
    double[][] on = new double[blinks][roles.length];
    for (int i = 1; i < blinks; i++) {
      on[i] = on[i - 1].clone();
      on[i][i - 1]++;
    }
    return of(roles, on);
  }

  int blinks() {
    return on.length;
  }

  /** How many numbers a point has. */
  int size() {
    return 1 + roles.length;
  }

  boolean repeats() {
    return roles.length > 0 && roles[roles.length - 1] == Role.CYCLE;
  }

  /** How often the number {@code i} of a point goes into a blink of a cycle, counted from 0. */
  double part(int blink, int cycle, int i) {
    return i == 0 ? 1 : on[blink][i - 1] + (roles[i - 1] == Role.CYCLE ? cycle : 0);
  }

  /** When a blink begins, from the start of its cycle. */
  double on(double[] point, int blink) {
    double sum = 0;
    for (int i = 0; i < roles.length; i++) {
      sum += on[blink][i] * point[i + 1];
    }
    return sum;
  }

  /** From one cycle to the next; a time longer than any window for what shows once. */
  double cycle(double[] point) {
    return repeats() ? point[point.length - 1] : NEVER_AGAIN;
  }

  /** The rhythm of a point. */
  Fold fold(double[] point, double blinkSeconds) {
    double[] begins = new double[on.length];
    double[] ends = new double[on.length];
    for (int i = 0; i < begins.length; i++) {
      begins[i] = on(point, i);
    }
    for (int i = 0; i < ends.length; i++) {
      double next = i + 1 < ends.length ? begins[i + 1] : cycle(point);
      ends[i] = begins[i] + Math.min(blinkSeconds, (next - begins[i]) / 2);
    }
    return new Fold(begins, ends, cycle(point), new Fold.Stretch(1, 1, 0, 0));
  }

  private static double longest(double[] point, int before) {
    double longest = 0;
    for (int i = 1; i <= before; i++) {
      longest = Math.max(longest, point[i]);
    }
    return longest;
  }

  private FreeCycle cycles(double[] point) {
    if (beats > 0) {
      return new FreeCycle(Limits.APART_LEAST_SECONDS * beats, Limits.APART_MOST_SECONDS * beats);
    }
    double last = on(point, on.length - 1);
    double least =
        on.length == 1 ? SINGLE_LEAST : last + PAUSE_LEAST * longest(point, roles.length - 1);
    return new FreeCycle(least, Limits.CYCLE_MOST_SECONDS);
  }

  private double logCycle(double[] point) {
    double cycle = cycle(point);
    if (known.isEmpty()) {
      return cycles(point).logDensity(cycle);
    }
    Fold fold = known.get();
    double stretch = cycle / fold.cycle();
    boolean within = stretch >= fold.stretch().least() && stretch <= fold.stretch().most();
    return within
        ? Math.log(fold.stretch().density(stretch) / fold.cycle())
        : Double.NEGATIVE_INFINITY;
  }

  /** About how far off a duration of a form may be before anything is seen, as a part of it. */
  double spread() {
    double most = known.map(fold -> fold.stretch().most() / fold.stretch().least()).orElse(3.0);
    return Math.min(0.5, Math.log(most) / 2);
  }

  /** Whether all but the stretch is known. */
  boolean isKnown() {
    return known.isPresent();
  }

  /** A show that does not repeat begins at one of so many seconds. */
  private static double starts(double window) {
    return Math.max(ONCE_SECONDS, window);
  }

  /** A point drawn from the prior; empty where its blinks leave no room for a cycle. */
  double[] draw(double window, Chance chance) {
    double[] point = new double[size()];
    for (int i = 1; i < point.length; i++) {
      switch (roles[i - 1]) {
        case SPACING ->
            point[i] = chance.logUniform(Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS);
        case PAUSE -> point[i] = longest(point, i - 1) * chance.logUniform(PAUSE_LEAST, PAUSE_MOST);
        case CYCLE -> {
          if (known.isPresent()) {
            point[i] = known.get().cycle() * known.get().stretch().draw(chance);
            continue;
          }
          FreeCycle cycles = cycles(point);
          if (!cycles.isPossible()) {
            return new double[0];
          }
          point[i] = cycles.draw(chance);
        }
      }
    }
    point[0] =
        repeats()
            ? -chance.uniform() * cycle(point)
            : window / 2 - chance.uniform() * starts(window);
    return point;
  }

  /** Logarithm of the prior density at a point; negative infinity where it cannot be. */
  double logPrior(double[] point, double window) {
    double log = 0;
    for (int i = 1; i < point.length; i++) {
      double value = point[i];
      switch (roles[i - 1]) {
        case SPACING -> {
          if (!(value >= Limits.APART_LEAST_SECONDS && value <= Limits.APART_MOST_SECONDS)) {
            return Double.NEGATIVE_INFINITY;
          }
          log -= Math.log(value * LOG_SPACINGS);
        }
        case PAUSE -> {
          double ratio = value / longest(point, i - 1);
          if (!(ratio >= PAUSE_LEAST && ratio <= PAUSE_MOST)) {
            return Double.NEGATIVE_INFINITY;
          }
          log -= Math.log(value * Math.log(PAUSE_MOST / PAUSE_LEAST));
        }
        case CYCLE -> log += logCycle(point);
      }
    }
    double least = repeats() ? -cycle(point) : window / 2 - starts(window);
    boolean within = point[0] > least && point[0] <= (repeats() ? 0 : window / 2);
    return within
        ? log - Math.log(repeats() ? cycle(point) : starts(window))
        : Double.NEGATIVE_INFINITY;
  }
}
