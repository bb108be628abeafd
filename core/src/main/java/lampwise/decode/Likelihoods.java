package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** The likelihood of one recording, or of a stretch of it, under each candidate. */
final class Likelihoods {
  /** Chance that a person who watches a steady lamp writes down nothing at all. */
  private static final double STEADY_UNNOTED = 0.01;

  /** Chance that a unit at rest does not show that it sees a target. */
  private static final double UNANSWERED = 0.1;

  /** A light that begins or ends this near to the border of a stretch fills it. */
  private static final double LATE_SECONDS = 1;

  /** Rates of blinks without rhythm, per second: even in the logarithm between these. */
  private static final double LEAST_RATE = 0.05;

  private static final double MOST_RATE = 3;
  private static final int RATES = 24;

  /** Recordings with more blinks than this are tried on their beginning first. */
  private static final int MANY_BLINKS = 100;

  /** Candidates this far below the best one (natural logarithm) are not looked at more closely. */
  private static final double HOPELESS = 20;

  private final CodeSheet sheet;
  private final Evidence evidence;
  private final List<List<Train>> trains;
  private final List<List<Visibility>> ways;
  private final boolean answers;

  /** Prepares the likelihoods of a recording: a unit at rest shows that it sees a target. */
  Likelihoods(CodeSheet sheet, Evidence evidence, Marks marks) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.trains = new ArrayList<>();
    this.ways = new ArrayList<>();
    this.answers = true;
    for (LampState state : sheet.states()) {
      trains.add(
          state.rhythm() instanceof Rhythm.Blinking blinking
              ? Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance(), evidence)
              : List.of());
      ways.add(Visibility.of(state.seen(), marks, evidence.window()));
    }
  }

  private Likelihoods(Likelihoods other, boolean answers) {
    this.sheet = other.sheet;
    this.evidence = other.evidence;
    this.trains = other.trains;
    this.ways = other.ways;
    this.answers = answers;
  }

  /** The same, on the same pulse trains, for a unit that is dark while it sees a target. */
  Likelihoods unanswered() {
    return new Likelihoods(this, false);
  }

  /** The pulse trains of a state; none if it is dark or steady. */
  List<Train> trains(int state) {
    return trains.get(state);
  }

  /** Logarithms of the likelihoods of the whole recording, in the order of the priors. */
  double[] whole() {
    return of(evidence);
  }

  /**
   * Logarithms of the likelihoods of a stretch, in the order of the priors, noise summed over. A
   * few noise settings tell which candidates are hopeless; the others see them all.
   */
  double[] of(Evidence stretch) {
    int states = sheet.states().size();
    List<Noise> settings = stretch.settings();
    Evidence head = stretch.beginning(MANY_BLINKS);
    List<FreeRhythms> headFree = FreeRhythms.propose(head);
    double[] sums = new double[states + 2];
    double[] probes = new double[states + 2];
    double best = noRhythm(head);
    int step = Math.max(1, settings.size() / 3);
    for (int i = 0; i <= states; i++) {
      double sum = Double.NEGATIVE_INFINITY;
      int count = 0;
      for (int k = 0; k < settings.size(); k += step) {
        sum = Gauss.logAdd(sum, log(i, headFree, head, settings.get(k)));
        count++;
      }
      sums[i] = sum;
      probes[i] = sum - Math.log(count);
      best = Math.max(best, probes[i]);
    }
    boolean all = stretch.notes().size() <= MANY_BLINKS;
    List<FreeRhythms> free = all ? headFree : FreeRhythms.propose(stretch);
    double whole = noRhythm(stretch);
    for (int i = 0; i <= states; i++) {
      if (probes[i] < best - HOPELESS) {
        continue;
      }
      double sum = all ? sums[i] : Double.NEGATIVE_INFINITY;
      for (int k = 0; k < settings.size(); k++) {
        if (!all || k % step != 0) {
          sum = Gauss.logAdd(sum, log(i, free, stretch, settings.get(k)));
        }
      }
      sums[i] = sum - Math.log(settings.size());
      whole = Math.max(whole, sums[i]);
    }
    for (int i = 0; i <= states; i++) {
      if (probes[i] < best - HOPELESS) {
        // As far behind as at the beginning; more would only put it further back.
        sums[i] = all ? probes[i] : whole + probes[i] - best;
      }
    }
    sums[states + 1] = noRhythm(stretch);
    return sums;
  }

  private double log(int candidate, List<FreeRhythms> free, Evidence stretch, Noise noise) {
    return candidate < sheet.states().size()
        ? ofState(candidate, stretch, noise)
        : unlisted(free, stretch, noise);
  }

  private double ofState(int number, Evidence stretch, Noise noise) {
    double sum = Double.NEGATIVE_INFINITY;
    for (Visibility way : ways.get(number)) {
      if (way.probability() > 0) {
        sum =
            Gauss.logAdd(
                sum,
                Math.log(way.probability())
                    + way(sheet.states().get(number), trains.get(number), way, stretch, noise));
      }
    }
    return sum;
  }

  /** The recording with the lamp visible in these stretches only. */
  private double way(
      LampState state, List<Train> trains, Visibility way, Evidence stretch, Noise noise) {
    double sum = 0;
    List<Window> shown = new ArrayList<>();
    for (Window visible : way.stretches()) {
      double from = Math.max(visible.fromSeconds(), stretch.window().fromSeconds());
      double to = Math.min(visible.toSeconds(), stretch.window().toSeconds());
      if (to > from || (to == from && stretch.window().lengthSeconds() == 0)) {
        Window inside = new Window(from, to);
        shown.add(inside);
        boolean triggered = way.triggered() && from == visible.fromSeconds();
        sum += shown(state.rhythm(), trains, stretch.within(from, to), noise, triggered);
      }
    }
    for (Window hidden : Visibility.between(shown, stretch.window())) {
      Evidence rest = stretch.within(hidden.fromSeconds(), hidden.toSeconds());
      // Known targets are all that hides the lamp of a state that is seen while idle.
      boolean target = answers && state.seen() == Seen.IDLE && !way.stretches().isEmpty();
      sum += target ? answering(rest, noise) : dark(rest, noise);
    }
    return sum;
  }

  /**
   * A stretch with a target before a unit that waits for one: it shows what the sheet says of a
   * target, or, now and then, nothing.
   */
  private double answering(Evidence stretch, Noise noise) {
    double weights = 0;
    double sum = Double.NEGATIVE_INFINITY;
    boolean came = stretch.window().fromSeconds() > evidence.window().fromSeconds();
    for (int i = 0; i < sheet.states().size(); i++) {
      LampState state = sheet.states().get(i);
      if (state.seen() == Seen.TARGET) {
        weights += state.weight();
        double log = shown(state.rhythm(), trains.get(i), stretch, noise, came);
        sum = Gauss.logAdd(sum, Math.log(state.weight()) + log);
      }
    }
    double dark = dark(stretch, noise);
    return weights > 0
        ? Gauss.logAdd(Math.log(UNANSWERED) + dark, Math.log((1 - UNANSWERED) / weights) + sum)
        : dark;
  }

  private static double shown(
      Rhythm rhythm, List<Train> trains, Evidence stretch, Noise noise, boolean triggered) {
    if (rhythm instanceof Rhythm.Dark) {
      return dark(stretch, noise);
    }
    if (rhythm instanceof Rhythm.Steady) {
      return steady(stretch, noise);
    }
    double sum = Double.NEGATIVE_INFINITY;
    for (Train train : trains) {
      sum =
          Gauss.logAdd(
              sum, train.logWeight() + Fit.logLikelihood(train, stretch, noise, triggered));
    }
    return sum;
  }

  private static double dark(Evidence stretch, Noise noise) {
    return Chain.strays(stretch, noise);
  }

  private static double steady(Evidence stretch, Noise noise) {
    double none = -noise.strays() * stretch.watchedSeconds();
    if (stretch.notes().isEmpty()) {
      return none + (stretch.level() ? 0 : Math.log(STEADY_UNNOTED));
    }
    if (stretch.litThroughout() || litNearly(stretch)) {
      return none;
    }
    return Chain.strays(stretch, noise) + Math.log(STEADY_UNNOTED);
  }

  /** One light over the whole stretch, but for how late people and targets are. */
  private static boolean litNearly(Evidence stretch) {
    if (stretch.notes().size() != 1 || !stretch.notes().get(0).hasOff()) {
      return false;
    }
    Evidence.Note note = stretch.notes().get(0);
    double late = Math.min(LATE_SECONDS, 0.1 * stretch.window().lengthSeconds());
    return note.on() <= stretch.window().fromSeconds() + late
        && note.off() >= stretch.window().toSeconds() - late;
  }

  /** A rhythm that no sheet lists. */
  private static double unlisted(List<FreeRhythms> proposals, Evidence stretch, Noise noise) {
    double sum = Double.NEGATIVE_INFINITY;
    for (FreeRhythms free : proposals) {
      sum =
          Gauss.logAdd(
              sum, free.logWeight(noise) + Fit.logLikelihood(free.train(), stretch, noise, false));
    }
    return sum;
  }

  /** Logarithm of the likelihood of blinks that come at random, their rate summed over. */
  static double noRhythm(Evidence stretch) {
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < RATES; i++) {
      double rate = LEAST_RATE * Math.pow(MOST_RATE / LEAST_RATE, (i + 0.5) / RATES);
      Noise random = new Noise(1, 0, rate, 0, 1);
      sum = Gauss.logAdd(sum, Chain.strays(stretch, random) - Math.log(RATES));
    }
    return sum;
  }
}
