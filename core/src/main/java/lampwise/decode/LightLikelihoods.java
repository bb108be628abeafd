package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
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
  /**
   * Longer curves are folded in parts (chosen: a unit's clock wanders, and the cost of a part grows
   * with the square of its length).
   */
  private static final double WHOLE_SECONDS = 300;

  private static final double PART_SECONDS = 100;

  /** Longer ones are not folded: some seconds. */
  static final double MOST_SECONDS = 900;

  /** A sheet whose states take more additions than this is not folded: some seconds. */
  private static final double MOST_WORK = 2e9;

  /** A blink stands out by itself from this logarithm of its ratio on. */
  private static final double STANDS_OUT = 5;

  /** The name of the state that stands for a dark lamp. */
  private static final String DARK = "dark-lamp";

  /** From this probability on a state that cannot be folded is told by blinks that stand out. */
  private static final double CLEAR = 0.9;

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
    double length = found.window().lengthSeconds();
    int parts = length > WHOLE_SECONDS ? (int) Math.ceil(length / PART_SECONDS) : 1;
    if (length > MOST_SECONDS || !found.blind().isEmpty() || found.pieces().size() != 1) {
      return Optional.empty();
    }
    if (parts == 1) {
      return ofPart(sheet, curve, found, shadows);
    }
    double[] logs = new double[sheet.states().size() + 2];
    List<Evidence.Note> notes = new ArrayList<>();
    double apart = 0;
    for (int i = 0; i < parts; i++) {
      double from = found.window().fromSeconds() + i * length / parts;
      double to =
          i + 1 < parts
              ? found.window().fromSeconds() + (i + 1) * length / parts
              : found.window().toSeconds();
      Optional<LightLikelihoods> part = ofPart(sheet, curve, found.within(from, to), shadows);
      if (part.isEmpty()) {
        return Optional.empty();
      }
      for (int k = 0; k < logs.length; k++) {
        logs[k] += part.get().logs()[k];
      }
      notes.addAll(part.get().evidence().notes());
      apart += all(sheet, part.get().logs());
    }
    // Where each part by itself is likelier, the state changes, for which blinks are looked at.
    return apart > all(sheet, logs)
        ? Optional.empty()
        : Optional.of(new LightLikelihoods(logs, found.with(notes)));
  }

  /** Logarithm of the likelihood, all candidates together. */
  private static double all(CodeSheet sheet, double[] logs) {
    double[] priors = Posterior.priors(sheet);
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      sum = Gauss.logAdd(sum, Math.log(priors[i]) + logs[i]);
    }
    return sum;
  }

  private static Optional<LightLikelihoods> ofPart(
      CodeSheet sheet, LightCurve curve, Evidence found, boolean shadows) {
    LightSamples samples = LightSamples.of(curve, found.window(), LitSpans.isHeld(curve));
    if (!(samples.noise() > 0) || !(samples.periodSeconds() > 0)) {
      return Optional.empty();
    }
    double blink = sheet.blinkSeconds().orElse(TrainBuilder.USUAL_BLINK);
    LightEvidence light = LightEvidence.of(samples, blink);
    Evidence first = found.with(FaintBlinks.of(light, blink, STANDS_OUT).notes());
    Likelihoods listed = new Likelihoods(sheet, first, curve.marks());
    List<LampState> states = sheet.states();
    boolean[] folds = new boolean[states.size()];
    boolean[] dark = new boolean[states.size()];
    boolean any = false;
    boolean all = true;
    double work = 0;
    for (int i = 0; i < folds.length; i++) {
      boolean blinks = states.get(i).rhythm() instanceof Rhythm.Blinking;
      folds[i] = blinks && listed.trains(i).stream().allMatch(t -> LightFolds.folds(t, blink));
      work += folds[i] ? work(listed, i, light) : 0;
      any |= folds[i];
      dark[i] = states.get(i).rhythm() instanceof Rhythm.Dark;
      all &= folds[i] || dark[i];
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
        new LightFolds(samples, light, blink, listed, first)
            .likelihoods(folds, dark, others, found));
  }

  /**
   * What the blinks that stand out say of each state, relative to a dark lamp: for the states that
   * cannot be folded as a whole, with steady parts, long lights, or shown once. Beside a dark lamp
   * the room's light may have been switched. Each of the two looks at the samples in its own way,
   * and both are likelihood ratios to the same dark lamp, so that the greater one counts.
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
    double dark = Gauss.logAdd(logs[own], RoomLight.logLikelihood(found)) - Math.log(2);
    double[] relative = new double[own + 2];
    for (int i = 0; i < relative.length; i++) {
      relative[i] = logs[i < own ? i : i + 1] - dark;
    }
    return relative;
  }

  /** How many additions folding a state takes at the most. */
  static double work(Likelihoods listed, int state, LightEvidence light) {
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
    int number = Posterior.number(sheet, best.state());
    return number < folds.length
        && !folds[number]
        && !(sheet.states().get(number).rhythm() instanceof Rhythm.Dark)
        && best.probability() > CLEAR;
  }
}
