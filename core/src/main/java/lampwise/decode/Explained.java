package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.rhythm.Rhythm;

/**
 * How one pulse train explains the blinks of a stretch: the single likeliest way, for showing.
 *
 * @param train the train
 * @param logWeight logarithm of its likelihood times its prior weight
 * @param observed the rhythm as measured; empty if there is no honest phrase for it
 * @param linked the chance that each blink belongs to the train
 * @param loose how many blinks and pulses are left without partner
 */
record Explained(
    Train train, double logWeight, Optional<Rhythm> observed, double[] linked, int loose) {

  /** Explains a stretch by a train, under the noise that fits it best. */
  static Explained of(Train train, Evidence stretch, double logPrior) {
    Noise best = stretch.settings()[0];
    double bestLog = Double.NEGATIVE_INFINITY;
    double sum = Double.NEGATIVE_INFINITY;
    for (Noise noise : stretch.settings()) {
      double log = Fit.logLikelihood(train, stretch, noise, false);
      sum = Gauss.logAdd(sum, log);
      if (log > bestLog) {
        bestLog = log;
        best = noise;
      }
    }
    Train cycle = train.withoutPrelude();
    double from = stretch.window().fromSeconds();
    double reach = cycle.on(cycle.on().length - 1) * cycle.high() + 1;
    double density = cycle.repeats() ? cycle.cycleSeconds() : stretch.window().lengthSeconds() + reach;
    Chain chain =
        new Chain(
            cycle, stretch, best, -Math.log(density), from - reach, stretch.window().toSeconds());
    List<Chain.Link> links = chain.chains();
    double[] linked = new double[stretch.notes().size()];
    Chain.Link top = null;
    double total = chain.logNothing();
    for (Chain.Link link : links) {
      total = Gauss.logAdd(total, link.weight());
      top = top == null || link.weight() > top.weight() ? link : top;
    }
    for (Chain.Link link : links) {
      double share = Math.exp(link.weight() - total);
      for (Chain.Link at = link; at != null; at = at.before) {
        linked[at.note] += share;
      }
    }
    Optional<Rhythm> observed = Optional.empty();
    int loose = stretch.notes().size();
    if (top != null) {
      observed = measured(cycle, top, stretch);
      loose = loose(top, stretch.notes().size());
    }
    double logWeight = logPrior + sum - Math.log(stretch.settings().length);
    return new Explained(train, logWeight, observed, linked, loose);
  }

  private static int loose(Chain.Link top, int notes) {
    int links = 0;
    int missed = 0;
    for (Chain.Link at = top; at != null; at = at.before) {
      links++;
      missed += at.before == null ? 0 : at.pulse - at.before.pulse - 1;
    }
    return notes - links + missed;
  }

  private static Optional<Rhythm> measured(Train train, Chain.Link top, Evidence stretch) {
    double[] sums = new double[train.on().length];
    int[] counts = new int[sums.length];
    for (Chain.Link at = top; at != null; at = at.before) {
      Evidence.Note note = stretch.notes().get(at.note);
      if (note.hasOff() && !note.onCut() && !note.offCut()) {
        int pulse = Math.floorMod(at.pulse, sums.length);
        sums[pulse] += note.length();
        counts[pulse]++;
      }
    }
    double[] lengths = new double[sums.length];
    for (int i = 0; i < lengths.length; i++) {
      lengths[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
    }
    return Measured.rhythm(train, top.stretch(train), lengths);
  }

  List<SeenBlink> blinks(Evidence stretch) {
    List<SeenBlink> blinks = new ArrayList<>();
    for (int i = 0; i < linked.length; i++) {
      Evidence.Note note = stretch.notes().get(i);
      blinks.add(new SeenBlink(new Blink(note.on(), note.off()), Math.min(1, linked[i])));
    }
    return blinks;
  }
}
