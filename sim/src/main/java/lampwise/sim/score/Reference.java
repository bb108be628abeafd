package lampwise.sim.score;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.RecordingException;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.SimulationException;

/**
 * The best answer that taps allow, for recordings whose making is known: the person's settings and
 * the mix of what is shown. The density of the taps is summed over phase and clock on a fine grid,
 * and at each point over all ways to give taps to blinks. Slow, simple, and the yardstick for
 * decoders that know none of this.
 *
 * <p>It covers dark and steady lamps and rhythms that repeat; durations that a phrase gives as a
 * range, other than a rate, or not at all are drawn {@value #DRAWS} times and averaged.
 */
public final class Reference {
  /** Candidates this far below the best one (natural logarithm) are left at their bound. */
  private static final double HOPELESS = 16;

  /** How often durations are drawn that are not known. */
  private static final int DRAWS = 256;

  private final Mix mix;
  private final double sd;
  private final double missed;
  private final double strays;
  private final double late;
  private final double burstGap;
  private final List<List<Fold>> listed = new ArrayList<>();
  private final List<Fold> unlisted = new ArrayList<>();

  /**
   * Prepares the answers for one person and one mix.
   *
   * @param mix what may be shown
   * @param person who watches
   * @throws SimulationException if the mix holds what the reference does not cover
   */
  public Reference(Mix mix, Person person) {
    this.mix = mix;
    double rounding = person.roundingSeconds();
    this.sd = Math.sqrt(person.timingSd() * person.timingSd() + rounding * rounding / 12);
    this.missed = person.missed();
    this.strays = person.straysPerMinute() / 60;
    this.late = person.firstLateSeconds();
    this.burstGap = person.burstGapSeconds();
    for (LampState state : mix.sheet().states()) {
      if (state.seen() != Seen.ALWAYS) {
        throw new SimulationException(
            "the reference decoder does not cover states that are not always seen: "
                + state.name());
      }
      listed.add(folds(state.rhythm()));
    }
    for (Rhythm rhythm : mix.unlisted()) {
      unlisted.addAll(folds(rhythm));
    }
  }

  private List<Fold> folds(Rhythm rhythm) {
    OptionalDouble blink = mix.sheet().blinkSeconds();
    double clock = Math.max(mix.sheet().clockTolerance(), 1e-4);
    if (rhythm instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Rated rated
        && !rated.rate().form().inWords()
        && rated.rate().leastPerSecond() < rated.rate().mostPerSecond()) {
      Rate rate = rated.rate();
      return List.of(
          Fold.ofRate(rate.leastPerSecond(), rate.mostPerSecond(), blink.orElse(0.1), clock));
    }
    Chance chance = Chance.of(DRAWS);
    DrawnRhythm one = DrawnRhythm.of(rhythm, blink, chance.branch(0));
    if (one.cycle().isEmpty() || Double.isInfinite(one.cycleSeconds())) {
      return List.of();
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
    return folds;
  }

  /**
   * The probability of each candidate.
   *
   * @param log the taps, with a window
   * @return probabilities of the sheet's states in its order, then {@code unlisted}, then {@code
   *     no-rhythm}; they sum to 1
   * @throws RecordingException if the log has no window
   */
  public double[] probabilities(BlinkLog log) {
    Window window = log.window().orElseThrow(() -> new RecordingException("the log has no window"));
    double[] taps = log.blinks().stream().mapToDouble(Blink::onSeconds).toArray();
    Sighting sighting =
        new Sighting(taps, window.fromSeconds(), window.toSeconds(), sd, missed, strays);
    int states = listed.size();
    double[] logs = new double[states + 2];
    double floor = sighting.logAllStrays();
    logs[states + 1] = Double.NEGATIVE_INFINITY;
    for (double rate : mix.randomPerSecond()) {
      double density = sighting.logRandom(rate) - StrictMath.log(mix.randomPerSecond().size());
      logs[states + 1] = logAdd(logs[states + 1], density);
    }
    floor = Math.max(floor, logs[states + 1]);
    List<List<Grid>> grids = new ArrayList<>();
    List<List<List<Grid.Cell>>> cells = new ArrayList<>();
    for (int i = 0; i <= states; i++) {
      grids.add(new ArrayList<>());
      cells.add(new ArrayList<>());
      for (Fold fold : i < states ? listed.get(i) : unlisted) {
        Grid grid = new Grid(fold, sighting, late, burstGap);
        List<Grid.Cell> first = grid.first(floor - HOPELESS);
        Grid.Cell best = Collections.max(first, Comparator.comparingDouble(Grid.Cell::bound));
        if (best.bound() > floor) {
          floor = Math.max(floor, grid.point(best));
        }
        grids.get(i).add(grid);
        cells.get(i).add(first);
      }
    }
    for (int i = 0; i <= states; i++) {
      int folds = grids.get(i).size();
      if (folds == 0) {
        logs[i] = i < states ? sighting.logAllStrays() : Double.NEGATIVE_INFINITY;
        continue;
      }
      double sum = 0;
      for (int k = 0; k < folds; k++) {
        sum += grids.get(i).get(k).sum(cells.get(i).get(k), floor - HOPELESS, floor);
      }
      logs[i] = floor + StrictMath.log(sum / folds);
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

  private static double logAdd(double a, double b) {
    double most = Math.max(a, b);
    return Double.isInfinite(most)
        ? most
        : most + StrictMath.log1p(StrictMath.exp(Math.min(a, b) - most));
  }
}
