package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Rhythms;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * Rhythms that a sheet does not list but that its unit may well show: those of its codes with other
 * numbers of blinks. A unit uses one timing for all its codes, and a sheet may be incomplete.
 */
final class Variants {
  /** How far a number of blinks is changed. */
  private static final int MOST_CHANGE = 2;

  /** So many blinks a rate shows at the most before it leaves out so many beats. */
  private static final int MOST_BEATS = 5;

  private static final int MOST_LEFT_OUT = 2;

  /** Rates that differ by more than this part are not the same. */
  private static final double ROUNDING = 1e-6;

  private Variants() {}

  /**
   * The rhythms of a state with other numbers of blinks; none unless it {@link #hasNumbers}.
   *
   * @param sheet the sheet; what it lists is left out
   * @param state one of its states
   */
  static List<Rhythm.Blinking> of(CodeSheet sheet, LampState state) {
    List<Rhythm.Blinking> variants = new ArrayList<>();
    if (!hasNumbers(state)) {
      return variants;
    }
    Cycle.Parts cycle = (Cycle.Parts) ((Rhythm.Blinking) state.rhythm()).cycle();
    List<Integer> groups = groups(cycle);
    boolean one = groups.size() == 1;
    int second = one ? 0 : 1;
    for (int a = -MOST_CHANGE; a <= MOST_CHANGE; a++) {
      for (int b = -second; b <= second; b++) {
        boolean near = one || Math.abs(a) <= 1;
        if (near && (a != 0 || b != 0)) {
          changed(cycle, groups, a, b).filter(r -> !isListed(sheet, r)).ifPresent(variants::add);
        }
      }
    }
    return variants;
  }

  /** Whether a state is one group of at least two blinks, or two groups, of known numbers. */
  static boolean hasNumbers(LampState state) {
    if (!(state.rhythm() instanceof Rhythm.Blinking blinking)
        || !blinking.prelude().isEmpty()
        || !(blinking.cycle() instanceof Cycle.Parts cycle)) {
      return false;
    }
    List<Integer> groups = groups(cycle);
    for (int i = 0; i < cycle.parts().size(); i++) {
      if (!groups.contains(i) && !(cycle.parts().get(i) instanceof Part.Unlit)) {
        return false;
      }
    }
    return groups.size() == 2 || (groups.size() == 1 && count(cycle, groups.get(0)) > 1);
  }

  /** Which parts of a cycle are groups of a known number of blinks. */
  private static List<Integer> groups(Cycle.Parts cycle) {
    List<Integer> groups = new ArrayList<>();
    for (int i = 0; i < cycle.parts().size(); i++) {
      if (cycle.parts().get(i) instanceof Part.Blinks blinks
          && blinks.count().min() == blinks.count().max()) {
        groups.add(i);
      }
    }
    return groups;
  }

  /**
   * What a state of a constant rate shows when it leaves out beats: two to five blinks at its rate,
   * then one beat or two without.
   *
   * @param rate the trains of the rate
   * @return the trains of each variant
   */
  static List<List<Train>> leavingOut(List<Train> rate) {
    List<List<Train>> variants = new ArrayList<>();
    for (int count = 2; count <= MOST_BEATS; count++) {
      for (int beats = count + 1; beats <= count + MOST_LEFT_OUT; beats++) {
        List<Train> trains = new ArrayList<>();
        for (Train train : rate) {
          trains.add(leavingOut(train, count, beats));
        }
        variants.add(trains);
      }
    }
    return variants;
  }

  private static Train leavingOut(Train rate, int count, int beats) {
    double[] on = new double[count];
    double[] lengths = new double[count];
    for (int i = 0; i < count; i++) {
      on[i] = i * rate.cycleSeconds();
      lengths[i] = rate.length(rate.first());
    }
    double cycle = beats * rate.cycleSeconds();
    return new Train(on, lengths, 0, cycle, rate.low(), rate.high(), rate.logWeight());
  }

  private static int count(Cycle.Parts cycle, int part) {
    return ((Part.Blinks) cycle.parts().get(part)).count().min();
  }

  /** The cycle with other numbers of blinks; empty where that cannot be. */
  private static Optional<Rhythm.Blinking> changed(
      Cycle.Parts cycle, List<Integer> groups, int first, int second) {
    List<Part> parts = new ArrayList<>(cycle.parts());
    for (int i = 0; i < groups.size(); i++) {
      Part.Blinks blinks = (Part.Blinks) parts.get(groups.get(i));
      int count = blinks.count().min() + (i == 0 ? first : second);
      // Single blinks are rhythms of their own, not variants.
      if (count < (groups.size() == 1 ? 2 : 1) || count > Count.MOST) {
        return Optional.empty();
      }
      parts.set(
          groups.get(i),
          new Part.Blinks(
              Count.of(count),
              blinks.size(),
              blinks.of(),
              count == 1 ? Optional.empty() : blinks.apart()));
    }
    try {
      return Optional.of(new Rhythm.Blinking(List.of(), new Cycle.Parts(parts, cycle.ending())));
    } catch (RhythmException e) {
      return Optional.empty();
    }
  }

  private static boolean isListed(CodeSheet sheet, Rhythm rhythm) {
    double rate = blinksPerSecond(rhythm);
    return sheet.states().stream()
        .map(LampState::rhythm)
        .anyMatch(
            listed ->
                !(Math.abs(blinksPerSecond(listed) - rate) > ROUNDING * rate)
                    && Rhythms.sameLamp(listed, rhythm));
  }

  /** The mean rate, which is the same for the same lamp; NaN where not all it hangs on is said. */
  private static double blinksPerSecond(Rhythm rhythm) {
    if (!(rhythm instanceof Rhythm.Blinking blinking)
        || !blinking.prelude().isEmpty()
        || !(blinking.cycle() instanceof Cycle.Parts cycle)
        || !(cycle.ending() instanceof Ending.Every every)
        || every.cycle().leastSeconds() < every.cycle().mostSeconds()) {
      return Double.NaN;
    }
    int blinks = 0;
    for (Part part : cycle.parts()) {
      if (part instanceof Part.Blinks counted && counted.count().min() == counted.count().max()) {
        blinks += counted.count().min();
      } else if (!(part instanceof Part.Unlit)) {
        return Double.NaN;
      }
    }
    return blinks / every.cycle().leastSeconds();
  }
}
