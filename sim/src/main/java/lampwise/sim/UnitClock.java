package lampwise.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.light.Window;

/**
 * How a unit's clock runs: turns true times into printed ones, which run as the sheet says, and
 * back. Printed time zero is the start of the window.
 */
final class UnitClock {
  private static final double STEP_SECONDS = 60;
  private static final double HOUR_SECONDS = 3600;

  private final double fromSeconds;

  /** The ratio of true to printed durations in each step; the last one goes on for ever. */
  private final double[] ratios;

  /** The printed time at which each step begins. */
  private final double[] printed;

  private UnitClock(double fromSeconds, double[] ratios) {
    this.fromSeconds = fromSeconds;
    this.ratios = ratios;
    this.printed = new double[ratios.length];
    for (int i = 1; i < ratios.length; i++) {
      printed[i] = printed[i - 1] + STEP_SECONDS / ratios[i - 1];
    }
  }

  /** Draws the ratio evenly within the tolerance, and where it wanders each further step of it. */
  static UnitClock drawn(Scene.Clock clock, Window window, Chance chance) {
    double ratio = chance.uniform(1 - clock.tolerance(), 1 + clock.tolerance());
    if (clock.wander() == 0) {
      return new UnitClock(window.fromSeconds(), new double[] {ratio});
    }
    double step = clock.wander() * Math.sqrt(STEP_SECONDS / HOUR_SECONDS);
    int steps = (int) Math.max(1, Math.ceil(window.lengthSeconds() / STEP_SECONDS));
    double[] ratios = new double[steps];
    for (int i = 0; i < steps; i++) {
      ratios[i] = ratio;
      double next = ratio + step * chance.normal();
      ratio = Math.min(1 + clock.tolerance(), Math.max(1 - clock.tolerance(), next));
    }
    return new UnitClock(window.fromSeconds(), ratios);
  }

  /** The printed time at a true time. */
  double printed(double seconds) {
    double since = seconds - fromSeconds;
    int step = (int) Math.max(0, Math.min(ratios.length - 1, Math.floor(since / STEP_SECONDS)));
    return printed[step] + (since - STEP_SECONDS * step) / ratios[step];
  }

  /** The true time at a printed time. */
  double time(double printedSeconds) {
    if (ratios.length == 1) {
      return fromSeconds + printedSeconds * ratios[0];
    }
    int found = Arrays.binarySearch(printed, printedSeconds);
    int step = Math.max(0, found >= 0 ? found : -found - 2);
    double since = (printedSeconds - printed[step]) * ratios[step];
    return fromSeconds + (STEP_SECONDS * step + since);
  }

  /** The ratio at the start of the window and wherever it changes. */
  List<Shown.ClockRate> rates() {
    List<Shown.ClockRate> rates = new ArrayList<>();
    for (int i = 0; i < ratios.length; i++) {
      if (i == 0 || ratios[i] != ratios[i - 1]) {
        rates.add(new Shown.ClockRate(fromSeconds + STEP_SECONDS * i, ratios[i]));
      }
    }
    return rates;
  }
}
