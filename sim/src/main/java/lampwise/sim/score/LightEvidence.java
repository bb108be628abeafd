package lampwise.sim.score;

import java.util.HashMap;
import java.util.Map;
import lampwise.light.Window;

/** A light sensor's values as evidence; densities are relative to those of a dark lamp. */
final class LightEvidence implements Evidence {
  /** In the first cells blinks move this many timing errors to either side, and this far. */
  private static final double FIRST = 8;

  private static final double FIRST_SECONDS = 0.2;

  /** Points are at most this many timing errors apart, over the root of the number of blinks. */
  private static final double STEP = 1.8;

  /** In the last cells blinks move at most this many steps. */
  private static final double LAST = 4;

  /** Steps of the starts and of the lengths for which bounds are kept. */
  private static final double STEP_SECONDS = 0.005;

  private static final double LENGTH_SECONDS = 0.002;

  /** Steps of a table of what a blink is worth, timing errors; and of the blink's length. */
  private static final double NODE = 0.125;

  private static final double LIT_SECONDS = 0.001;

  /** Longer blinks have no tables, for there would be too many lengths. */
  private static final double BRIEF_SECONDS = 0.2;

  /** Longer tables are not made: where time is known so well, few points need to be looked at. */
  private static final double MOST_NODES = 300_000;

  private final LightValues values;
  private final LightBounds bounds;
  private final Window window;
  private final double sd;
  private final boolean tables;
  private final Map<Integer, LightTable> worths = new HashMap<>();
  private final Map<Integer, Map<Integer, LightReach>> reaches = new HashMap<>();

  /**
   * The values of a window.
   *
   * @param sd how well a blink's time is known at best, seconds
   */
  LightEvidence(LightValues values, Window window, double sd) {
    this.values = values;
    this.bounds = new LightBounds(values);
    this.window = window;
    this.sd = sd;
    this.tables = window.lengthSeconds() / (NODE * sd) <= MOST_NODES;
  }

  @Override
  public double from() {
    return window.fromSeconds();
  }

  @Override
  public double to() {
    return window.toSeconds();
  }

  @Override
  public double reach() {
    return Math.max(FIRST * sd, FIRST_SECONDS);
  }

  @Override
  public double last(double blinks) {
    return LAST * step(blinks);
  }

  @Override
  public double step(double blinks) {
    return STEP * sd / Math.sqrt(blinks);
  }

  @Override
  public double log(
      Fold fold, double start, double stretch, double around, double turn, double least) {
    double cycle = fold.cycle() * stretch;
    double middle = (from() + to()) / 2;
    double most = around + turn * ((to() - from()) / 2 + cycle);
    int first = (int) Math.floor((from() - most - start) / cycle) - 1;
    int last = (int) Math.ceil((to() + most - start) / cycle);
    boolean exact = around == 0;
    boolean alone = fold.leastDark() >= values.averaging();
    double sum = 0;
    values.dark();
    for (int n = first; n <= last; n++) {
      for (int k = 0; k < fold.blinks(); k++) {
        double on = start + (n * fold.cycle() + fold.on(k)) * stretch;
        double off = on + fold.lit(k, stretch);
        if (off + most <= from() || on - most >= to()) {
          continue;
        }
        if (!exact) {
          double away = Math.max(Math.abs(on - middle), Math.abs(off - middle));
          sum += most(on, off, around + turn * away, turn);
        } else if (alone) {
          sum += worth(on, off);
        } else {
          values.lit(on, off);
        }
      }
    }
    return exact && !alone ? values.log() : sum;
  }

  /** What a blink is worth that shares no value with another. */
  private double worth(double on, double off) {
    if (!tables || off - on > BRIEF_SECONDS) {
      return values.log(on, off);
    }
    int length = (int) Math.rint((off - on) / LIT_SECONDS);
    return worths
        .computeIfAbsent(
            length, l -> new LightTable(values, window, length * LIT_SECONDS, NODE * sd))
        .worth(on);
  }

  /**
   * What a blink is worth at the most, if its borders lie up to so much aside; that values shared
   * by two blinks are worth less is left out.
   */
  private double most(double on, double off, double aside, double turn) {
    double lit = off - on;
    if (aside <= STEP_SECONDS || lit > BRIEF_SECONDS) {
      return bounds.most(on - aside, on + aside, off - aside, off + aside);
    }
    int shortest = (int) Math.floor(lit * (1 - turn) / LENGTH_SECONDS);
    int longest = (int) Math.ceil(lit * (1 + turn) / LENGTH_SECONDS);
    return reaches
        .computeIfAbsent(shortest, s -> new HashMap<>())
        .computeIfAbsent(
            longest,
            l ->
                new LightReach(
                    bounds,
                    window,
                    shortest * LENGTH_SECONDS,
                    longest * LENGTH_SECONDS,
                    STEP_SECONDS))
        .most(on - aside, on + aside);
  }
}
