package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;

/**
 * From when on somebody who watches a lamp can tell that it is not in another state: when a blink
 * comes, fails to come or lasts as it could not in that state, whatever its phase and its clock
 * within the sheet's tolerance.
 *
 * @param sheet the sheet, for the clock's tolerance and the length of a blink
 * @param horizonSeconds what is not told by then is not told by watching
 */
record DrillApart(CodeSheet sheet, double horizonSeconds) {
  /** Two times that differ by this much more are noticed: common practice, no source. */
  static final double NOTICED_SECONDS = 0.2;

  /** Two lengths of a blink that differ by this share of the longer are noticed (chosen). */
  private static final double NOTICED_SHARE = 0.35;

  private static final int CLOCKS = 11;
  private static final int DRAWS = 5;

  /**
   * When it is plain that the lamp is not in another state.
   *
   * @param seen what the lamp showed from 0 on, to the horizon
   * @param other the other state, whose lamp would be seen all the time
   * @param cycleSeconds the cycle of what was seen; infinite if nothing repeats. A clock on which
   *     the other's cycle fits into it is tried besides the evenly spaced ones
   * @param begins whether the other's rhythm would have begun within the time, not before
   * @return seconds; infinite if it never is
   */
  double seconds(List<Blink> seen, double cycleSeconds, LampState other, boolean begins) {
    double latest = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      DrawnRhythm rhythm =
          DrawnRhythm.of(other.rhythm(), sheet.blinkSeconds(), Chance.of(draw).branch("apart"));
      for (double ratio : clocks(cycleSeconds / rhythm.cycleSeconds())) {
        DrillLight light = new DrillLight(other, DrillLight.onClock(rhythm, ratio), 0, 0);
        latest = Math.max(latest, begins ? begun(seen, light) : running(seen, light));
      }
    }
    return latest;
  }

  private List<Double> clocks(double cycles) {
    List<Double> ratios = new ArrayList<>();
    double tolerance = sheet.clockTolerance();
    for (int i = 0; i < CLOCKS; i++) {
      ratios.add(1 + tolerance * (2.0 * i / (CLOCKS - 1) - 1));
    }
    for (double times : List.of(1 / 3.0, 0.5, 1.0, 2.0, 3.0)) {
      if (Math.abs(cycles * times - 1) <= tolerance) {
        ratios.add(cycles * times);
      }
    }
    return ratios;
  }

  /** The same for a lamp whose rhythm begins with its first blink. */
  private double begun(List<Blink> seen, DrillLight other) {
    List<Blink> blinks = other.started(0, 0, horizonSeconds * 2);
    if (seen.isEmpty() || blinks.isEmpty()) {
      return seen.isEmpty() && blinks.isEmpty() ? Double.POSITIVE_INFINITY : 0;
    }
    double shift = seen.get(0).onSeconds() - blinks.get(0).onSeconds();
    return differ(seen, shifted(blinks, shift), 0);
  }

  /** The same for a lamp that has long been running. */
  private double running(List<Blink> seen, DrillLight other) {
    double cycle = other.rhythm().cycleSeconds();
    double span = Double.isInfinite(cycle) ? 0 : cycle;
    List<Blink> whole = seen.stream().filter(blink -> blink.onSeconds() > 0).toList();
    double first = whole.isEmpty() ? 0 : whole.get(0).onSeconds();
    List<Blink> blinks = other.running(-Math.max(first, 2 * span) - 1, horizonSeconds + span);
    if (whole.isEmpty()) {
      return seen.isEmpty() ? longestDark(blinks) : longestLight(blinks);
    }
    double latest = 0;
    for (Blink blink : blinks) {
      // Each blink of one cycle may be the one that was seen first.
      if (blink.onSeconds() >= 0 && blink.onSeconds() <= span) {
        List<Blink> lying = shifted(blinks, first - blink.onSeconds());
        latest = Math.max(latest, differ(whole, lying, first));
      }
    }
    return latest;
  }

  private static List<Blink> shifted(List<Blink> blinks, double seconds) {
    return blinks.stream()
        .map(blink -> new Blink(blink.onSeconds() + seconds, blink.offSeconds() + seconds))
        .toList();
  }

  /** When two trains differ that agree in a blink at one moment. */
  private double differ(List<Blink> seen, List<Blink> other, double meeting) {
    List<Blink> expected = new ArrayList<>();
    for (Blink blink : other) {
      if (blink.onSeconds() > 0 && blink.onSeconds() < meeting - NOTICED_SECONDS) {
        // It would have been seen before.
        return meeting;
      }
      if (blink.onSeconds() >= meeting - NOTICED_SECONDS) {
        expected.add(blink);
      }
    }
    for (int i = 0; ; i++) {
      double one = i < seen.size() ? seen.get(i).onSeconds() : Double.POSITIVE_INFINITY;
      double two = i < expected.size() ? expected.get(i).onSeconds() : Double.POSITIVE_INFINITY;
      double earlier = Math.min(one, two);
      if (!(earlier < horizonSeconds)) {
        return Double.POSITIVE_INFINITY;
      }
      if (Math.abs(one - two) > NOTICED_SECONDS) {
        return earlier + NOTICED_SECONDS;
      }
      double length = seen.get(i).offSeconds() - one;
      double would = expected.get(i).offSeconds() - two;
      double least = Math.max(NOTICED_SECONDS, NOTICED_SHARE * Math.max(length, would));
      if (Math.abs(length - would) > least) {
        return earlier + Math.min(length, would) + NOTICED_SECONDS;
      }
    }
  }

  /** The longest that a lamp stays dark, and a little; infinite if it is never lit. */
  private double longestDark(List<Blink> blinks) {
    double longest = 0;
    for (int i = 1; i < blinks.size(); i++) {
      longest = Math.max(longest, blinks.get(i).onSeconds() - blinks.get(i - 1).offSeconds());
    }
    return blinks.isEmpty() || longest >= horizonSeconds
        ? Double.POSITIVE_INFINITY
        : longest + NOTICED_SECONDS;
  }

  /** The longest that a lamp stays lit, and a little. */
  private double longestLight(List<Blink> blinks) {
    double longest = 0;
    for (Blink blink : blinks) {
      longest = Math.max(longest, blink.offSeconds() - blink.onSeconds());
    }
    return longest >= horizonSeconds ? Double.POSITIVE_INFINITY : longest + NOTICED_SECONDS;
  }
}
