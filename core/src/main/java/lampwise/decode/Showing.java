package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** The likelihood of a stretch of a recording in which the unit is in a listed state. */
final class Showing {
  /** Chance that a person who watches a steady lamp writes down nothing at all. */
  private static final double STEADY_UNNOTED = 0.01;

  /** Chance that a unit at rest does not show that it sees a target. */
  private static final double UNANSWERED = 0.1;

  /** A light that begins or ends this near to the border of a stretch fills it. */
  private static final double LATE_SECONDS = 1;

  private final Listed listed;

  /** The window of the recording. */
  private final Window whole;

  private final boolean answers;

  /**
   * Prepares.
   *
   * @param answers whether a unit at rest shows that it sees a target, or else is dark meanwhile
   */
  Showing(Listed listed, Window whole, boolean answers) {
    this.listed = listed;
    this.whole = whole;
    this.answers = answers;
  }

  /** For how many seconds two stretches are one; 0 or less if they do not meet. */
  static double overlap(Window a, Window b) {
    return Math.min(a.toSeconds(), b.toSeconds()) - Math.max(a.fromSeconds(), b.fromSeconds());
  }

  /** Whether one stretch lies in another. */
  static boolean covers(Window whole, Window part) {
    return whole.fromSeconds() <= part.fromSeconds() && whole.toSeconds() >= part.toSeconds();
  }

  /**
   * Logarithms of the likelihood of a state, for each setting of a timing.
   *
   * @param floor the least that matters
   */
  double[] logs(int number, Evidence stretch, Timing timing, Floor floor) {
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    for (Visibility way : listed.ways(number)) {
      if (way.probability() > 0) {
        double log = Math.log(way.probability());
        add(sums, log, way(number, way, stretch, timing, floor.of(log)));
      }
    }
    return sums;
  }

  /** Adds likelihoods times a weight to a sum. */
  static void add(double[] sums, double logWeight, double[] logs) {
    for (int s = 0; s < sums.length; s++) {
      sums[s] = Gauss.logAdd(sums[s], logWeight + logs[s]);
    }
  }

  /** The stretch with the lamp visible in these parts only. */
  private double[] way(int number, Visibility way, Evidence stretch, Timing timing, Floor floor) {
    LampState state = listed.state(number);
    if (way.stretches().size() == 1 && covers(way.stretches().get(0), stretch.window())) {
      boolean begins =
          way.triggered() && way.stretches().get(0).fromSeconds() == stretch.window().fromSeconds();
      return shown(number, stretch, timing, begins, floor);
    }
    double[] sums = timing.all(0);
    List<Window> shown = new ArrayList<>();
    for (Window visible : way.stretches()) {
      double from = Math.max(visible.fromSeconds(), stretch.window().fromSeconds());
      double to = Math.min(visible.toSeconds(), stretch.window().toSeconds());
      if (to > from || (to == from && stretch.window().lengthSeconds() == 0)) {
        shown.add(new Window(from, to));
        boolean triggered = way.triggered() && from == visible.fromSeconds();
        Evidence part = stretch.within(from, to);
        follow(sums, shown(number, part, timing, triggered, Floor.none()));
      }
    }
    for (Window hidden : Visibility.between(shown, stretch.window())) {
      Evidence rest = stretch.within(hidden.fromSeconds(), hidden.toSeconds());
      // Known targets are all that hides the lamp of a state that is seen while idle.
      boolean target = answers && state.seen() == Seen.IDLE && !way.stretches().isEmpty();
      follow(sums, target ? answering(rest, timing) : timing.strays(rest));
    }
    return sums;
  }

  /** Takes in what follows. */
  private static void follow(double[] sums, double[] logs) {
    for (int s = 0; s < sums.length; s++) {
      sums[s] += logs[s];
    }
  }

  /**
   * A stretch with a target before a unit that waits for one: it shows what the sheet says of a
   * target, or, now and then, nothing.
   */
  private double[] answering(Evidence stretch, Timing timing) {
    double weights = 0;
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    boolean came = stretch.window().fromSeconds() > whole.fromSeconds();
    for (int i = 0; i < listed.size(); i++) {
      if (listed.state(i).seen() == Seen.TARGET) {
        double weight = listed.state(i).weight();
        weights += weight;
        add(sums, Math.log(weight), shown(i, stretch, timing, came, Floor.none()));
      }
    }
    double[] dark = timing.strays(stretch);
    if (!(weights > 0)) {
      return dark;
    }
    double[] logs = timing.all(Double.NEGATIVE_INFINITY);
    add(logs, Math.log(UNANSWERED), dark);
    add(logs, Math.log((1 - UNANSWERED) / weights), sums);
    return logs;
  }

  private double[] shown(
      int number, Evidence stretch, Timing timing, boolean triggered, Floor floor) {
    Rhythm rhythm = listed.state(number).rhythm();
    if (rhythm instanceof Rhythm.Dark) {
      return timing.strays(stretch);
    }
    if (rhythm instanceof Rhythm.Steady) {
      return steady(stretch, timing);
    }
    List<Train> trains = listed.trains(number);
    double[] sums = timing.all(Double.NEGATIVE_INFINITY);
    for (Train train : trains) {
      double logWeight = train.logWeight(timing.any());
      Floor least = floor.of(logWeight).ofEach(trains.size());
      add(sums, logWeight, Fit.logLikelihoods(train, stretch, timing, triggered, least));
    }
    return sums;
  }

  private static double[] steady(Evidence stretch, Timing timing) {
    boolean lit = stretch.litThroughout() || litNearly(stretch);
    double[] logs = timing.strays(stretch);
    for (int s = 0; s < logs.length; s++) {
      if (stretch.notes().isEmpty()) {
        logs[s] += stretch.level() ? 0 : Math.log(STEADY_UNNOTED);
      } else if (lit) {
        logs[s] = -timing.setting(s).strays() * stretch.watchedSeconds();
      } else {
        logs[s] += Math.log(STEADY_UNNOTED);
      }
    }
    return logs;
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
}
