package lampwise.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Window;

/**
 * Blinks that come in bursts, as a person counts them. All borders are chosen.
 *
 * @param cycle the bursts that come in turn, one to three
 * @param everySeconds from the start of the cycle to its next; empty if it was not seen twice
 */
record Bursts(List<List<Run>> cycle, OptionalDouble everySeconds) {
  /** Blinks farther apart than this do not look like one burst. */
  private static final double APART_MOST_SECONDS = 2.5;

  /** A pause is at least this many times as long as the gaps inside a burst. */
  private static final double PAUSE_RATIO = 1.5;

  /** A pause this many times the usual gap leaves no doubt that there are bursts. */
  private static final double CLEAR_RATIO = 2.5;

  /** More blinks than this in one burst are not counted. */
  private static final int COUNTED_MOST = 12;

  private static final int TURNS_MOST = 3;

  /** The share of bursts that must look alike. */
  private static final double ALIKE = 0.66;

  /** The share that must where the bursts are clear: one knows that one missed some blinks. */
  private static final double ALIKE_IF_CLEAR = 0.45;

  /** The share that must fit two or more that come in turn; all, where few were seen. */
  private static final double IN_TURN = 0.8;

  private static final int CLEAR_BURSTS = 3;

  /** The share of times from burst to burst that must be even. */
  private static final double EVEN = 0.6;

  private static final double LONG_LEAST_SECONDS = 0.3;
  private static final double LONG_RATIO = 2;

  /** How long a blink looks beside the others. */
  enum Length {
    PLAIN(""),
    SHORT(" short"),
    LONG(" long");

    private final String word;

    Length(String word) {
      this.word = word;
    }

    /** The word with a blank before it; empty if there is none to say. */
    String word() {
      return word;
    }
  }

  /**
   * Blinks of one size, one after another.
   *
   * @param count how many
   * @param size how long each looks
   */
  record Run(int count, Length size) {}

  private record Burst(List<Run> runs, double seconds, boolean cut) {}

  /** The bursts that a person sees; empty if the blinks do not come in bursts. */
  static Optional<Bursts> in(List<Blink> lights, Window window) {
    double[] starts = lights.stream().mapToDouble(Blink::onSeconds).toArray();
    double[] gaps = Gaps.of(starts);
    double[] sorted = gaps.clone();
    Arrays.sort(sorted);
    double longFrom = longFrom(lights, window);
    for (int i = 0; i < sorted.length && sorted[i] <= APART_MOST_SECONDS; i++) {
      if (i + 1 < sorted.length && sorted[i + 1] > PAUSE_RATIO * sorted[i]) {
        double usual = sorted[i / 2];
        boolean clear = sorted[i + 1] > CLEAR_RATIO * usual;
        double pause = (sorted[i] + sorted[i + 1]) / 2;
        Optional<Bursts> found = turns(bursts(lights, window, pause, longFrom), clear);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return alone(lights, window, sorted, longFrom);
  }

  /** All blinks as one burst, if there is a dark before or after it. */
  private static Optional<Bursts> alone(
      List<Blink> lights, Window window, double[] sorted, double longFrom) {
    int last = sorted.length - 1;
    if (last < 0 || sorted[last] > APART_MOST_SECONDS || lights.size() > COUNTED_MOST) {
      return Optional.empty();
    }
    double before = lights.get(0).onSeconds() - window.fromSeconds();
    double after = window.toSeconds() - lights.get(lights.size() - 1).onSeconds();
    if (!(Math.max(before, after) > CLEAR_RATIO * sorted[last])) {
      return Optional.empty();
    }
    return Optional.of(new Bursts(List.of(runs(lights, longFrom)), OptionalDouble.empty()));
  }

  /** From which length on a blink is a long one beside short ones; infinite if all look alike. */
  private static double longFrom(List<Blink> lights, Window window) {
    double[] lengths =
        lights.stream()
            .filter(light -> whole(light, window))
            .mapToDouble(light -> light.offSeconds() - light.onSeconds())
            .sorted()
            .toArray();
    double from = Double.POSITIVE_INFINITY;
    double widest = LONG_RATIO;
    for (int i = 1; i < lengths.length; i++) {
      double ratio = lengths[i] / lengths[i - 1];
      if (lengths[i] >= LONG_LEAST_SECONDS && ratio >= widest) {
        widest = ratio;
        from = lengths[i];
      }
    }
    return from;
  }

  private static boolean whole(Blink light, Window window) {
    return light.hasOff()
        && light.onSeconds() > window.fromSeconds()
        && light.offSeconds() < window.toSeconds();
  }

  private static List<Burst> bursts(
      List<Blink> lights, Window window, double pause, double longFrom) {
    List<Burst> bursts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= lights.size(); i++) {
      boolean ends = i == lights.size();
      if (ends || lights.get(i).onSeconds() - lights.get(i - 1).onSeconds() > pause) {
        double start = lights.get(from).onSeconds();
        double darkAfter = window.toSeconds() - lights.get(i - 1).onSeconds();
        boolean cutBefore = from == 0 && start - window.fromSeconds() <= pause;
        boolean cut = cutBefore || (ends && darkAfter <= pause);
        bursts.add(new Burst(runs(lights.subList(from, i), longFrom), start, cut));
        from = i;
      }
    }
    return bursts;
  }

  private static List<Run> runs(List<Blink> lights, double longFrom) {
    boolean sized = longFrom < Double.POSITIVE_INFINITY;
    List<Run> runs = new ArrayList<>();
    for (Blink light : lights) {
      boolean isLong = light.hasOff() && light.offSeconds() - light.onSeconds() >= longFrom;
      Length size = !sized ? Length.PLAIN : isLong ? Length.LONG : Length.SHORT;
      int last = runs.size() - 1;
      if (last >= 0 && runs.get(last).size() == size) {
        runs.set(last, new Run(runs.get(last).count() + 1, size));
      } else {
        runs.add(new Run(1, size));
      }
    }
    return runs;
  }

  /** The fewest bursts that come in turn and fit most of those seen. */
  private static Optional<Bursts> turns(List<Burst> seen, boolean clear) {
    // What the window cuts is not counted, if there is anything else.
    int from = seen.size() > 1 && seen.get(0).cut() ? 1 : 0;
    boolean cutAfter = seen.size() - from > 1 && seen.get(seen.size() - 1).cut();
    List<Burst> whole = seen.subList(from, cutAfter ? seen.size() - 1 : seen.size());
    List<Burst> timed = seen.subList(from, seen.size());
    double[] starts = timed.stream().mapToDouble(Burst::seconds).toArray();
    boolean even = starts.length < 3 || Gaps.even(Gaps.of(starts), EVEN).isPresent();
    Optional<Bursts> found = even ? turns(whole, starts, 1, ALIKE) : Optional.empty();
    for (int turns = 2; turns <= TURNS_MOST && found.isEmpty(); turns++) {
      if (whole.size() >= 2 * turns || (whole.size() > turns && turns == 2 && clear)) {
        found = turns(whole, starts, turns, whole.size() >= 3 * turns ? IN_TURN : 1);
      }
    }
    return found.isEmpty() && even && clear && whole.size() >= CLEAR_BURSTS
        ? turns(whole, starts, 1, ALIKE_IF_CLEAR)
        : found;
  }

  private static Optional<Bursts> turns(
      List<Burst> whole, double[] starts, int turns, double share) {
    List<List<Run>> cycle = new ArrayList<>();
    int fitting = 0;
    for (int turn = 0; turn < turns; turn++) {
      List<Run> usual = usual(whole, turn, turns);
      cycle.add(usual);
      for (int i = turn; i < whole.size(); i += turns) {
        fitting += whole.get(i).runs().equals(usual) ? 1 : 0;
      }
    }
    boolean single = cycle.stream().allMatch(runs -> blinks(runs) == 1);
    return fitting >= share * whole.size() && !single && countable(cycle)
        ? Optional.of(new Bursts(turned(cycle, starts), every(starts, turns)))
        : Optional.empty();
  }

  private static int blinks(List<Run> runs) {
    return runs.stream().mapToInt(Run::count).sum();
  }

  private static boolean countable(List<List<Run>> cycle) {
    return cycle.stream().flatMap(List::stream).allMatch(run -> run.count() <= COUNTED_MOST);
  }

  /** What every so many bursts look like mostly; among equals that with more blinks. */
  private static List<Run> usual(List<Burst> bursts, int turn, int turns) {
    List<List<Run>> looks = new ArrayList<>();
    for (int i = turn; i < bursts.size(); i += turns) {
      looks.add(bursts.get(i).runs());
    }
    List<Run> usual = looks.get(0);
    for (List<Run> look : looks) {
      int more = Collections.frequency(looks, look) - Collections.frequency(looks, usual);
      if (more > 0 || (more == 0 && blinks(look) > blinks(usual))) {
        usual = look;
      }
    }
    return usual;
  }

  /** The cycle begun after its longest pause. */
  private static List<List<Run>> turned(List<List<Run>> cycle, double[] starts) {
    int turns = cycle.size();
    double[] gaps = Gaps.of(starts);
    double longest = -1;
    int first = 0;
    for (int turn = 0; turn < turns; turn++) {
      double sum = 0;
      int count = 0;
      for (int i = turn; i < gaps.length; i += turns) {
        sum += gaps[i];
        count++;
      }
      if (count > 0 && sum / count > longest * (1 + 1e-9)) {
        longest = sum / count;
        first = (turn + 1) % turns;
      }
    }
    List<List<Run>> turned = new ArrayList<>(cycle.subList(first, turns));
    turned.addAll(cycle.subList(0, first));
    return turned;
  }

  private static OptionalDouble every(double[] starts, int turns) {
    double[] cycles = new double[Math.max(0, starts.length - turns)];
    for (int i = 0; i < cycles.length; i++) {
      cycles[i] = starts[i + turns] - starts[i];
    }
    return cycles.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Gaps.middle(cycles));
  }
}
