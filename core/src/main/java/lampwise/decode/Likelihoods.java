package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** The likelihood of one recording, or of a stretch of it, under each candidate. */
final class Likelihoods {
  /** Chance that a person who watches a steady lamp writes down nothing at all. */
  private static final double STEADY_UNNOTED = 0.01;

  /** Rates of blinks without rhythm, per second: even in the logarithm between these. */
  private static final double LEAST_RATE = 0.05;

  private static final double MOST_RATE = 3;
  private static final int RATES = 24;

  private final Evidence evidence;
  private final Marks marks;
  private final double[] starts;

  Likelihoods(Evidence evidence, Marks marks) {
    this.evidence = evidence;
    this.marks = marks;
    this.starts = evidence.notes().stream().mapToDouble(Evidence.Note::on).toArray();
  }

  /** The pulse trains of a state; none if it is dark or steady. */
  List<Train> trains(CodeSheet sheet, LampState state) {
    if (state.rhythm() instanceof Rhythm.Blinking blinking) {
      return Templates.of(blinking, sheet.blinkSeconds(), sheet.clockTolerance(), starts);
    }
    return List.of();
  }

  /** Logarithm of the likelihood under a state, noise summed over, inside a stretch. */
  double ofState(CodeSheet sheet, LampState state, Evidence stretch) {
    List<Train> trains = trains(sheet, state);
    List<Visibility> ways = Visibility.of(state.seen(), marks, evidence.window());
    double sum = Double.NEGATIVE_INFINITY;
    for (Noise noise : stretch.settings()) {
      for (Visibility way : ways) {
        if (way.probability() > 0) {
          sum = Gauss.logAdd(sum, Math.log(way.probability()) + way(state, trains, way, stretch, noise));
        }
      }
    }
    return sum - Math.log(stretch.settings().length);
  }

  /** The recording with the lamp visible in these stretches only. */
  private double way(
      LampState state, List<Train> trains, Visibility way, Evidence stretch, Noise noise) {
    double sum = 0;
    List<Window> shown = new ArrayList<>();
    for (Window visible : way.stretches()) {
      double from = Math.max(visible.fromSeconds(), stretch.window().fromSeconds());
      double to = Math.min(visible.toSeconds(), stretch.window().toSeconds());
      if (to > from || to == from && stretch.window().lengthSeconds() == 0) {
        Window inside = new Window(from, to);
        shown.add(inside);
        boolean triggered = way.triggered() && from == visible.fromSeconds();
        sum += shown(state.rhythm(), trains, stretch.within(from, to), noise, triggered);
      }
    }
    for (Window hidden : Visibility.between(shown, stretch.window())) {
      sum += dark(stretch.within(hidden.fromSeconds(), hidden.toSeconds()), noise);
    }
    return sum;
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
    if (stretch.litThroughout()) {
      return none;
    }
    return Chain.strays(stretch, noise) + Math.log(STEADY_UNNOTED);
  }

  /** Logarithm of the likelihood under a rhythm that no sheet lists. */
  double unlisted(Evidence stretch) {
    List<FreeRhythms> proposals = FreeRhythms.propose(stretch);
    double sum = Double.NEGATIVE_INFINITY;
    for (Noise noise : stretch.settings()) {
      for (FreeRhythms free : proposals) {
        sum = Gauss.logAdd(sum, free.logWeight(noise) + Fit.logLikelihood(free.train(), stretch, noise, false));
      }
    }
    return sum - Math.log(stretch.settings().length);
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
