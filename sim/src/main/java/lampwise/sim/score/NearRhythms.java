package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Rhythms;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * Rhythms that a sheet might well list: its codes of known numbers with other numbers of blinks (a
 * group of several with up to two more or fewer, one of two groups or both with one more or fewer),
 * and its rates, three in ten as common, with a beat or two left out after two to five blinks. Each
 * of a state's is as likely.
 */
final class NearRhythms {
  private static final double RATES = 0.3;

  /** A rate that spans more than this ratio is too wide to leave out beats. */
  private static final double WIDEST_RATE = 1.6 * 1.6 * 1.6;

  private static final int MOST_CHANGE = 2;
  private static final int MOST_BEATS = 5;
  private static final int MOST_LEFT_OUT = 2;

  /** So many draws of durations that are not known stand for all. */
  private static final int DRAWS = 8;

  private final List<Near> all = new ArrayList<>();

  /**
   * One of them.
   *
   * @param share how common it is among them
   */
  record Near(Fold fold, double share) {}

  private NearRhythms() {}

  /**
   * Those of a sheet; none if no state has any.
   *
   * @param candidates how rhythms are shown
   */
  static List<Near> of(CodeSheet sheet, Candidates candidates) {
    NearRhythms near = new NearRhythms();
    for (LampState state : sheet.states()) {
      if (state.rhythm() instanceof Rhythm.Blinking blinking && blinking.prelude().isEmpty()) {
        if (blinking.cycle() instanceof Cycle.Parts parts) {
          List<List<Fold>> codes = new ArrayList<>();
          for (Rhythm code : codes(parts)) {
            if (sheet.states().stream().noneMatch(s -> Rhythms.sameLamp(s.rhythm(), code))) {
              codes.add(candidates.shows(code).folds());
            }
          }
          near.add(codes, 1);
        } else if (blinking.cycle() instanceof Cycle.Rated rated) {
          near.add(rates(rated.rate(), sheet), RATES);
        }
      }
    }
    double sum = near.all.stream().mapToDouble(Near::share).sum();
    return near.all.stream().map(one -> new Near(one.fold(), one.share() / sum)).toList();
  }

  private void add(List<List<Fold>> rhythms, double common) {
    for (List<Fold> folds : rhythms) {
      int draws = Math.min(DRAWS, folds.size());
      for (Fold fold : folds.subList(0, draws)) {
        all.add(new Near(fold, common / rhythms.size() / draws));
      }
    }
  }

  private static List<Rhythm> codes(Cycle.Parts cycle) {
    List<Integer> groups = new ArrayList<>();
    for (int i = 0; i < cycle.parts().size(); i++) {
      if (cycle.parts().get(i) instanceof Part.Blinks blinks
          && blinks.count().min() == blinks.count().max()) {
        groups.add(i);
      } else if (!(cycle.parts().get(i) instanceof Part.Unlit)) {
        return List.of();
      }
    }
    List<Rhythm> codes = new ArrayList<>();
    if (groups.size() == 1 && count(cycle, groups.get(0)) > 1) {
      for (int change = -MOST_CHANGE; change <= MOST_CHANGE; change++) {
        if (change != 0 && count(cycle, groups.get(0)) + change > 1) {
          with(cycle, groups, new int[] {change}).ifPresent(codes::add);
        }
      }
    } else if (groups.size() == 2) {
      for (int change = 0; change < 9; change++) {
        int[] changes = {change / 3 - 1, change % 3 - 1};
        if (changes[0] != 0 || changes[1] != 0) {
          with(cycle, groups, changes).ifPresent(codes::add);
        }
      }
    }
    return codes;
  }

  private static int count(Cycle.Parts cycle, int part) {
    return ((Part.Blinks) cycle.parts().get(part)).count().min();
  }

  /** The cycle with other numbers of blinks; empty where that cannot be. */
  private static Optional<Rhythm> with(Cycle.Parts cycle, List<Integer> groups, int[] changes) {
    List<Part> parts = new ArrayList<>(cycle.parts());
    for (int i = 0; i < changes.length; i++) {
      Part.Blinks blinks = (Part.Blinks) parts.get(groups.get(i));
      int count = blinks.count().min() + changes[i];
      if (count < 1 || count > Count.MOST) {
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

  private static List<List<Fold>> rates(Rate rate, CodeSheet sheet) {
    double least = rate.leastPerSecond();
    double most = rate.mostPerSecond();
    List<List<Fold>> rates = new ArrayList<>();
    if (most > WIDEST_RATE * least) {
      return rates;
    }
    double clock = Math.max(sheet.clockTolerance(), Candidates.LEAST_CLOCK);
    double usual = Math.sqrt(least * most);
    // Times are spacings where the rate has a range, else seconds.
    double unit = most > least ? 1 : 1 / usual;
    double lit = Math.min(sheet.blinkSeconds().orElse(Candidates.USUAL_BLINK) * usual, 0.5) * unit;
    Fold.Stretch stretch =
        most > least ? new Fold.Stretch(clock, least, most) : new Fold.Stretch(clock, 0, 0);
    for (int count = 2; count <= MOST_BEATS; count++) {
      double[] on = new double[count];
      double[] end = new double[count];
      for (int i = 0; i < count; i++) {
        on[i] = i * unit;
        end[i] = on[i] + lit;
      }
      for (int out = 1; out <= MOST_LEFT_OUT; out++) {
        rates.add(List.of(new Fold(on, end, (count + out) * unit, stretch)));
      }
    }
    return rates;
  }
}
