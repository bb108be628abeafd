package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Window;

/** Folds the trains of all candidates on one evidence. */
final class LightFolds {
  /** A state that folds in part only may take this much. */
  private static final double MOST_WORK_BESIDE = 1e8;

  /** Longer blinks are not told from shadows by folding. */
  static final double LONGEST_BLINK = 0.35;

  /** A blink of a rhythm is shown from this logarithm of its ratio on. */
  private static final double SUPPORTED = -1;

  /**
   * One dark lamp in ten is before noise that keeps to no model, and does as much as a lamp, up to
   * a likelihood of a thousand (chosen: of a thousand curves in which nothing blinks none is to be
   * read).
   */
  private static final double LOG_UNEVEN = Math.log(0.1);

  private static final double LOG_MOST_UNEVEN = Math.log(1000);

  private static final double[] RANDOM_PER_SECOND = {0.1, 0.3, 1, 2};

  /**
   * Fainter lamps (four deviations) show nothing that could be told from uneven noise, unless it
   * comes again.
   */
  private static final int FAINTEST_ONCE = 3;

  /** The same (1.6 deviations) where a train repeats within the baseline, which colours noise. */
  private static final int FAINTEST_DENSE = 1;

  /** Unlisted trains that repeat faster than this are not looked for, seconds. */
  private static final double LEAST_CYCLE = 0.15;

  private final LightSamples samples;
  private final LightEvidence light;
  private final double blink;
  private final Likelihoods listed;
  private final Evidence first;
  private double best;
  private Optional<Best> how = Optional.empty();

  /** The logarithm of what the best train explains. */
  private double explained = Double.NEGATIVE_INFINITY;

  /** The train, its fold and the lamp that explain most. */
  private record Best(Train train, Folded fold, int lamp) {}

  LightFolds(
      LightSamples samples, LightEvidence light, double blink, Likelihoods listed, Evidence first) {
    this.samples = samples;
    this.light = light;
    this.blink = blink;
    this.listed = listed;
    this.first = first;
  }

  /**
   * All candidates.
   *
   * @param folds which states are folded
   * @param dark which states are a dark lamp
   * @param others logarithms of the likelihoods of the others
   * @param found the blinks that were found one by one
   */
  LightLikelihoods likelihoods(boolean[] folds, boolean[] dark, double[] others, Evidence found) {
    int states = folds.length;
    double[] logs = new double[states + 2];
    for (int i = 0; i < states; i++) {
      boolean part = !folds[i] && LightLikelihoods.work(listed, i, light) <= MOST_WORK_BESIDE;
      logs[i] = folds[i] ? ofState(i) : part ? Math.max(others[i], ofState(i)) : others[i];
    }
    double uneven = LOG_UNEVEN + Math.min(explained, LOG_MOST_UNEVEN);
    for (int i = 0; i < states; i++) {
      logs[i] = dark[i] ? Gauss.logAdd(logs[i], uneven) : logs[i];
    }
    double unlisted = Math.log(0.05);
    for (FreeRhythms free : listed.unlisted(first, logs)) {
      if (canFold(free.train())) {
        unlisted = Gauss.logAdd(unlisted, ofFree(free));
      }
    }
    Optional<FreeRhythms> second = how.flatMap(this::secondBlink);
    if (second.isPresent()) {
      unlisted = Gauss.logAdd(unlisted, ofFree(second.get()));
    }
    logs[states] = unlisted;
    logs[states + 1] = noRhythm();
    if (how.isPresent() && isBeat(how.get())) {
      // Nothing can be said of a lamp below a beat: all are as likely as a dark one.
      return new LightLikelihoods(new double[states + 2], found.with(List.of()));
    }
    return new LightLikelihoods(logs, found.with(how.map(this::supported).orElse(first.notes())));
  }

  private double ofFree(FreeRhythms free) {
    Noise noise = first.settings().get(first.settings().size() / 2);
    return free.logWeight(noise) + folded(free.train(), first.window(), 0);
  }

  /** Whether an unlisted train can be folded: blinks that share samples would count twice. */
  private boolean canFold(Train train) {
    return folds(train, blink)
        && train.cycleSeconds() > LEAST_CYCLE
        && (train.size() == 1 || TooFast.apartSeconds(train) > sharedSeconds());
  }

  private double sharedSeconds() {
    return blink + LightEvidence.AVERAGED * samples.periodSeconds();
  }

  private Optional<FreeRhythms> secondBlink(Best most) {
    float[] logs = light.logRatios()[most.lamp()];
    return most.train().size() == 1
        ? SecondBlink.of(logs, light.stepSeconds(), most.train(), most.fold(), sharedSeconds())
        : Optional.empty();
  }

  private boolean isBeat(Best most) {
    double start = light.seconds(most.fold().startSeconds());
    return Beat.fitsBetter(samples, most.train(), start, most.fold().stretch(), blink);
  }

  private double ofState(int number) {
    double sum = Double.NEGATIVE_INFINITY;
    for (Visibility way : listed.ways(number)) {
      if (way.probability() > 0) {
        double log = Math.log(way.probability());
        if (!way.stretches().isEmpty()) {
          double trains = Double.NEGATIVE_INFINITY;
          for (Train whole : listed.trains(number)) {
            Train train = foldable(whole);
            if (train.size() == 0) {
              continue;
            }
            double shown = train.logWeight();
            for (Window stretch : way.stretches()) {
              shown +=
                  train.repeats()
                      ? folded(train, stretch, 0)
                      : folded(train.onceIn(stretch.lengthSeconds()), stretch, FAINTEST_ONCE);
            }
            trains = Gauss.logAdd(trains, shown);
          }
          log += trains;
        }
        sum = Gauss.logAdd(sum, log);
      }
    }
    return sum;
  }

  /** Whether all blinks of a train can be folded. */
  static boolean folds(Train train, double blink) {
    for (int i = 0; i < train.size(); i++) {
      double length = train.length(i);
      if (length > LONGEST_BLINK || length > 2 * blink || length < 0.5 * blink) {
        return false;
      }
    }
    return train.repeats() && train.prelude() == 0;
  }

  /** The blinks of a cycle that can be folded; the others say nothing either way. */
  private Train foldable(Train train) {
    return folds(train, blink)
        ? train
        : train.only(0.5 * blink, Math.min(2 * blink, LONGEST_BLINK));
  }

  /**
   * Summed over brightness; one that is brighter than any sample explains nothing. Lamps that are
   * not told from uneven noise may speak against the train, but not for it.
   *
   * @param least the number of the faintest lamp that is told
   */
  private double folded(Train train, Window stretch, int least) {
    boolean dense = train.cycleSeconds() * train.low() < LightSamples.BASELINE_SECONDS;
    int told = Math.max(light.told(), dense ? Math.max(least, FAINTEST_DENSE) : least);
    int size = light.size();
    int from = place(stretch.fromSeconds() - blink, size);
    int to = place(stretch.toSeconds(), size);
    double sum = Double.NEGATIVE_INFINITY;
    for (int k = light.faintest(); k <= light.brightest(); k++) {
      Folded fold = Folded.of(train, light.logRatios()[k], light.stepSeconds(), from, to);
      double log = light.louder().given(fold.logMean(), fold.best());
      if (k < told) {
        sum = Gauss.logAdd(sum, Math.min(0, log));
        continue;
      }
      sum = Gauss.logAdd(sum, log);
      double score = train.logWeight() + fold.best();
      if (score > best || (score == best && isSooner(train, k))) {
        best = score;
        Folded placed =
            new Folded(fold.logMean(), fold.best(), fold.startSeconds() + from, fold.stretch());
        how = Optional.of(new Best(train, placed, k));
      }
    }
    sum -= Math.log(light.lamps());
    explained = Math.max(explained, train.logWeight() + sum);
    return sum;
  }

  /** Of two that explain as much, the same whatever the order of the states is. */
  private boolean isSooner(Train train, int lamp) {
    if (how.isEmpty()) {
      return false;
    }
    Best other = how.get();
    int cycles = Double.compare(train.cycleSeconds(), other.train().cycleSeconds());
    int sizes = Integer.compare(train.size(), other.train().size());
    return cycles < 0 || (cycles == 0 && (sizes < 0 || (sizes == 0 && lamp < other.lamp())));
  }

  private int place(double seconds, int size) {
    double place = Math.rint((seconds - light.fromSeconds()) / light.stepSeconds());
    return (int) Math.max(0, Math.min(size, place));
  }

  /** Blinks in no order, summed over all that do not share samples. */
  private double noRhythm() {
    double sum = Double.NEGATIVE_INFINITY;
    for (int k = light.faintest(); k <= light.brightest(); k++) {
      for (double rate : RANDOM_PER_SECOND) {
        boolean seen = k >= FAINTEST_ONCE;
        double chance = rate * light.stepSeconds();
        double log = seen ? random(light.logRatios()[k], chance) : 0;
        sum = Gauss.logAdd(sum, light.louder().given(log, log));
      }
    }
    return sum - Math.log(light.lamps() * RANDOM_PER_SECOND.length);
  }

  /** A blink that ends the sum so far follows one that had ended, with its samples, before. */
  private double random(float[] logs, double chance) {
    double[] sums = new double[logs.length + 1];
    double logChance = Math.log(chance);
    double logNone = Math.log1p(-chance);
    for (int g = 0; g < logs.length; g++) {
      double without = sums[g] + logNone;
      double with = sums[Math.max(0, g + 1 - light.reach())] + logChance + logs[g];
      double most = Math.max(without, with);
      double less = Math.min(without, with) - most;
      sums[g + 1] = less < -20 ? most : most + Math.log1p(Math.exp(less));
    }
    return sums[logs.length];
  }

  /** The blinks of the best fold that the samples do not speak against. */
  private List<Evidence.Note> supported(Best most) {
    List<Evidence.Note> notes = new ArrayList<>();
    float[] logs = light.logRatios()[most.lamp()];
    double cycle = most.train().cycleSeconds() * most.fold().stretch() / light.stepSeconds();
    int cycles = (int) Math.ceil(logs.length / cycle) + 1;
    for (int k = -1; k <= cycles; k++) {
      for (int pulse = 0; pulse < most.train().size(); pulse++) {
        double offset = most.train().on(pulse) * most.fold().stretch() / light.stepSeconds();
        double at = most.fold().startSeconds() + k * cycle + offset;
        int g = (int) Math.rint(at);
        double on = Math.max(light.seconds(at), first.window().fromSeconds());
        boolean inside = g >= 0 && g < logs.length && on < first.window().toSeconds();
        if (inside && logs[g] > SUPPORTED) {
          double ratio = Math.exp(Math.min(50, logs[g]));
          notes.add(new Evidence.Note(on, on + blink, false, false, ratio / (ratio + 0.05)));
        }
      }
    }
    notes.sort((a, b) -> Double.compare(a.on(), b.on()));
    return notes;
  }
}
