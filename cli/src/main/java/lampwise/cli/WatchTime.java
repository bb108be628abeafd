package lampwise.cli;

import java.util.List;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * How long to watch a lamp at rest, by a rule of thumb (chosen): three cycles of the sheet's
 * slowest state.
 */
final class WatchTime {
  /** The least time, seconds; also that of a sheet in which nothing repeats. */
  static final int LEAST_SECONDS = 30;

  /** The most time, seconds: longer nobody watches well. */
  static final int MOST_SECONDS = 180;

  private static final int CYCLES = 3;

  private WatchTime() {}

  /** Whole seconds, {@value #LEAST_SECONDS} to {@value #MOST_SECONDS}, for the slowest clock. */
  static int seconds(CodeSheet sheet) {
    double longest = LEAST_SECONDS;
    for (LampState state : sheet.states()) {
      longest = Math.max(longest, seconds(state.rhythm()) * (1 + sheet.clockTolerance()));
    }
    return (int) Math.min(MOST_SECONDS, Math.ceil(longest));
  }

  /** What comes once and three cycles, as long as they may last; zero where nothing repeats. */
  private static double seconds(Rhythm rhythm) {
    if (!(rhythm instanceof Rhythm.Blinking blinking)) {
      return 0;
    }
    double once = 0;
    for (Part part : blinking.prelude()) {
      once += seconds(part);
    }
    return Math.min(once, Limits.CYCLE_MOST_SECONDS) + CYCLES * cycleSeconds(blinking.cycle());
  }

  private static double cycleSeconds(Cycle cycle) {
    if (cycle instanceof Cycle.Rated rated) {
      return 1 / rated.rate().leastPerSecond();
    }
    Cycle.Parts parts = (Cycle.Parts) cycle;
    if (parts.ending() instanceof Ending.Every every) {
      return most(every.cycle());
    }
    return parts.ending() instanceof Ending.Once ? 0 : sum(parts.parts());
  }

  /** The length of parts that leave nothing open; else the longest that a cycle can be. */
  private static double sum(List<Part> parts) {
    double sum = 0;
    boolean open = false;
    for (int i = 0; i < parts.size(); i++) {
      sum += seconds(parts.get(i));
      // The pause between two lights is not said.
      open |= isLight(parts.get(i)) && isLight(parts.get((i + 1) % parts.size()));
    }
    return open || sum == Double.POSITIVE_INFINITY ? Limits.CYCLE_MOST_SECONDS : sum;
  }

  private static boolean isLight(Part part) {
    return !(part instanceof Part.Unlit);
  }

  /** As long as a part may last; infinite if it does not say. */
  private static double seconds(Part part) {
    if (part instanceof Part.Blinks blinks) {
      double each = blinks.of().map(Length::mostSeconds).orElse(Limits.BLINK_MOST_SECONDS);
      double apart = blinks.apart().map(Length::mostSeconds).orElse(Limits.APART_MOST_SECONDS);
      int gaps = blinks.count().max() - 1;
      return each + (gaps == 0 ? 0 : gaps * apart);
    }
    if (part instanceof Part.RatedFor rated) {
      return rated.length().mostSeconds();
    }
    return (part instanceof Part.Lit lit ? lit.length() : ((Part.Unlit) part).length())
        .map(Length::mostSeconds)
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static double most(Length length) {
    return length.mostSeconds() < Double.POSITIVE_INFINITY
        ? length.mostSeconds()
        : Math.max(length.leastSeconds(), Limits.CYCLE_MOST_SECONDS);
  }
}
