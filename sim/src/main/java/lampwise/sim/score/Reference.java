package lampwise.sim.score;

import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.RecordingException;
import lampwise.light.Window;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.SimulationException;

/**
 * The best answers that taps allow, for recordings whose making is known: the person's settings and
 * how common each candidate is. The density of the taps is summed over phase and clock on a fine
 * grid, and at each point over all ways to give taps to blinks. Slow, simple, and the yardstick for
 * decoders that know none of this.
 *
 * <p>There are two. One is told the unlisted rhythms and the rates of random blinks that the mix
 * shows, which no decoder can know. The other has the same candidates as a decoder: for what the
 * sheet does not list a broad prior ({@link FreePrior}), and blinks in no order at any rate from
 * 0.05 to 3 a second, even in the logarithm.
 *
 * <p>It covers dark and steady lamps and rhythms that repeat; durations that a phrase gives as a
 * range, other than a rate, or not at all are drawn 256 times and averaged.
 */
public final class Reference {
  private static final double LEAST_RATE = 0.05;
  private static final double MOST_RATE = 3;
  private static final int RATES = 48;

  private final Mix mix;
  private final Candidates candidates;
  private final FreePrior free;
  private final double blink;
  private final double sd;
  private final double missed;
  private final double strays;
  private final double late;
  private final double burstGap;

  /**
   * Prepares the answers for one person and one mix.
   *
   * @param mix what may be shown
   * @param person who watches
   * @throws SimulationException if the mix holds what the reference does not cover
   */
  public Reference(Mix mix, Person person) {
    this.mix = mix;
    // A person notes when a blink begins: how long it is lit does not matter.
    this.candidates = new Candidates(mix, 1);
    this.free = new FreePrior(candidates.folds(), NearRhythms.of(mix.sheet(), candidates));
    this.blink = mix.sheet().blinkSeconds().orElse(Candidates.USUAL_BLINK);
    double rounding = person.roundingSeconds();
    this.sd = Math.sqrt(person.timingSd() * person.timingSd() + rounding * rounding / 12);
    this.missed = person.missed();
    this.strays = person.straysPerMinute() / 60;
    this.late = person.firstLateSeconds();
    this.burstGap = person.burstGapSeconds();
  }

  /**
   * The answers to one recording: probabilities of the sheet's states in its order, then {@code
   * unlisted}, then {@code no-rhythm}; they sum to 1.
   *
   * @param told of the reference that is told what the mix shows
   * @param same of the reference that has the same candidates as a decoder
   */
  @SuppressWarnings("ArrayRecordComponent") // Made and read once.
  public record Answers(double[] told, double[] same) {}

  /**
   * The probability of each candidate.
   *
   * @param log the taps, with a window
   * @return the answers of both references
   * @throws RecordingException if the log has no window
   */
  public Answers probabilities(BlinkLog log) {
    Window window = log.window().orElseThrow(() -> new RecordingException("the log has no window"));
    double[] taps = log.blinks().stream().mapToDouble(Blink::onSeconds).toArray();
    Sighting sighting =
        new Sighting(taps, window.fromSeconds(), window.toSeconds(), sd, missed, strays);
    double told = Double.NEGATIVE_INFINITY;
    for (double rate : mix.randomPerSecond()) {
      double density = sighting.logRandom(rate) - StrictMath.log(mix.randomPerSecond().size());
      told = Logs.add(told, density);
    }
    double any = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < RATES; i++) {
      double rate = LEAST_RATE * StrictMath.pow(MOST_RATE / LEAST_RATE, (i + 0.5) / RATES);
      any = Logs.add(any, sighting.logRandom(rate) - StrictMath.log(RATES));
    }
    double unlit = sighting.logAllStrays();
    Candidates.Plain plain = new Candidates.Plain(unlit, unlit, told);
    Taps evidence = new Taps(sighting, late, burstGap);
    double[] listed = candidates.listed(evidence, plain);
    double floor = Logs.most(any, listed);
    return new Answers(
        candidates.probabilities(
            listed, candidates.unlisted(evidence, plain, Logs.most(told, listed)), told),
        candidates.probabilities(listed, unlisted(sighting, evidence, floor), any));
  }

  /** Logarithm of the density of the taps under the broad prior of unlisted rhythms. */
  private double unlisted(Sighting sighting, Taps evidence, double floor) {
    if (mix.unlisted().isEmpty()) {
      return Double.NEGATIVE_INFINITY;
    }
    FreeGuess guess = new FreeGuess(sighting, late, burstGap + blink);
    return new FreeSum(free, evidence, guess, blink, floor).estimate().log();
  }
}
