package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/**
 * Likelihoods of a light curve from its raw samples: each state's pulse trains folded on the
 * evidence at every phase and stretch, for every brightness that the lamp may have. A lamp may be
 * too faint for these samples, so that a dark recording leaves states that blink possible.
 *
 * @param logs logarithms of the likelihoods in the order of the priors, relative to a dark lamp
 * @param evidence the blinks that the likeliest rhythm and the samples support together
 */
@SuppressWarnings("ArrayRecordComponent") // Made and read once, inside the package.
record LightLikelihoods(double[] logs, Evidence evidence) {
  /** Longer curves are not folded (chosen: a unit's clock wanders, and cost grows). */
  private static final double MOST_SECONDS = 300;

  /** Longer blinks are not told from shadows by folding. */
  static final double LONGEST_BLINK = 0.35;

  /** A sheet whose states take more additions than this is not folded: some seconds. */
  private static final double MOST_WORK = 2e9;

  /** A state that folds in part only may take this much. */
  private static final double MOST_WORK_BESIDE = 1e8;

  /** A blink stands out by itself from this logarithm of its ratio on. */
  private static final double STANDS_OUT = 5;

  /** A blink of a rhythm is shown from this logarithm of its ratio on. */
  private static final double SUPPORTED = -1;

  /** The name of the state that stands for a dark lamp. */
  private static final String DARK = "dark-lamp";

  /** From this probability on a state that cannot be folded is told by blinks that stand out. */
  private static final double CLEAR = 0.9;

  private static final double[] RANDOM_PER_SECOND = {0.1, 0.3, 1, 2};

  /** Fainter lamps (four deviations) show nothing that could be told from uneven noise. */
  private static final int FAINTEST_RANDOM = 3;

  /** Unlisted trains that repeat faster than this are not looked for, seconds. */
  private static final double LEAST_CYCLE = 0.15;

  /** The likelihoods, or empty where blinks found one by one say more or folding cannot tell. */
  static Optional<LightLikelihoods> of(CodeSheet sheet, LightCurve curve, Evidence found) {
    return of(sheet, curve, found, false);
  }

  /**
   * The same where the lights that stand out are shadows' doing and say nothing of a lamp: of the
   * states that cannot be folded only a dark lamp is left.
   */
  static Optional<LightLikelihoods> belowShadows(
      CodeSheet sheet, LightCurve curve, Evidence found) {
    return of(sheet, curve, found, true);
  }

  private static Optional<LightLikelihoods> of(
      CodeSheet sheet, LightCurve curve, Evidence found, boolean shadows) {
    boolean simple =
        found.window().lengthSeconds() <= MOST_SECONDS
            && found.blind().isEmpty()
            && found.pieces().size() == 1;
    if (!simple) {
      return Optional.empty();
    }
    LightSamples samples = LightSamples.of(curve, found.window(), LitSpans.isHeld(curve));
    if (!(samples.noise() > 0) || !(samples.periodSeconds() > 0)) {
      return Optional.empty();
    }
    double blink = sheet.blinkSeconds().orElse(TrainBuilder.USUAL_BLINK);
    LightEvidence light = LightEvidence.of(samples, blink);
    Evidence first = noted(found, alone(light, blink));
    Likelihoods listed = new Likelihoods(sheet, first, curve.marks());
    List<LampState> states = sheet.states();
    boolean[] folds = new boolean[states.size()];
    boolean any = false;
    boolean all = true;
    double work = 0;
    for (int i = 0; i < folds.length; i++) {
      boolean blinks = states.get(i).rhythm() instanceof Rhythm.Blinking;
      folds[i] = blinks && listed.trains(i).stream().allMatch(t -> folds(t, blink));
      work += folds[i] ? work(listed, i, light) : 0;
      any |= folds[i];
      all &= folds[i] || states.get(i).rhythm() instanceof Rhythm.Dark;
    }
    if (!any || work > MOST_WORK) {
      return Optional.empty();
    }
    double[] others = new double[folds.length];
    if (shadows) {
      others = onlyDark(sheet);
    } else if (!all) {
      others = besidesDark(sheet, curve, found);
    }
    if (!all && !shadows && isClear(sheet, others, folds)) {
      return Optional.empty();
    }
    return Optional.of(
        new LightFolds(samples, light, blink, listed, first).likelihoods(folds, others, found));
  }

  /**
   * What the blinks that stand out say of each state, relative to a dark lamp: for the states that
   * cannot be folded as a whole, with steady parts, long lights, or shown once. Each of the two
   * looks at the samples in its own way, and both are likelihood ratios to the same dark lamp, so
   * that the greater one counts.
   */
  private static double[] besidesDark(CodeSheet sheet, LightCurve curve, Evidence found) {
    String name = DARK;
    while (sheet.state(name).isPresent()) {
      name += "-too";
    }
    List<LampState> states = new ArrayList<>(sheet.states());
    states.add(LampState.of(name, new Rhythm.Dark(), "Dark", Condition.OTHER));
    CodeSheet with =
        new CodeSheet(
            sheet.title(),
            sheet.basis(),
            sheet.note(),
            sheet.kinds(),
            sheet.power(),
            sheet.cells(),
            sheet.lamp(),
            sheet.clockTolerance(),
            sheet.blinkSeconds(),
            states);
    double[] logs = new Likelihoods(with, found, curve.marks()).whole();
    int own = sheet.states().size();
    double[] relative = new double[own + 2];
    for (int i = 0; i < relative.length; i++) {
      relative[i] = logs[i < own ? i : i + 1] - logs[own];
    }
    return relative;
  }

  /** How many additions folding a state takes at the most. */
  private static double work(Likelihoods listed, int state, LightEvidence light) {
    int stretches = listed.ways(state).stream().mapToInt(w -> w.stretches().size()).sum();
    return stretches * light.work(listed.trains(state));
  }

  private static double[] onlyDark(CodeSheet sheet) {
    return sheet.states().stream()
        .mapToDouble(s -> s.rhythm() instanceof Rhythm.Dark ? 0 : Double.NEGATIVE_INFINITY)
        .toArray();
  }

  /** Whether the blinks that stand out alone tell a state that cannot be folded. */
  private static boolean isClear(CodeSheet sheet, double[] logs, boolean[] folds) {
    Candidate best = Posterior.candidates(sheet, logs).get(0);
    for (int i = 0; i < folds.length; i++) {
      LampState state = sheet.states().get(i);
      if (state.name().equals(best.state())) {
        return !folds[i] && !(state.rhythm() instanceof Rhythm.Dark) && best.probability() > CLEAR;
      }
    }
    return false;
  }

  private static boolean folds(Train train, double blink) {
    for (int i = 0; i < train.size(); i++) {
      double length = train.length(i);
      if (length > LONGEST_BLINK || length > 2 * blink || length < 0.5 * blink) {
        return false;
      }
    }
    return train.repeats() && train.prelude() == 0;
  }

  /** The same evidence with other blinks. */
  private static Evidence noted(Evidence found, List<Evidence.Note> notes) {
    return new Evidence(
        found.window(),
        notes,
        found.blind(),
        found.settings(),
        found.resolutionSeconds(),
        found.stated(),
        notes.isEmpty() && found.level());
  }

  /** Blinks that stand out by themselves, for the lamp that explains most. */
  private static List<Evidence.Note> alone(LightEvidence light, double blink) {
    List<Evidence.Note> best = List.of();
    double most = 0;
    for (int k = 0; k <= light.brightest(); k++) {
      List<Evidence.Note> notes = new ArrayList<>();
      double sum = 0;
      float[] logs = light.logRatios()[k];
      int near = Math.max(2, (int) Math.rint(1.5 * blink / light.stepSeconds()));
      for (int g = 0; g < logs.length; g++) {
        if (logs[g] > STANDS_OUT && isPeak(logs, g, near)) {
          double on = light.seconds(g);
          notes.add(new Evidence.Note(on, on + blink, false, false, 0.98));
          sum += logs[g] - STANDS_OUT;
        }
      }
      if (sum > most) {
        most = sum;
        best = notes;
      }
    }
    return best;
  }

  private static boolean isPeak(float[] logs, int place, int near) {
    for (int g = Math.max(0, place - near); g <= Math.min(logs.length - 1, place + near); g++) {
      if (logs[g] > logs[place] || (logs[g] == logs[place] && g < place)) {
        return false;
      }
    }
    return true;
  }

  /** Folds the trains of all candidates on one evidence. */
  private static final class LightFolds {
    private final LightSamples samples;
    private final LightEvidence light;
    private final double blink;
    private final Likelihoods listed;
    private final Evidence first;
    private final float[] woven;
    private double best;
    private Optional<Best> how = Optional.empty();

    /** The train and its fold that explain most, and the grid's place where the train starts. */
    private record Best(Train train, Folded fold, int start) {}

    LightFolds(
        LightSamples samples,
        LightEvidence light,
        double blink,
        Likelihoods listed,
        Evidence first) {
      this.samples = samples;
      this.light = light;
      this.blink = blink;
      this.listed = listed;
      this.first = first;
      woven = light.woven();
    }

    /**
     * All candidates.
     *
     * @param folds which states are folded
     * @param others logarithms of the likelihoods of the others
     * @param found the blinks that were found one by one
     */
    LightLikelihoods likelihoods(boolean[] folds, double[] others, Evidence found) {
      int states = folds.length;
      double[] logs = new double[states + 2];
      for (int i = 0; i < states; i++) {
        boolean part = !folds[i] && work(listed, i, light) <= MOST_WORK_BESIDE;
        logs[i] = folds[i] ? ofState(i) : part ? Math.max(others[i], ofState(i)) : others[i];
      }
      double unlisted = Math.log(0.05);
      for (FreeRhythms free : listed.unlisted(first, logs)) {
        if (folds(free.train(), blink) && free.train().cycleSeconds() > LEAST_CYCLE) {
          double log = folded(free.train(), first.window());
          Noise noise = first.settings().get(first.settings().size() / 2);
          unlisted = Gauss.logAdd(unlisted, free.logWeight(noise) + log);
        }
      }
      logs[states] = unlisted;
      logs[states + 1] = noRhythm();
      if (how.isPresent() && isBeat(how.get())) {
        // Nothing can be said of a lamp below a beat: all are as likely as a dark one.
        return new LightLikelihoods(new double[states + 2], noted(found, List.of()));
      }
      return new LightLikelihoods(
          logs, noted(found, how.map(this::supported).orElse(first.notes())));
    }

    private boolean isBeat(Best most) {
      double start = light.seconds(most.start());
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
                    folded(
                        train.repeats() ? train : train.onceIn(stretch.lengthSeconds()), stretch);
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

    /** The blinks of a cycle that can be folded; the others say nothing either way. */
    private Train foldable(Train train) {
      return folds(train, blink)
          ? train
          : train.only(0.5 * blink, Math.min(2 * blink, LONGEST_BLINK));
    }

    /** The mean over brightness; one that is brighter than any sample explains nothing. */
    private double folded(Train train, Window stretch) {
      int size = light.logRatios()[0].length;
      int lamps = light.brightest() + 1;
      int from = place(stretch.fromSeconds() - blink, size);
      int to = place(stretch.toSeconds(), size);
      Folded fold = Folded.of(train, woven, lamps, light.stepSeconds(), from, to);
      double score = train.logWeight() + fold.best();
      if (score > best || (score == best && isSooner(train, fold.lamp()))) {
        best = score;
        how = Optional.of(new Best(train, fold, fold.start() + from));
      }
      return fold.logMean() + Math.log(lamps / (double) LightEvidence.LAMPS);
    }

    /** Of two that explain as much, the same whatever the order of the states is. */
    private boolean isSooner(Train train, int lamp) {
      if (how.isEmpty()) {
        return false;
      }
      Best other = how.get();
      int cycles = Double.compare(train.cycleSeconds(), other.train().cycleSeconds());
      int sizes = Integer.compare(train.size(), other.train().size());
      return cycles < 0
          || (cycles == 0 && (sizes < 0 || (sizes == 0 && lamp < other.fold().lamp())));
    }

    private int place(double seconds, int size) {
      double place = Math.rint((seconds - light.fromSeconds()) / light.stepSeconds());
      return (int) Math.max(0, Math.min(size, place));
    }

    /** Blinks in no order, summed over all that do not share samples. */
    private double noRhythm() {
      double sum = Double.NEGATIVE_INFINITY;
      for (int k = 0; k <= light.brightest(); k++) {
        for (double rate : RANDOM_PER_SECOND) {
          boolean seen = k >= FAINTEST_RANDOM;
          double chance = rate * light.stepSeconds();
          sum = Gauss.logAdd(sum, seen ? random(light.logRatios()[k], chance) : 0);
        }
      }
      return sum - Math.log(LightEvidence.LAMPS * RANDOM_PER_SECOND.length);
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
      float[] logs = light.logRatios()[most.fold().lamp()];
      double cycle = most.train().cycleSeconds() * most.fold().stretch() / light.stepSeconds();
      int cycles = (int) Math.ceil(logs.length / cycle) + 1;
      for (int k = -1; k <= cycles; k++) {
        for (int pulse = 0; pulse < most.train().size(); pulse++) {
          double offset = most.train().on(pulse) * most.fold().stretch() / light.stepSeconds();
          double at = most.start() + k * cycle + offset;
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
}
