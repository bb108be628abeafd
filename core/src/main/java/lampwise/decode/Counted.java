package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * A blinking rhythm as a person counts it: groups of blinks and the time after which they come
 * again.
 *
 * @param groups the groups of a cycle, in order
 * @param leastSeconds the least the cycle can be, NaN if it is not known
 * @param mostSeconds the most it can be, NaN if it is not known
 * @param once whether it shows once and does not come again
 * @param bare whether it is a rate, or single blinks without anything said of their cycle
 */
record Counted(
    List<Group> groups, double leastSeconds, double mostSeconds, boolean once, boolean bare) {
  /** A steady part of this length or more counts as a long blink. */
  private static final double LONG_SECONDS = 0.5;

  /**
   * Blinks that are close together.
   *
   * @param min how many at least
   * @param max how many at the most
   * @param size long, short, or not said
   */
  record Group(int min, int max, Size size) {}

  /** What a person would count in a rhythm of these trains. */
  static Counted of(Rhythm.Blinking rhythm, List<Train> trains) {
    List<Group> groups = new ArrayList<>();
    if (rhythm.cycle() instanceof Cycle.Rated rated) {
      double least = 1 / rated.rate().mostPerSecond();
      double most = 1 / rated.rate().leastPerSecond();
      return new Counted(List.of(new Group(1, 1, Size.UNSAID)), least, most, false, true);
    }
    Cycle.Parts cycle = (Cycle.Parts) rhythm.cycle();
    for (Part part : cycle.parts()) {
      if (part instanceof Part.Blinks blinks) {
        groups.add(new Group(blinks.count().min(), blinks.count().max(), size(blinks)));
      } else if (part instanceof Part.Lit) {
        groups.add(new Group(1, 1, Size.LONG));
      } else if (part instanceof Part.RatedFor rated) {
        double seconds = rated.length().leastSeconds();
        int count = (int) Math.min(99, Math.ceil(seconds * rated.rate().leastPerSecond()));
        groups.add(new Group(Math.max(1, count), 2 * Math.max(1, count), Size.UNSAID));
      }
    }
    boolean known = cycle.ending() instanceof Ending.Every || complete(cycle);
    double least = Double.NaN;
    double most = Double.NaN;
    for (Train train : trains) {
      if (known && train.repeats()) {
        least = Math.min(Double.isNaN(least) ? 1e9 : least, train.cycleSeconds());
        most = Math.max(Double.isNaN(most) ? 0 : most, train.cycleSeconds());
      }
    }
    boolean once = cycle.ending() instanceof Ending.Once;
    return new Counted(groups, least, most, once, false);
  }

  private static Size size(Part.Blinks blinks) {
    if (blinks.size() != Size.UNSAID || blinks.of().isEmpty()) {
      return blinks.size();
    }
    return blinks.of().get().leastSeconds() >= LONG_SECONDS ? Size.LONG : Size.UNSAID;
  }

  private static boolean complete(Cycle.Parts cycle) {
    return cycle.ending() instanceof Ending.Repeating
        && cycle.parts().get(cycle.parts().size() - 1) instanceof Part.Unlit unlit
        && unlit.length().isPresent();
  }

  /** The middle of the cycle, empty if it is not known. */
  OptionalDouble cycleSeconds() {
    return Double.isNaN(leastSeconds)
        ? OptionalDouble.empty()
        : OptionalDouble.of(0.5 * (leastSeconds + mostSeconds));
  }

  /** All blinks of a cycle. */
  int blinks() {
    return groups.stream().mapToInt(Group::max).sum();
  }
}
