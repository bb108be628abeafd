package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Length;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;

/**
 * Whether drawn pulses are what parts say, by laying the parts over the pulses in every way that
 * their counts allow.
 */
final class Said {
  private static final double ROUNDING = 1e-7;

  private final List<Part> parts;
  private final List<DrawnRhythm.Pulse> pulses;
  private final double endSeconds;
  private final boolean once;

  private Said(List<Part> parts, List<DrawnRhythm.Pulse> pulses, double endSeconds, boolean once) {
    this.parts = parts;
    this.pulses = pulses;
    this.endSeconds = endSeconds;
    this.once = once;
  }

  /**
   * Whether they are.
   *
   * @param endSeconds where the parts end, from the start of the first
   * @param once whether dark before the first light and after the last does not count
   */
  static boolean holds(
      List<Part> parts, List<DrawnRhythm.Pulse> pulses, double endSeconds, boolean once) {
    return new Said(parts, pulses, endSeconds, once).from(0, 0, 0);
  }

  private boolean from(int part, int pulse, double end) {
    if (part == parts.size()) {
      return pulse == pulses.size();
    }
    Part next = parts.get(part);
    if (next instanceof Part.Unlit unlit) {
      double until = pulse < pulses.size() ? pulses.get(pulse).onSeconds() : endSeconds;
      boolean outside = pulse == 0 || pulse == pulses.size();
      return ((once && outside) || within(until - end, unlit.length()))
          && from(part + 1, pulse, end);
    }
    for (int count : counts(next, pulse)) {
      if (pulse + count <= pulses.size()) {
        List<DrawnRhythm.Pulse> own = pulses.subList(pulse, pulse + count);
        DrawnRhythm.Pulse last = own.get(count - 1);
        double after = last.onSeconds() + last.lengthSeconds();
        if (fits(next, own) && from(part + 1, pulse + count, after)) {
          return true;
        }
      }
    }
    return false;
  }

  private List<Integer> counts(Part part, int pulse) {
    List<Integer> counts = new ArrayList<>();
    if (part instanceof Part.Blinks blinks) {
      for (int count = blinks.count().min(); count <= blinks.count().max(); count++) {
        counts.add(count);
      }
    } else if (part instanceof Part.Lit) {
      counts.add(1);
    } else {
      for (int count = 1; count <= pulses.size() - pulse; count++) {
        counts.add(count);
      }
    }
    return counts;
  }

  private static boolean fits(Part part, List<DrawnRhythm.Pulse> own) {
    double length = own.get(0).lengthSeconds();
    double spacing = own.size() > 1 ? own.get(1).onSeconds() - own.get(0).onSeconds() : 0;
    for (int i = 0; i < own.size(); i++) {
      boolean inStep = i == 0 || near(own.get(i).onSeconds() - own.get(i - 1).onSeconds(), spacing);
      if (!inStep || !near(own.get(i).lengthSeconds(), length)) {
        return false;
      }
    }
    if (part instanceof Part.Lit lit) {
      return within(length, lit.length());
    }
    if (part instanceof Part.RatedFor rated) {
      return rated(rated, own.size(), spacing);
    }
    Part.Blinks blinks = (Part.Blinks) part;
    boolean unsaid = blinks.apart().isEmpty();
    return within(length, blinks.of())
        && (own.size() == 1
            || (unsaid
                ? spacing >= Limits.APART_LEAST_SECONDS - ROUNDING
                : within(spacing, blinks.apart())));
  }

  /** All that begin before the time is over, the first at once. */
  private static boolean rated(Part.RatedFor rated, int count, double spacing) {
    Rate rate = rated.rate();
    if (count == 1) {
      return rated.length().leastSeconds() <= 1 / rate.leastPerSecond() + ROUNDING;
    }
    return spacing >= 1 / rate.mostPerSecond() - ROUNDING
        && spacing <= 1 / rate.leastPerSecond() + ROUNDING
        && rated.length().leastSeconds() <= count * spacing + ROUNDING * count
        && rated.length().mostSeconds() >= (count - 1) * spacing - ROUNDING * count;
  }

  static boolean within(double seconds, Optional<Length> length) {
    return length.isEmpty() || within(seconds, length.get());
  }

  static boolean within(double seconds, Length length) {
    return seconds >= length.leastSeconds() - ROUNDING
        && seconds <= length.mostSeconds() + ROUNDING;
  }

  private static boolean near(double a, double b) {
    return Math.abs(a - b) <= ROUNDING;
  }
}
