package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;

/**
 * The cases of a drill. The same sheet, level, count and seed give the same cases.
 *
 * @param sheet the sheet
 * @param level how hard, 1 to {@value #LEVELS}
 * @param seed the seed that was given
 * @param cases the cases
 */
record DrillPlan(CodeSheet sheet, int level, long seed, List<DrillCase> cases) {
  /** How many levels there are. */
  static final int LEVELS = 4;

  /** What a clock may be off by at the first levels, as a share of what the sheet allows. */
  private static final List<Double> SHARE_OF_TOLERANCE = List.of(0.1, 0.5, 1.0, 1.0);

  private static final double SHORT_CYCLE_SECONDS = 12;
  private static final double LIKE_CYCLE_RATIO = 1.35;
  private static final double LIKE_GROUPS_RATIO = 1.1;
  private static final double LIKE_LIGHT_RATIO = 2.5;
  private static final int ENOUGH_STATES = 4;
  private static final double HALF = 0.5;

  DrillPlan {
    cases = List.copyOf(cases);
  }

  /** Draws the cases. */
  static DrillPlan drawn(CodeSheet sheet, int level, int count, long seed, Chance chance) {
    List<LampState> main = level == 1 ? distinct(sheet) : suiting(sheet, level);
    List<LampState> rest = new ArrayList<>(level > 2 ? suiting(sheet, 2) : List.of());
    rest.removeAll(main);
    if (main.isEmpty()) {
      main = sheet.states();
    }
    Chance picking = chance.branch("states");
    List<LampState> mainDeck = new ArrayList<>();
    List<LampState> restDeck = new ArrayList<>();
    List<DrillCase> cases = new ArrayList<>();
    double tolerance = sheet.clockTolerance() * SHARE_OF_TOLERANCE.get(level - 1);
    for (int number = 1; number <= count; number++) {
      // At the upper levels half of the cases, rounded up, are of the level's own kind.
      boolean own = rest.isEmpty() || picking.branch(number).happens(HALF) || number % 4 == 1;
      LampState state = next(own ? mainDeck : restDeck, own ? main : rest, picking);
      DrillUnit unit = DrillUnit.drawn(sheet, state, tolerance, chance.branch(number));
      cases.add(new DrillCase(number, unit, DrillNeed.of(sheet, unit)));
    }
    return new DrillPlan(sheet, level, seed, cases);
  }

  private static List<LampState> suiting(CodeSheet sheet, int level) {
    return sheet.states().stream().filter(state -> suits(sheet, state, level)).toList();
  }

  /** Some states no two of which look alike, the simple ones first. */
  private static List<LampState> distinct(CodeSheet sheet) {
    List<LampState> taken = new ArrayList<>();
    for (int level = 1; level <= 2; level++) {
      for (LampState state : suiting(sheet, level)) {
        boolean room = level == 1 || taken.size() < ENOUGH_STATES;
        if (room && taken.stream().noneMatch(other -> lookAlike(sheet, state, other))) {
          taken.add(state);
        }
      }
    }
    return taken;
  }

  /** The next card of a deck, which is shuffled anew when it is used up. */
  private static LampState next(List<LampState> deck, List<LampState> all, Chance chance) {
    if (deck.isEmpty()) {
      deck.addAll(all);
    }
    return deck.remove(chance.below(deck.size()));
  }

  /** What a level is about, in words. */
  static String said(int level) {
    return switch (level) {
      case 1 -> "single blinks and steady lights, slow and clean";
      case 2 -> "groups and counts";
      case 3 -> "lights that show only with a hand, after power or the button";
      default -> "long waits, look-alikes, and dark that is normal";
    };
  }

  /** Whether a state is of the kind that a level is about. */
  static boolean suits(CodeSheet sheet, LampState state, int level) {
    boolean rest = DrillNeed.atRest(state);
    boolean lit = DrillNeed.isLit(state);
    return switch (level) {
      case 1 -> rest && lit && isSimple(sheet, state);
      case 2 -> rest && lit;
      case 3 -> !rest && lit;
      default -> !lit || hasLookAlike(sheet, state);
    };
  }

  private static DrawnRhythm typical(CodeSheet sheet, LampState state) {
    return DrawnRhythm.of(state.rhythm(), sheet.blinkSeconds(), Chance.of(0));
  }

  private static boolean isSimple(CodeSheet sheet, LampState state) {
    DrawnRhythm rhythm = typical(sheet, state);
    DrillLight light = new DrillLight(state, rhythm, 0, 0);
    boolean slow = !light.isFast() && rhythm.prelude().isEmpty() && rhythm.cycle().size() == 1;
    return slow
        && (state.rhythm() instanceof Rhythm.Steady || rhythm.cycleSeconds() < SHORT_CYCLE_SECONDS);
  }

  /** Whether another state has as many blinks in a cycle that is nearly as long, or vice versa. */
  static boolean hasLookAlike(CodeSheet sheet, LampState state) {
    return sheet.states().stream()
        .anyMatch(other -> !other.equals(state) && lookAlike(sheet, state, other));
  }

  private static boolean lookAlike(CodeSheet sheet, LampState one, LampState two) {
    if (!DrillNeed.atRest(one) || !DrillNeed.atRest(two)) {
      return false;
    }
    DrawnRhythm a = typical(sheet, one);
    DrawnRhythm b = typical(sheet, two);
    boolean sameCount = a.cycle().size() == b.cycle().size();
    double most = sameCount ? LIKE_CYCLE_RATIO : LIKE_GROUPS_RATIO;
    return ratio(a.cycleSeconds(), b.cycleSeconds()) < most
        && ratio(litSeconds(a), litSeconds(b)) < LIKE_LIGHT_RATIO;
  }

  private static double litSeconds(DrawnRhythm rhythm) {
    return rhythm.cycle().stream().mapToDouble(DrawnRhythm.Pulse::lengthSeconds).sum();
  }

  /** How many times the longer one is as long as the other; NaN where one is endless or nothing. */
  private static double ratio(double a, double b) {
    double ratio = Math.max(a, b) / Math.min(a, b);
    return ratio < Double.POSITIVE_INFINITY ? ratio : Double.NaN;
  }
}
