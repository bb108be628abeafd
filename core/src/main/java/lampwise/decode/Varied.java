package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import lampwise.rhythm.Rhythm;

/** The variants of a sheet's states, as unlisted rhythms with their shares of the prior. */
final class Varied {
  /** The part of unlisted rhythms that are a listed one with other numbers of blinks. */
  private static final double VARIANTS = 0.5;

  /** A constant rate leaves out beats less often than a code has another number of blinks. */
  private static final double RATES_VARIED = 0.3;

  /** A rate that takes more trains is too wide to leave out beats that could be told. */
  private static final int MOST_RATE_TRAINS = 3;

  /** Of more blinks than this the recording itself proposes a cycle that leaves out beats. */
  private static final int MOST_RATE_BLINKS = 60;

  /** How many states' variants are looked at. */
  private static final int MOST_VARIED = 2;

  private final Listed listed;
  private final Evidence evidence;

  /** How common all are together, relative to the variants of one state. */
  private final double all;

  Varied(Listed listed, Evidence evidence) {
    this.listed = listed;
    this.evidence = evidence;
    double sum = 0;
    for (int i = 0; i < listed.size(); i++) {
      sum += hasVariants(i) ? common(i) : 0;
    }
    this.all = sum;
  }

  private boolean hasVariants(int state) {
    return listed.isRate(state)
        ? listed.trains(state).size() <= MOST_RATE_TRAINS
            && evidence.notes().size() <= MOST_RATE_BLINKS
        : Variants.hasNumbers(listed.state(state));
  }

  /** How common the variants of a state are, relative to those of other states. */
  private double common(int state) {
    return listed.isRate(state) ? RATES_VARIED : 1;
  }

  private List<FreeRhythms> of(int state) {
    List<List<Train>> trains =
        listed.isRate(state)
            ? Variants.leavingOut(listed.trains(state))
            : Variants.of(listed.sheet(), listed.state(state)).stream().map(this::trains).toList();
    double logShare = Math.log(VARIANTS * common(state) / all) - Math.log(trains.size());
    return trains.stream()
        .flatMap(List::stream)
        .map(train -> new FreeRhythms(train.weighed(logShare), 0, 0, 1))
        .toList();
  }

  private List<Train> trains(Rhythm.Blinking rhythm) {
    return Templates.of(
        rhythm, listed.sheet().blinkSeconds(), listed.sheet().clockTolerance(), evidence);
  }

  /**
   * The variants of the states that fit best, of those that may matter.
   *
   * @param fit logarithm of the likelihood of a state
   */
  List<FreeRhythms> near(IntPredicate matters, IntToDoubleFunction fit) {
    List<Integer> states = new ArrayList<>();
    for (int i = 0; i < listed.size(); i++) {
      if (hasVariants(i) && matters.test(i)) {
        states.add(i);
      }
    }
    states.sort((a, b) -> Double.compare(fit.applyAsDouble(b), fit.applyAsDouble(a)));
    int count = Math.min(MOST_VARIED, states.size());
    // Of states that fit alike all, so that their order in the sheet says nothing.
    while (count > 0
        && count < states.size()
        && fit.applyAsDouble(states.get(count)) == fit.applyAsDouble(states.get(count - 1))
        && fit.applyAsDouble(states.get(count)) > Double.NEGATIVE_INFINITY) {
      count++;
    }
    List<FreeRhythms> near = new ArrayList<>();
    for (int state : states.subList(0, count)) {
      near.addAll(of(state));
    }
    return near;
  }
}
