package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.rhythm.Rhythm;

/**
 * How one pulse train explains the blinks of a stretch: the single likeliest way, for showing.
 *
 * @param observed the rhythm as measured; empty if there is no honest phrase for it
 * @param blinks the blinks, each with the chance that it belongs to the train
 * @param noise the noise under which it fits best
 * @param loose how many blinks and watched pulses are left without partner
 */
record Explained(Noise noise, Optional<Rhythm> observed, List<SeenBlink> blinks, int loose) {
  /** Pulses before or after the blinks are not counted further than this. */
  private static final int MOST_UNSEEN = 100;

  /** So many blinks show which proposal fits best, and under which noise. */
  private static final int MANY_BLINKS = 60;

  /**
   * So far below the best (natural logarithm) a fit does not matter, nor does one that fell so far
   * behind on the way: no more hangs on it than what is shown.
   */
  private static final double UNLIKELY = 8;

  /** How near to the border of what was watched a pulse may come, seconds. */
  private static final double MARGIN_SECONDS = 0.05;

  /** A train that may explain a stretch, and the logarithm of its prior weight. */
  record Proposal(Train train, double logPrior) {}

  /** How well a proposal fits, and the noise under which it fits best. */
  private record Fitted(Proposal proposal, double logWeight, Noise noise) {}

  /** Explains a stretch by the likeliest of these, under the noise that fits it best. */
  static Optional<Explained> likeliest(List<Proposal> proposals, Evidence stretch) {
    return fitted(proposals, stretch).map(fitted -> how(fitted, stretch));
  }

  /** The likeliest of these, by the beginning of a stretch. */
  private static Optional<Fitted> fitted(List<Proposal> proposals, Evidence stretch) {
    Evidence head = stretch.beginning(MANY_BLINKS);
    Front front = new Front();
    List<Timing> timings =
        Timing.of(RoughError.likeFirst(proposals.stream().map(Proposal::train).toList(), head));
    double best = Double.NEGATIVE_INFINITY;
    Optional<Fitted> likeliest = Optional.empty();
    for (Proposal proposal : proposals) {
      Fitted fitted = fitted(proposal, head, timings, best, front);
      if (likeliest.isEmpty() || fitted.logWeight() > best) {
        best = fitted.logWeight();
        likeliest = Optional.of(fitted);
      }
    }
    return likeliest;
  }

  /**
   * Logarithm of the likelihood of all blinks times the prior weight of a fit to the first ones.
   */
  private static double logWeight(Fitted fitted, Evidence whole) {
    if (whole.notes().size() <= MANY_BLINKS) {
      return fitted.logWeight();
    }
    Proposal proposal = fitted.proposal();
    return proposal.logPrior()
        + Fit.logLikelihood(proposal.train(), whole, fitted.noise(), false, Floor.none());
  }

  private static Fitted fitted(
      Proposal proposal, Evidence stretch, List<Timing> timings, double floor, Front front) {
    Noise best = timings.get(0).any();
    double bestLog = floor - proposal.logPrior();
    double sum = Double.NEGATIVE_INFINITY;
    double weights = 0;
    for (Timing timing : timings) {
      Floor least = new Floor(bestLog - UNLIKELY, proposal.logPrior(), front, UNLIKELY);
      double[] logs = Fit.logLikelihoods(proposal.train(), stretch, timing, false, least);
      for (int s = 0; s < logs.length; s++) {
        Noise noise = timing.setting(s);
        sum = Gauss.logAdd(sum, Math.log(noise.weight()) + logs[s]);
        weights += noise.weight();
        if (logs[s] > bestLog) {
          bestLog = logs[s];
          best = noise;
        }
      }
    }
    return new Fitted(proposal, proposal.logPrior() + sum - Math.log(weights), best);
  }

  private static Explained how(Fitted fitted, Evidence stretch) {
    Train train = fitted.proposal().train();
    Noise best = fitted.noise();
    Train cycle = train.withoutPrelude();
    List<SeenBlink> blinks = new ArrayList<>();
    Optional<Rhythm> observed = Optional.empty();
    int most = 0;
    int loose = 0;
    for (Evidence piece : stretch.pieces()) {
      Chain chain = chain(cycle, piece, best);
      List<Link> links = chain.chains();
      Optional<Link> top = links.stream().max((a, b) -> Double.compare(a.weight(0), b.weight(0)));
      int notes = piece.notes().size();
      blinks.addAll(blinks(piece, links, chain.logNothing()[0]));
      loose += top.map(link -> loose(cycle, link, piece)).orElse(notes);
      if (notes > most) {
        most = notes;
        observed = top.flatMap(link -> measured(cycle, link, piece));
      }
    }
    return new Explained(best, observed, withTheRest(blinks, stretch), loose);
  }

  private static Chain chain(Train train, Evidence piece, Noise noise) {
    double from = piece.window().fromSeconds();
    double to = piece.window().toSeconds();
    double reach = train.on(train.size() - 1) * train.high() + 1;
    double density = train.repeats() ? train.cycleSeconds() : to - from + reach;
    return new Chain(train, piece, Timing.of(noise), -Math.log(density), from - reach, to);
  }

  /** Adds the blinks that lie in no piece, as they stand by themselves. */
  private static List<SeenBlink> withTheRest(List<SeenBlink> blinks, Evidence stretch) {
    if (blinks.size() == stretch.notes().size()) {
      return blinks;
    }
    List<SeenBlink> all = new ArrayList<>();
    int next = 0;
    for (SeenBlink alone : stretch.blinks()) {
      boolean here = next < blinks.size() && blinks.get(next).blink().equals(alone.blink());
      all.add(here ? blinks.get(next++) : alone);
    }
    return all;
  }

  private static List<SeenBlink> blinks(Evidence stretch, List<Link> links, double logNothing) {
    double total = logNothing;
    for (Link link : links) {
      total = Gauss.logAdd(total, link.weight(0));
    }
    double[] linked = new double[stretch.notes().size()];
    for (Link link : links) {
      double share = Math.exp(link.weight(0) - total);
      for (Link at : link.back()) {
        linked[at.note] += share;
      }
    }
    List<SeenBlink> blinks = new ArrayList<>();
    for (int i = 0; i < linked.length; i++) {
      Evidence.Note note = stretch.notes().get(i);
      blinks.add(new SeenBlink(new Blink(note.on(), note.off()), Math.min(1, linked[i])));
    }
    return blinks;
  }

  /** The best rhythm without a sheet; empty if the blinks keep none, or are too few to tell. */
  static Optional<Explained> freely(Evidence evidence) {
    if (evidence.notes().size() < 3) {
      return Optional.empty();
    }
    Noise first = evidence.settings().get(0);
    Optional<Fitted> best =
        fitted(
            FreeRhythms.propose(evidence).stream()
                .map(f -> new Proposal(f.train(), f.logWeight(first)))
                .toList(),
            evidence);
    double random =
        Likelihoods.noRhythm(evidence) + Math.log(Posterior.NO_RHYTHM / Posterior.UNLISTED);
    return best.filter(fitted -> logWeight(fitted, evidence) > random)
        .map(fitted -> how(fitted, evidence));
  }

  private static int loose(Train train, Link top, Evidence piece) {
    int links = 0;
    int first = top.pulse;
    for (Link at : top.back()) {
      links++;
      first = at.pulse;
    }
    int pulses = top.pulse - first + 1 + unseen(train, top, first, -1, piece);
    pulses += unseen(train, top, top.pulse, 1, piece);
    return piece.notes().size() - links + pulses - links;
  }

  /** How many pulses a chain has in the window before its first or after its last blink. */
  private static int unseen(Train train, Link top, int from, int step, Evidence piece) {
    int count = 0;
    double stretch = top.stretch(train);
    for (int pulse = from + step;
        pulse >= train.first() && pulse <= train.last() && count < MOST_UNSEEN;
        pulse += step) {
      double time = top.line.meanTime() + stretch * (train.on(pulse) - top.line.meanTrain());
      if (!piece.window().contains(time)) {
        break;
      }
      count += piece.watched(time, MARGIN_SECONDS) > 0.5 ? 1 : 0;
    }
    return count;
  }

  private static Optional<Rhythm> measured(Train train, Link top, Evidence stretch) {
    double[] sums = new double[train.size()];
    int[] counts = new int[sums.length];
    for (Link at : top.back()) {
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
    return SteadyCycle.of(train, stretch)
        .or(() -> Measured.rhythm(train, top.stretch(train), lengths));
  }
}
