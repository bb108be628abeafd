package lampwise.sim.score;

import java.util.ArrayList;
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

  /** How often durations are drawn that are not known. */
  static final int DRAWS = 256;

  private final Mix mix;

  /** Into how many parts the clock is cut where a blink's length goes by it and not by a rate. */
  private final int clockParts;

  private final List<Shows> listed = new ArrayList<>();
  private final List<Shows> unlisted = new ArrayList<>();

  /** A rhythm: folds that are equally likely; without any, a lamp that is always lit or never. */
  private record Shows(List<Fold> folds, boolean lit) {}

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

  private Shows shows(Rhythm rhythm) {
    OptionalDouble blink = mix.sheet().blinkSeconds();
    double clock = Math.max(mix.sheet().clockTolerance(), 1e-4);
    if (rhythm instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Rated rated
        && !rated.rate().form().inWords()
        && rated.rate().leastPerSecond() < rated.rate().mostPerSecond()) {
      Rate rate = rated.rate();
      double least = rate.leastPerSecond();
      double most = rate.mostPerSecond();
      return new Shows(Fold.ofRate(least, most, blink.orElse(0.1), clock, clockParts), false);
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

  /**
   * The probability of each candidate.
   *
   * @return probabilities of the sheet's states in its order, then {@code unlisted}, then {@code
   *     no-rhythm}; they sum to 1
   */
  double[] probabilities(Evidence evidence, Plain plain) {
    List<Shows> all = new ArrayList<>(listed);
    all.addAll(unlisted);
    double floor = mix.randomPerSecond().isEmpty() ? Double.NEGATIVE_INFINITY : plain.random();
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
    double[] logs = new double[listed.size() + 2];
    logs[listed.size()] = Double.NEGATIVE_INFINITY;
    logs[listed.size() + 1] = plain.random();
    for (int i = 0; i < all.size(); i++) {
      double log = Double.NEGATIVE_INFINITY;
      int folds = grids.get(i).size();
      for (int k = 0; k < folds; k++) {
        double one = grids.get(i).get(k).logSum(cells.get(i).get(k), floor - HOPELESS, HOPELESS);
        floor = Math.max(floor, one - StrictMath.log(folds));
        log = Logs.add(log, one);
      }
      log =
          folds == 0
              ? (all.get(i).lit() ? plain.lit() : plain.dark())
              : log - StrictMath.log(folds);
      if (i < listed.size()) {
        logs[i] = log;
      } else {
        logs[listed.size()] = Logs.add(logs[listed.size()], log - StrictMath.log(unlisted.size()));
      }
    }
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
