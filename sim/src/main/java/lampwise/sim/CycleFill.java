package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwise.rhythm.Limits;

/** Gives the lights and pauses of unsaid length their share of a cycle. */
final class CycleFill {
  /** Sums of durations are compared to within this fraction. */
  static final double ROUNDING = 1e-9;

  /** A row whose said parts take more of the limit than this may go beyond it. */
  private static final double LONG_SHARE = 1 / 3.0;

  /** A dark that is still one, as a share of its cycle, where time is short. */
  private static final double LEAST_SHARE = 0.001;

  private final LightRow row;

  /** The largest spacing inside a group. */
  private final double spacing;

  private final boolean strict;
  private final double squeeze;
  private final Chance chance;

  /**
   * A way to fill a row.
   *
   * @param row the row
   * @param spacing the largest spacing inside a group, of this row or what follows it
   * @param strict whether pauses must keep their ratio to spacings and to each other
   * @param squeeze 0 to draw from the whole range, up to 1 for its lower end alone
   * @param chance where numbers come from
   */
  CycleFill(LightRow row, double spacing, boolean strict, double squeeze, Chance chance) {
    this.row = row;
    this.spacing = spacing;
    this.strict = strict;
    this.squeeze = squeeze;
    this.chance = chance;
  }

  /** Something of unsaid length and the least it may be. */
  private record Open(Amount length, double least, boolean pause) {}

  /** The least of an unsaid pause between groups that have this largest spacing. */
  static double pauseLeast(double spacing) {
    return Math.max(Limits.PAUSE_RATIO_LEAST * spacing, Limits.APART_LEAST_SECONDS);
  }

  private List<Open> opens(double lightLeast, double darkLeast) {
    List<Open> opens = new ArrayList<>();
    for (Amount light : row.openLights()) {
      opens.add(new Open(light, lightLeast, false));
    }
    double least = strict ? pauseLeast(spacing) : darkLeast;
    for (Amount pause : row.openDarks(LightRow.Kind.GROUP)) {
      opens.add(new Open(pause, least, true));
    }
    return opens;
  }

  /** The least of the pause that closes the cycle, given the pauses before it. */
  private double closingLeast(double longestPause, double otherwise) {
    double inner = Math.max(spacing, Math.max(longestPause, row.longestSetPause()));
    return strict && inner > 0 ? Limits.PAUSE_RATIO_LEAST * inner : otherwise;
  }

  /**
   * Fills a row of no stated time.
   *
   * @param mostSeconds the most that it takes where its parts allow that
   * @return whether it keeps to the limit of a cycle, or says itself that it takes longer
   */
  boolean freely(double mostSeconds) {
    List<Open> opens = opens(LightDraw.LIGHT_LEAST_SECONDS, LightDraw.DARK_LEAST_SECONDS);
    List<Amount> closing = row.openDarks(LightRow.Kind.CLOSING);
    double last = closing.isEmpty() ? 0 : closingLeast(leastOf(opens), Limits.APART_LEAST_SECONDS);
    double need = last + opens.stream().mapToDouble(Open::least).sum();
    double left = Math.max(need, mostSeconds - row.setSeconds());
    left = share(opens, left, need, !closing.isEmpty());
    for (Amount pause : closing) {
      double least = closingLeast(longestOf(opens), Limits.APART_LEAST_SECONDS);
      pause.set(Amount.unsaid(least, left, squeeze, chance).value());
    }
    return row.setSeconds() + need <= Limits.CYCLE_MOST_SECONDS
        || row.saidSeconds() > LONG_SHARE * Limits.CYCLE_MOST_SECONDS;
  }

  private static double leastOf(List<Open> opens) {
    return opens.stream().filter(Open::pause).mapToDouble(Open::least).max().orElse(0);
  }

  private static double longestOf(List<Open> opens) {
    return opens.stream().filter(Open::pause).mapToDouble(o -> o.length().value()).max().orElse(0);
  }

  /** Draws them one after the other and gives what is left. */
  private double share(List<Open> opens, double all, double need, boolean closes) {
    double left = all;
    double later = need;
    int pauses = (int) opens.stream().filter(Open::pause).count();
    for (Open open : opens) {
      later -= open.least();
      double most = left - later;
      if (open.pause()) {
        // Leaves what the pauses to come and 1.5 times the longest of all need.
        most = closes ? Math.min(most, left / (pauses + Limits.PAUSE_RATIO_LEAST)) : most;
        pauses--;
      } else {
        most = Math.min(LightDraw.LIGHT_MOST_SECONDS, 0.8 * most);
      }
      open.length().set(Amount.unsaid(open.least(), most, squeeze, chance).value());
      left -= open.length().value();
    }
    return left;
  }

  /**
   * Fills a row of a stated time.
   *
   * @param cycle that time; may be changed within its borders
   * @return whether all that was said and, if strict, all ratios of pauses hold
   */
  boolean within(Amount cycle) {
    double darkLeast = Math.min(LightDraw.DARK_LEAST_SECONDS, LEAST_SHARE * cycle.value());
    List<Open> opens = opens(Math.min(Limits.BLINK_LEAST_SECONDS, cycle.value() / 2), darkLeast);
    List<Amount> closing = row.openDarks(LightRow.Kind.CLOSING);
    if (opens.isEmpty() && closing.isEmpty()) {
      return adjust(cycle);
    }
    double rest = cycle.value() - row.setSeconds();
    double last = closing.isEmpty() ? 0 : closingLeast(leastOf(opens), darkLeast);
    double need = last + opens.stream().mapToDouble(Open::least).sum();
    if (!(rest >= need)) {
      force(opens, closing, rest);
      return false;
    }
    boolean closes = !closing.isEmpty();
    Amount end = closes ? closing.get(0) : opens.get(opens.size() - 1).length();
    List<Open> before = closes ? opens : opens.subList(0, opens.size() - 1);
    end.set(share(before, rest, need, closes));
    double least = closes ? closingLeast(longestOf(opens), darkLeast) : 0;
    return end.value() >= least * (1 - ROUNDING) && end.value() > 0;
  }

  /** Shares too short a rest evenly; where there is none, everything gets its least. */
  private static void force(List<Open> opens, List<Amount> closing, double rest) {
    int number = opens.size() + closing.size();
    double each = rest > 0 ? rest / number : LightDraw.DARK_LEAST_SECONDS;
    opens.forEach(open -> open.length().set(each));
    closing.forEach(pause -> pause.set(each));
  }

  /** Moves unsaid durations, then said ranges, until the row takes the stated time. */
  private boolean adjust(Amount cycle) {
    Map<Amount, Integer> weights = row.weights();
    weights.put(cycle, -1);
    move(weights, cycle, false);
    move(weights, cycle, true);
    stretch(weights, cycle.value() - row.setSeconds());
    return Math.abs(cycle.value() - row.setSeconds()) <= ROUNDING * cycle.value() && row.isSound();
  }

  /** Gives what is still missing to a duration that may be as long as it likes. */
  private static void stretch(Map<Amount, Integer> weights, double missing) {
    for (Map.Entry<Amount, Integer> entry : weights.entrySet()) {
      if (missing * entry.getValue() > 0 && entry.getKey().isEndless()) {
        entry.getKey().set(entry.getKey().value() + missing / entry.getValue());
        return;
      }
    }
  }

  private void move(Map<Amount, Integer> weights, Amount cycle, boolean said) {
    double missing = cycle.value() - row.setSeconds();
    double room = 0;
    for (Map.Entry<Amount, Integer> entry : weights.entrySet()) {
      if (entry.getKey().isSaid() == said) {
        room += entry.getValue() * (border(entry, missing) - entry.getKey().value());
      }
    }
    if (missing == 0 || room == 0) {
      return;
    }
    double share = Math.min(1, missing / room);
    for (Map.Entry<Amount, Integer> entry : weights.entrySet()) {
      if (entry.getKey().isSaid() == said) {
        entry.getKey().approach(border(entry, missing), share);
      }
    }
  }

  private static double border(Map.Entry<Amount, Integer> entry, double missing) {
    boolean longer = (missing > 0) == (entry.getValue() > 0);
    return longer ? entry.getKey().most() : entry.getKey().least();
  }
}
