package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwise.rhythm.Limits;

/**
 * Rhythms that no sheet lists: one to ten blinks a cycle in one or two groups, with broad priors
 * ({@link FreeShares}). The recording proposes the values; each proposal is weighed by the part of
 * the prior that it uses up.
 *
 * @param train the proposed train
 * @param logDensity logarithm of the prior density of its durations (but for the cycle, whose share
 *     is in the train's weight), per second each
 * @param durations how many durations that is
 * @param repeats how often each of them was seen
 */
record FreeRhythms(Train train, double logDensity, int durations, int repeats) {
  /** Of so few blinks single ones of every period that a sheet can have are looked at. */
  private static final int FEW_FOR_SINGLES = 5;

  /** Of so few blinks each is tried as a stray that hides what the others show. */
  private static final int MOST_FOR_STRAYS = 9;

  /** Fewer show too little without one of them. */
  private static final int LEAST_FOR_STRAYS = 5;

  /** How many cycles found by folding are looked at. */
  private static final int FOLDED = 3;

  /** A pause that was measured this often is known well enough to be told from a spacing. */
  private static final int KNOWN_REPEATS = 6;

  /** It may come out so much shorter than one all the same. */
  private static final double NO_PAUSE = 0.8 * Limits.PAUSE_RATIO_LEAST;

  /**
   * Where blinks follow each other faster than this, on average, they may be too fast to tell
   * apart.
   */
  private static final double DENSE_SECONDS = 1;

  /** So many of them may have been missed. */
  private static final double MOST_MISSED = 0.2;

  /** Gaps that differ by less than this part of a step of the times are the same; a step is not. */
  private static final double SAME_GAP = 0.99;

  /** Spacings that differ by less than this many timing errors are on one peak. */
  private static final double SAME_PEAK = 4;

  /** How far the stretch of a proposed train reaches to either side. */
  private static final double STRETCH = 0.08;

  /**
   * Logarithm of its prior weight under this noise (Laplace's approximation; a spacing is the
   * difference of two times).
   */
  double logWeight(Noise noise) {
    double cell = Math.sqrt(4 * Math.PI / Math.max(1, repeats)) * noise.sd();
    double log = train.logWeight(noise) + logDensity + durations * Math.log(cell);
    // What was noted nearer than a lamp can blink may lie as far apart as that all the same.
    double z = (leastApart(noise) - Limits.APART_LEAST_SECONDS) / (cell / Math.sqrt(2 * Math.PI));
    return log + Math.log(Math.max(Gauss.cumulative(z), Double.MIN_NORMAL));
  }

  /** The least spacing that was fitted; endless if none was. */
  private double leastApart(Noise noise) {
    double least = Double.POSITIVE_INFINITY;
    Train noted = train(noise);
    for (int i = 1; durations > 0 && i < noted.size(); i++) {
      least = Math.min(least, noted.on(i) - noted.on(i - 1));
    }
    return least;
  }

  /**
   * The train under this noise: spacings that were seen are those that were noted, late first
   * blinks included.
   */
  Train train(Noise noise) {
    return durations > 0 && noise.firstLate() > 0 ? train.notedLate(noise.firstLate()) : train;
  }

  /** Whether another proposal lies on the same peak of the likelihood, so that one counts. */
  boolean isBeside(FreeRhythms other, double sd) {
    boolean same =
        durations > 0
            && durations == other.durations
            && train.size() == other.train.size()
            && train.repeats() == other.train.repeats()
            && (!train.repeats()
                || Math.abs(Math.log(train.cycleSeconds() / other.train.cycleSeconds())) < STRETCH);
    for (int i = 1; same && i < train.size(); i++) {
      double apart = train.on(i) - train.on(i - 1) - other.train.on(i) + other.train.on(i - 1);
      same = Math.abs(apart) < SAME_PEAK * sd;
    }
    return same;
  }

  /** The rhythms that a recording proposes. */
  static List<FreeRhythms> propose(Evidence evidence) {
    double[] starts = evidence.starts();
    double share = logLengthShare(evidence);
    List<FreeRhythms> proposals = new ArrayList<>();
    if (starts.length <= FEW_FOR_SINGLES) {
      singles(evidence, share, proposals);
    }
    if (starts.length <= 3) {
      once(evidence, starts, share, proposals);
    }
    if (starts.length >= 2 && starts.length <= FreeShares.MOST_BLINKS) {
      oneCycle(evidence, share, proposals);
    }
    List<Evidence> others = withoutOne(evidence);
    others.forEach(rest -> oneCycle(rest, share, proposals));
    if (starts.length >= 3) {
      double[] length = {SeenLengths.middle(evidence.notes())};
      boolean few = starts.length <= FEW_FOR_SINGLES;
      List<Double> cycles =
          singleCycles(starts).stream()
              .filter(cycle -> !few || cycle > Limits.CYCLE_MOST_SECONDS)
              .toList();
      for (double cycle : cycles) {
        propose(evidence, share, cycle, new double[] {cycle}, length, 1, proposals);
      }
      for (SeenCycle seen : seen(evidence, others)) {
        if (seen.gaps().length == 1 && (few || isNear(seen.seconds(), cycles))) {
          continue;
        }
        propose(
            evidence,
            share,
            seen.seconds(),
            seen.gaps(),
            seen.lengths(),
            seen.repeats(),
            proposals);
      }
    }
    return proposals;
  }

  /** The cycles found by folding a recording and by cutting it, and others like it, into bursts. */
  private static List<SeenCycle> seen(Evidence evidence, List<Evidence> others) {
    List<SeenCycle> seen = new ArrayList<>(SeenCycle.of(evidence, FreeShares.MOST_BLINKS, FOLDED));
    Stream.concat(Stream.of(evidence), others.stream())
        .flatMap(each -> SeenBursts.of(each, FreeShares.MOST_BLINKS).stream())
        .forEach(
            cut -> {
              if (seen.stream().noneMatch(cut::isLike)) {
                seen.add(cut);
              }
            });
    return seen;
  }

  /** A short recording without each of its blinks in turn, for one of them may be a stray. */
  private static List<Evidence> withoutOne(Evidence evidence) {
    int count = evidence.notes().size();
    return count >= LEAST_FOR_STRAYS && count <= MOST_FOR_STRAYS
        ? evidence.withoutEach()
        : List.of();
  }

  /** Single blinks of every period, for recordings too short to propose one. */
  private static void singles(Evidence evidence, double lengthShare, List<FreeRhythms> proposals) {
    Choices cycles = Choices.grid(FreeShares.LEAST_CYCLE, Limits.CYCLE_MOST_SECONDS, 0.54);
    double widen = Math.exp(cycles.half());
    for (Choices.Value value : cycles.values()) {
      double cycle = value.seconds();
      double logWeight =
          FreeShares.logOneGroup(1)
              + FreeShares.logCycle(value.seconds(), FreeShares.LEAST_CYCLE, 2 * cycles.half());
      Train train =
          new Train(
              new double[] {0},
              new double[] {SeenLengths.middle(evidence.notes())},
              0,
              cycle,
              1 / widen,
              widen,
              logWeight + lengthShare);
      proposals.add(new FreeRhythms(train, 0, 0, 1));
    }
  }

  /** The blinks of a short recording as the one cycle of it that was seen, of every length. */
  private static void oneCycle(Evidence evidence, double lengthShare, List<FreeRhythms> proposals) {
    double[] starts = evidence.starts();
    int count = starts.length;
    double whole = starts[count - 1] - starts[0];
    double window = evidence.window().lengthSeconds();
    double least = Math.max(whole + 1.5 * whole / (count - 1), 0.5 * window);
    double dark =
        Math.max(
            starts[0] - evidence.window().fromSeconds(),
            evidence.window().toSeconds() - starts[count - 1]);
    // Without a dark beside them nothing says that the blinks are a group.
    if (dark < 1.5 * whole / (count - 1) || least > 0.9 * Limits.CYCLE_MOST_SECONDS) {
      return;
    }
    Choices cycles = Choices.grid(least, Limits.CYCLE_MOST_SECONDS, 2 * STRETCH);
    // The cells are wider than a train stretches.
    double share = lengthShare + Math.log(cycles.half() / STRETCH);
    double[] gaps = new double[count];
    double[] lengths = new double[count];
    for (int i = 0; i < count; i++) {
      gaps[i] = i + 1 < count ? starts[i + 1] - starts[i] : Double.NaN;
      lengths[i] = evidence.notes().get(i).length();
    }
    for (Choices.Value cycle : cycles.values()) {
      gaps[count - 1] = cycle.seconds() - whole;
      propose(evidence, share, cycle.seconds(), gaps, lengths, 1, proposals);
    }
  }

  /** The blinks of a short recording as one show that does not repeat. */
  private static void once(
      Evidence evidence, double[] starts, double lengthShare, List<FreeRhythms> proposals) {
    if (starts.length == 0) {
      return;
    }
    double[] on = new double[starts.length];
    double[] lengths = new double[starts.length];
    double logDensity = 0;
    for (int i = 0; i < on.length; i++) {
      on[i] =
          i == 0 ? 0 : on[i - 1] + Math.max(starts[i] - starts[i - 1], Limits.APART_LEAST_SECONDS);
      lengths[i] = evidence.notes().get(i).length();
      logDensity += i > 0 ? FreeShares.logSpacing(on[i] - on[i - 1]) : 0;
    }
    double logWeight = FreeShares.logOnce(starts.length) + lengthShare;
    Train train = new Train(on, lengths, 0, 0, 1 - STRETCH, 1 + STRETCH, logWeight);
    proposals.add(new FreeRhythms(train, logDensity, on.length - 1, 1));
  }

  private static boolean isNear(double cycle, List<Double> cycles) {
    return cycles.stream().anyMatch(c -> Math.abs(c - cycle) < STRETCH * cycle);
  }

  /** Cycles of single blinks: common gaps, and where blinks come fast first of all the mean gap. */
  private static List<Double> singleCycles(double[] starts) {
    List<Double> all = new ArrayList<>();
    double mean = (starts[starts.length - 1] - starts[0]) / (starts.length - 1);
    if (mean < DENSE_SECONDS) {
      for (double missed = 0; missed < MOST_MISSED; missed += 2 * STRETCH) {
        all.add((1 - missed) * mean);
      }
    }
    all.addAll(Intervals.common(starts, 1, 2));
    List<Double> cycles = new ArrayList<>();
    for (double cycle : all) {
      if (!isNear(cycle, cycles)) {
        cycles.add(cycle);
      }
    }
    return cycles;
  }

  /**
   * Proposes a cycle as one group of blinks and as two.
   *
   * @param share logarithm of the share of the prior that its lengths, and what it stands for, take
   */
  private static void propose(
      Evidence evidence,
      double share,
      double cycle,
      double[] gaps,
      double[] lengths,
      int repeats,
      List<FreeRhythms> proposals) {
    int count = gaps.length;
    if (count == 1) {
      double single =
          share
              + FreeShares.logOneGroup(1)
              + FreeShares.logCycle(cycle, FreeShares.LEAST_CYCLE, 2 * STRETCH);
      proposals.add(new FreeRhythms(train(new double[] {0}, lengths, cycle, single), 0, 0, 1));
      return;
    }
    double widest = Arrays.stream(gaps).max().orElse(0);
    double narrowest = Arrays.stream(gaps).min().orElse(0);
    if (widest - narrowest < SAME_GAP * evidence.resolutionSeconds()) {
      // Single blinks, as far as this recording can tell.
      return;
    }
    double mean = Arrays.stream(gaps, 0, count - 1).average().orElse(cycle);
    if (isNone(gaps[count - 1], mean, repeats)) {
      // A constant rate, as far as its prior goes.
      return;
    }
    double[] even = new double[count];
    for (int i = 1; i < count; i++) {
      even[i] = i * mean;
    }
    double one =
        share
            + FreeShares.logOneGroup(count)
            + FreeShares.logCycle(cycle, even[count - 1], 2 * STRETCH);
    proposals.add(
        new FreeRhythms(
            train(even, lengths, cycle, one + FreeShares.OFF_BEAT),
            FreeShares.logSpacing(mean),
            1,
            repeats * (count - 1)));
    onBeat(lengths, cycle, mean, count, one).ifPresent(proposals::add);
    if (count > 2) {
      twoGroups(gaps, lengths, cycle, share, repeats, proposals);
    }
  }

  /** An even group whose cycle is a whole number of spacings, if it is near one. */
  private static Optional<FreeRhythms> onBeat(
      double[] lengths, double cycle, double mean, int count, double logWeight) {
    long beats = Math.round(cycle / mean);
    long leftOut = beats - count;
    if (leftOut < 1
        || leftOut > FreeShares.MOST_LEFT_OUT
        || Math.abs(cycle - beats * mean) > 0.2 * mean) {
      return Optional.empty();
    }
    double[] on = new double[count];
    for (int i = 1; i < count; i++) {
      on[i] = i * cycle / beats;
    }
    double share = logWeight + FreeShares.ON_BEAT;
    return Optional.of(new FreeRhythms(train(on, lengths, cycle, share), 0, 0, 1));
  }

  /**
   * Two groups, cut at the largest gap inside the cycle, if that is a pause: both with the same
   * spacing, and, where each has one, each with its own.
   */
  private static void twoGroups(
      double[] gaps,
      double[] lengths,
      double cycle,
      double share,
      int repeats,
      List<FreeRhythms> proposals) {
    int count = gaps.length;
    int cut = 0;
    for (int i = 1; i < count - 1; i++) {
      cut = gaps[i] > gaps[cut] ? i : cut;
    }
    double all = Arrays.stream(gaps, 0, count - 1).sum();
    double usual = (all - gaps[cut]) / (count - 2);
    if (isNone(gaps[cut], usual, repeats)) {
      return;
    }
    double logPause = FreeShares.logPause(gaps[cut]);
    boolean two = cut > 0 && cut < count - 2;
    double[] on = groups(count, cut, gaps[cut], usual, usual);
    double logWeight =
        share + FreeShares.TWO_GROUPS + FreeShares.logCycle(cycle, on[count - 1], 2 * STRETCH);
    double logHalf = two ? logWeight + Math.log(0.5) : logWeight;
    proposals.add(
        new FreeRhythms(
            train(on, lengths, cycle, logHalf),
            logPause + FreeShares.logSpacing(usual),
            2,
            repeats));
    if (two) {
      double first = Arrays.stream(gaps, 0, cut).average().orElse(usual);
      double second = Arrays.stream(gaps, cut + 1, count - 1).average().orElse(usual);
      double[] apart = groups(count, cut, gaps[cut], first, second);
      double logDensity = logPause + FreeShares.logSpacing(first) + FreeShares.logSpacing(second);
      proposals.add(new FreeRhythms(train(apart, lengths, cycle, logHalf), logDensity, 3, repeats));
    }
  }

  /** Whether what would be a pause is a spacing like the others. */
  private static boolean isNone(double pause, double spacing, int repeats) {
    return repeats >= KNOWN_REPEATS && pause < NO_PAUSE * spacing;
  }

  /** The starts of the blinks of two groups with these spacings, a pause after the cut. */
  private static double[] groups(int count, int cut, double pause, double first, double second) {
    double[] on = new double[count];
    for (int i = 1; i < count; i++) {
      on[i] = on[i - 1] + (i - 1 == cut ? pause : i - 1 < cut ? first : second);
    }
    return on;
  }

  private static Train train(double[] on, double[] lengths, double cycle, double logWeight) {
    double whole = Math.max(cycle, on[on.length - 1] + 0.02);
    return new Train(on, lengths, 0, whole, 1 - STRETCH, 1 + STRETCH, logWeight).measured();
  }

  private static double logLengthShare(Evidence evidence) {
    int kinds = Double.isNaN(SeenLengths.of(evidence.notes()).longer()) ? 1 : 2;
    return evidence.hasLengths() ? kinds * SeenLengths.LOG_SHARE : 0;
  }
}
