package lampwise.rhythm;

import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Broken.Spot;

/** Whether the parts of a cycle fit the time that {@code every} gives them. */
final class CycleTime {
  /** Sums of decimal numbers are compared to within this fraction. */
  private static final double ROUNDING = 1e-9;

  private CycleTime() {}

  static Optional<Broken> check(Cycle.Parts cycle) {
    if (!(cycle.ending() instanceof Ending.Every every)) {
      return Optional.empty();
    }
    List<Part> parts = cycle.parts();
    double least = 0;
    double most = 0;
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      least += least(part);
      most += most(part);
      Part next = parts.get((i + 1) % parts.size());
      if (isLight(part) && isLight(next)) {
        // The pause between them is not said.
        most = Double.POSITIVE_INFINITY;
      }
    }
    boolean open = isLight(parts.get(0)) && isLight(parts.get(parts.size() - 1));
    double cycleMost = every.cycle().mostSeconds();
    String said = "every " + PhrasePrinter.length(every.cycle());
    boolean tooShort =
        open ? !(least < cycleMost * (1 - ROUNDING)) : !(least <= cycleMost * (1 + ROUNDING));
    if (tooShort) {
      String reason =
          "the parts take at least "
              + Decimals.plain(rounded(least))
              + " s"
              + (open ? " and a pause" : "")
              + ", which does not fit \""
              + said
              + "\"";
      return Optional.of(new Broken(false, 0, Spot.ENDING, reason, ""));
    }
    if (!(most >= every.cycle().leastSeconds() * (1 - ROUNDING))) {
      String reason =
          "the parts take at most "
              + Decimals.plain(rounded(most))
              + " s, and nothing in them could fill \""
              + said
              + "\"";
      return Optional.of(new Broken(false, 0, Spot.ENDING, reason, ""));
    }
    return Optional.empty();
  }

  /** Six decimals for a message, fewer for what is large. */
  private static double rounded(double seconds) {
    return seconds < 1e6 ? Math.rint(seconds * 1e6) / 1e6 : seconds;
  }

  private static boolean isLight(Part part) {
    return !(part instanceof Part.Unlit);
  }

  /** The least time from its first light to its last, or of its dark. */
  private static double least(Part part) {
    if (part instanceof Part.Blinks blinks) {
      double each = blinks.of().map(Length::leastSeconds).orElse(0.0);
      double apart = blinks.apart().map(Length::leastSeconds).orElse(Limits.APART_LEAST_SECONDS);
      double spacing = Math.max(apart, each);
      double shortest = Math.min(Limits.BLINK_LEAST_SECONDS, spacing);
      return (blinks.count().min() - 1) * spacing + (blinks.of().isPresent() ? each : shortest);
    }
    if (part instanceof Part.RatedFor rated) {
      return Math.max(0, rated.length().leastSeconds() - 1 / rated.rate().leastPerSecond());
    }
    return length(part).map(Length::leastSeconds).orElse(0.0);
  }

  /** The most time from its first light to its last, or of its dark. */
  private static double most(Part part) {
    if (part instanceof Part.Blinks blinks) {
      double each = blinks.of().map(Length::mostSeconds).orElse(Limits.BLINK_MOST_SECONDS);
      double unsaid =
          each < Limits.APART_MOST_SECONDS ? Limits.APART_MOST_SECONDS : Double.POSITIVE_INFINITY;
      double apart = blinks.apart().map(Length::mostSeconds).orElse(unsaid);
      int gaps = blinks.count().max() - 1;
      return (gaps == 0 ? 0 : gaps * apart) + each;
    }
    if (part instanceof Part.RatedFor rated) {
      return rated.length().mostSeconds() + 1 / rated.rate().leastPerSecond();
    }
    return length(part).map(Length::mostSeconds).orElse(Double.POSITIVE_INFINITY);
  }

  private static Optional<Length> length(Part part) {
    return part instanceof Part.Lit lit ? lit.length() : ((Part.Unlit) part).length();
  }
}
