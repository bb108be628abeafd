package lampwise.sim.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;
import lampwise.sim.Mix;
import lampwise.sim.SimulationException;

/** All that a mix may show, as folds, and how probable evidence makes each. */
final class Candidates {
  /** Candidates this far below the best one (natural logarithm) are left at their bound. */
  private static final double HOPELESS = 16;

  /** How exact the best clock is. */
  static final double LEAST_CLOCK = 1e-4;

  /** How long a blink lasts where nobody says, seconds. */
  static final double USUAL_BLINK = 0.1;

  /** How often durations are drawn that are not known. */
  static final int DRAWS = 256;

  private final Mix mix;

  /** Into how many parts the clock is cut where a blink's length goes by it and not by a rate. */
  private final int clockParts;

  private final List<Shows> listed = new ArrayList<>();
  private final List<Shows> unlisted = new ArrayList<>();

  /** A rhythm: folds that are equally likely; without any, a lamp that is always lit or never. */
  record Shows(List<Fold> folds, boolean lit) {}

  /** The density of all that is no fold, logarithms. */
  record Plain(double dark, double lit, double random) {}

  /**
   * The candidates of a mix.
   *
   * @throws SimulationException if the mix holds what folds do not cover
   */
  Candidates(Mix mix, int clockParts) {
    this.mix = mix;
    this.clockParts = clockParts;
    for (LampState state : mix.sheet().states()) {
      if (state.seen() != Seen.ALWAYS) {
        throw new SimulationException(
            "the reference decoder does not cover states that are not always seen: "
                + state.name());
      }
      listed.add(shows(state.rhythm()));
    }
    for (Rhythm rhythm : mix.unlisted()) {
      unlisted.add(shows(rhythm));
    }
  }

  /** What a rhythm shows. */
  Shows shows(Rhythm rhythm) {
    OptionalDouble blink = mix.sheet().blinkSeconds();
    double clock = Math.max(mix.sheet().clockTolerance(), LEAST_CLOCK);
    if (rhythm instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Rated rated
        && !rated.rate().form().inWords()
        && rated.rate().leastPerSecond() < rated.rate().mostPerSecond()) {
      Rate rate = rated.rate();
      double least = rate.leastPerSecond();
      double most = rate.mostPerSecond();
      return new Shows(
          Fold.ofRate(least, most, blink.orElse(USUAL_BLINK), clock, clockParts), false);
    }
    Chance chance = Chance.of(DRAWS);
    DrawnRhythm one = DrawnRhythm.of(rhythm, blink, chance.branch(0));
    if (one.cycle().isEmpty() || Double.isInfinite(one.cycleSeconds())) {
      return new Shows(List.of(), !one.cycle().isEmpty());
    }
    if (!one.repeats()) {
      throw new SimulationException(
          "the reference decoder does not cover \"once\": " + Phrase.print(rhythm));
    }
    boolean known = one.equals(DrawnRhythm.of(rhythm, blink, chance.branch(1)));
    List<Fold> folds = new ArrayList<>();
    for (int i = 0; i < (known ? 1 : DRAWS); i++) {
      folds.add(Fold.of(DrawnRhythm.of(rhythm, blink, chance.branch(i)), clock));
    }
    return new Shows(folds, false);
  }

  /** What the listed states show, but for those that are always lit or never. */
  List<Fold> folds() {
    return listed.stream().flatMap(shows -> shows.folds().stream()).toList();
  }

  /** Logarithms of the density of what was seen under each listed state. */
  double[] listed(Evidence evidence, Plain plain) {
    double random = mix.randomPerSecond().isEmpty() ? Double.NEGATIVE_INFINITY : plain.random();
    return logs(listed, evidence, plain, random);
  }

  /** The same of the unlisted rhythms that the mix shows, each as likely. */
  double unlisted(Evidence evidence, Plain plain, double floor) {
    double sum = Double.NEGATIVE_INFINITY;
    for (double log : logs(unlisted, evidence, plain, floor)) {
      sum = Logs.add(sum, log - StrictMath.log(unlisted.size()));
    }
    return sum;
  }

  /**
   * Logarithms of the density under each of some rhythms; negative infinity where it is far below
   * the best of them or the floor.
   */
  static double[] logs(List<Shows> all, Evidence evidence, Plain plain, double least) {
    double floor = least;
    List<List<Grid>> grids = new ArrayList<>();
    List<List<List<Grid.Cell>>> cells = new ArrayList<>();
    for (Shows shows : all) {
      if (shows.folds().isEmpty()) {
        floor = Math.max(floor, shows.lit() ? plain.lit() : plain.dark());
      }
    }
    for (Shows shows : all) {
      List<Grid> own = new ArrayList<>();
      List<List<Grid.Cell>> first = new ArrayList<>();
      for (Fold fold : shows.folds()) {
        Grid grid = new Grid(fold, evidence);
        List<Grid.Cell> begin = grid.first(floor - HOPELESS);
        Grid.Cell best = Collections.max(begin, Comparator.comparingDouble(Grid.Cell::bound));
        if (best.bound() > floor) {
          floor = Math.max(floor, grid.point(best));
        }
        own.add(grid);
        first.add(begin);
      }
      grids.add(own);
      cells.add(first);
    }
    double[] logs = new double[all.size()];
    for (int i = 0; i < logs.length; i++) {
      double log = Double.NEGATIVE_INFINITY;
      int folds = grids.get(i).size();
      for (int k = 0; k < folds; k++) {
        double one = grids.get(i).get(k).logSum(cells.get(i).get(k), floor - HOPELESS, HOPELESS);
        floor = Math.max(floor, one - StrictMath.log(folds));
        log = Logs.add(log, one);
      }
      logs[i] =
          folds == 0
              ? (all.get(i).lit() ? plain.lit() : plain.dark())
              : log - StrictMath.log(folds);
    }
    return logs;
  }

  /**
   * The probability of each candidate.
   *
   * @param listed logarithms of the density under each listed state
   * @param unlisted the same under what the sheet does not list
   * @param random the same for blinks in no order
   * @return probabilities of the sheet's states in its order, then {@code unlisted}, then {@code
   *     no-rhythm}; they sum to 1
   */
  double[] probabilities(double[] listed, double unlisted, double random) {
    double[] logs = Arrays.copyOf(listed, listed.length + 2);
    logs[listed.length] = unlisted;
    logs[listed.length + 1] = random;
    return posterior(logs);
  }

  private double[] posterior(double[] logs) {
    double[] priors = mix.priors();
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      logs[i] = priors[i] > 0 ? logs[i] + StrictMath.log(priors[i]) : Double.NEGATIVE_INFINITY;
      most = Math.max(most, logs[i]);
    }
    double sum = 0;
    double[] probabilities = new double[logs.length];
    for (int i = 0; i < logs.length; i++) {
      probabilities[i] = StrictMath.exp(logs[i] - most);
      sum += probabilities[i];
    }
    for (int i = 0; i < logs.length; i++) {
      probabilities[i] /= sum;
    }
    return probabilities;
  }
}
