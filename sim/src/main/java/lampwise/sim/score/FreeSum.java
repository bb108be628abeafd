package lampwise.sim.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lampwise.sim.Chance;

/**
 * The density of taps for rhythms that no sheet lists, averaged over their broad prior by
 * importance sampling: points are drawn from the prior and from peaks where guesses from the taps
 * fit, and each counts with its density and prior over the density with which it was drawn. The
 * average is right wherever the peaks are; good ones only make it steady. The same taps give the
 * same average.
 */
final class FreeSum {
  private static final int MOST_PEAKS = 300;
  private static final int MORE_PEAKS = 150;

  /** How many guesses are looked at closely. */
  private static final int CLOSELY = 600;

  /**
   * Draws of each round, which tell where those of the next are worth most; the last one counts.
   */
  private static final int[] DRAWS = {600, 1200, 2400, 4800, 9600};

  /** So many rounds there are at least where the sum matters; more where its error is larger. */
  private static final int ROUNDS = 3;

  private static final double SMALL_ERROR = 0.15;

  /** What lies this far below the floor (natural logarithm) needs no further round. */
  private static final double SMALL = 8;

  /** Guesses for each duration of a form, and more for single blinks. */
  private static final int GUESSES = 24;

  private static final int GUESSES_OF_SINGLES = 120;
  private static final int GUESSES_OF_ONCE = 8;
  private static final int GUESSES_OF_KNOWN = 160;

  /** What lies this far below the floor (natural logarithm) does not matter. */
  private static final double HOPELESS = 20;

  private final FreePrior prior;
  private final Taps taps;
  private final FreeGuess guess;
  private final double blinkSeconds;
  private final double window;
  private final double middle;
  private final double least;

  /**
   * What a guess may be worth.
   *
   * @param logVolume logarithm of how much of the space its peak takes
   * @param log logarithm of the part of the sum that may lie in it
   */
  private record Worth(FreeMixture.Point point, FreePeak peak, double logVolume, double log) {
    static Worth of(int number, FreeGuess.Guess guess, FreePrior prior, double window) {
      double volume = guess.peak().logVolume();
      for (int i = 1; i < guess.point().length; i++) {
        volume += Math.log(guess.point()[i]);
      }
      double log = guess.log() + prior.logPrior(number, guess.point(), window) + volume;
      return new Worth(new FreeMixture.Point(number, guess.point()), guess.peak(), volume, log);
    }

    Worth with(double other) {
      return new Worth(point, peak, logVolume, other);
    }
  }

  /** A point that was drawn: the density that it counts with, and those of the peaks there. */
  @SuppressWarnings("ArrayRecordComponent") // Inner loops; nobody outside the package sees it.
  private record Drawn(FreeMixture.Point point, double log, double[] densities) {
    double logWeight() {
      return log - Math.log(Arrays.stream(densities).sum());
    }
  }

  /**
   * An average.
   *
   * @param log its logarithm; negative infinity if nothing matters
   * @param error its standard error, as a part of it
   */
  record Estimate(double log, double error) {}

  /**
   * Gets ready.
   *
   * @param blinkSeconds how long a blink lasts
   * @param floor logarithm of a density beside which this one matters
   */
  FreeSum(FreePrior prior, Taps taps, FreeGuess guess, double blinkSeconds, double floor) {
    this.prior = prior;
    this.taps = taps;
    this.guess = guess;
    this.blinkSeconds = blinkSeconds;
    this.window = taps.to() - taps.from();
    this.middle = (taps.to() + taps.from()) / 2;
    this.least = floor - HOPELESS;
  }

  /** The average. */
  Estimate estimate() {
    Chance chance = Chance.of(CLOSELY);
    FreeMixture mixture = guessed(chance.branch("guesses"));
    Estimate estimate = new Estimate(Double.NEGATIVE_INFINITY, 0);
    for (int round = 0; round < DRAWS.length; round++) {
      List<Drawn> drawn = draw(mixture, DRAWS[round], chance.branch(round));
      estimate = average(drawn, DRAWS[round]);
      boolean exact = round + 1 >= ROUNDS && estimate.error() < SMALL_ERROR;
      if (exact || estimate.log() < least + HOPELESS - SMALL) {
        break;
      }
      mixture = learned(mixture, drawn);
    }
    return estimate;
  }

  /** Logarithm of density and prior at a point. */
  private double log(FreeMixture.Point point) {
    double log = prior.logPrior(point.number(), point.values(), window);
    if (Double.isInfinite(log)) {
      return log;
    }
    Fold fold = prior.forms().get(point.number()).fold(point.values(), blinkSeconds);
    return log + taps.log(fold, middle + point.values()[0], 1, 0, 0, least);
  }

  /** The peaks of the guesses that are worth most, without those beside a better one. */
  private FreeMixture guessed(Chance chance) {
    List<Worth> about = new ArrayList<>();
    for (int i = 0; i < prior.forms().size(); i++) {
      FreeForm form = prior.forms().get(i);
      int tries =
          !form.repeats()
              ? GUESSES_OF_ONCE
              : form.isKnown()
                  ? GUESSES_OF_KNOWN
                  : form.blinks() == 1 ? GUESSES_OF_SINGLES : GUESSES * (form.size() - 1);
      for (int k = 0; k < tries; k++) {
        int number = i;
        guess
            .guess(i, form, chance)
            .ifPresent(one -> about.add(Worth.of(number, one, prior, window)));
      }
    }
    List<Worth> close = new ArrayList<>();
    for (Worth worth : best(about, CLOSELY)) {
      double log = log(worth.point());
      close.add(worth.with(log + worth.logVolume()));
    }
    List<FreePeak> peaks = new ArrayList<>();
    List<Double> worths = new ArrayList<>();
    double most = Double.NaN;
    for (Worth worth : best(close, CLOSELY)) {
      FreePeak peak = worth.peak();
      if (peaks.size() < MOST_PEAKS && peaks.stream().noneMatch(p -> p.isNear(peak))) {
        most = peaks.isEmpty() ? worth.log() : most;
        peaks.add(peak);
        worths.add(Math.exp(worth.log() - most));
      }
    }
    return mixture(peaks, worths);
  }

  private static List<Worth> best(List<Worth> all, int count) {
    return all.stream()
        .filter(worth -> worth.log() > Double.NEGATIVE_INFINITY)
        .sorted(Comparator.comparingDouble(Worth::log).reversed())
        .limit(count)
        .toList();
  }

  private FreeMixture mixture(List<FreePeak> peaks, List<Double> worths) {
    return new FreeMixture(
        prior,
        window,
        taps.count(),
        peaks,
        worths.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private List<Drawn> draw(FreeMixture mixture, int draws, Chance chance) {
    List<Drawn> drawn = new ArrayList<>();
    for (int i = 0; i < draws; i++) {
      Optional<FreeMixture.Point> point = mixture.draw(chance);
      if (point.isPresent()) {
        double log = log(point.get());
        if (!Double.isInfinite(log)) {
          drawn.add(new Drawn(point.get(), log, mixture.densities(point.get())));
        }
      }
    }
    return drawn;
  }

  /** The average of so many draws, of which those that are not in the list count nothing. */
  private static Estimate average(List<Drawn> drawn, int draws) {
    double most = drawn.stream().mapToDouble(Drawn::logWeight).max().orElse(Double.NaN);
    if (drawn.isEmpty()) {
      return new Estimate(Double.NEGATIVE_INFINITY, 0);
    }
    double sum = 0;
    double squares = 0;
    for (Drawn one : drawn) {
      double weight = Math.exp(one.logWeight() - most);
      sum += weight;
      squares += weight * weight;
    }
    double mean = sum / draws;
    double variance = (squares / draws - mean * mean) / draws;
    return new Estimate(most + Math.log(mean), Math.sqrt(Math.max(0, variance)) / mean);
  }

  /** The same peaks, each worth what was found in it, and more where single draws counted most. */
  private FreeMixture learned(FreeMixture first, List<Drawn> drawn) {
    List<FreePeak> peaks = new ArrayList<>(first.peaks());
    double most = drawn.stream().mapToDouble(Drawn::logWeight).max().orElse(0);
    double[] found = new double[peaks.size() + 1];
    for (Drawn one : drawn) {
      double weight = Math.exp(one.log() - most);
      double all = Arrays.stream(one.densities()).sum();
      for (int i = 0; i < found.length; i++) {
        found[i] += weight / all * (one.densities()[i] / all);
      }
    }
    List<Double> worth = new ArrayList<>();
    for (int i = 1; i < found.length; i++) {
      worth.add(found[i]);
    }
    drawn.sort(Comparator.comparingDouble(Drawn::logWeight).reversed());
    for (Drawn one : drawn.subList(0, Math.min(MORE_PEAKS, drawn.size()))) {
      FreeMixture.Point point = one.point();
      FreeForm form = prior.forms().get(point.number());
      peaks.add(guess.at(point.number(), form, point.values()).peak());
      worth.add(Math.exp(one.logWeight() - most));
    }
    return mixture(peaks, worth);
  }
}
