package lampwise.sim.score;

import java.util.List;
import java.util.Optional;
import lampwise.decode.Candidate;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.sheet.CodeSheet;

/**
 * What a decoder made of one recording.
 *
 * @param truth the state that was shown, {@code unlisted} or {@code no-rhythm}
 * @param top the likeliest candidate; {@code none} if there was none
 * @param topProbability its probability
 * @param truthProbability the probability of the truth
 * @param verdict the verdict's word
 * @param answer the state that was decoded; empty unless the verdict is {@code decoded}
 */
public record Outcome(
    String truth,
    String top,
    double topProbability,
    double truthProbability,
    String verdict,
    Optional<String> answer) {
  /** The name of the likeliest candidate where there is none. */
  public static final String NONE = "none";

  private static final double SURE = 0.95;

  /**
   * Compares a reading with the truth.
   *
   * @param truth the state that was shown
   * @param reading the decoder's answer
   * @return the outcome
   */
  public static Outcome of(String truth, Reading reading) {
    List<Candidate> candidates = reading.candidates();
    double right =
        candidates.stream()
            .filter(c -> c.state().equals(truth))
            .mapToDouble(Candidate::probability)
            .sum();
    return new Outcome(
        truth,
        candidates.isEmpty() ? NONE : candidates.get(0).state(),
        candidates.isEmpty() ? 0 : candidates.get(0).probability(),
        right,
        reading.verdict().word(),
        reading.verdict() instanceof Verdict.Decoded decoded
            ? Optional.of(decoded.state())
            : Optional.empty());
  }

  /**
   * Compares bare probabilities with the truth; a listed state of at least 0.95 counts as decoded.
   *
   * @param truth the state that was shown
   * @param names the candidates: the states, then {@code unlisted} and {@code no-rhythm}
   * @param probabilities the probability of each
   * @return the outcome
   */
  static Outcome of(String truth, List<String> names, double[] probabilities) {
    int top = 0;
    for (int i = 1; i < probabilities.length; i++) {
      top = probabilities[i] > probabilities[top] ? i : top;
    }
    String name = names.get(top);
    double probability = probabilities[top];
    boolean sure = probability >= SURE;
    String verdict =
        !sure
            ? "undecided"
            : name.equals(CodeSheet.UNLISTED)
                ? "unlisted"
                : name.equals(CodeSheet.NO_RHYTHM) ? "unreadable" : "decoded";
    int right = names.indexOf(truth);
    return new Outcome(
        truth,
        name,
        probability,
        right < 0 ? 0 : probabilities[right],
        verdict,
        verdict.equals("decoded") ? Optional.of(name) : Optional.empty());
  }

  /**
   * Whether the likeliest candidate is the truth.
   *
   * @return true if it is
   */
  public boolean isRight() {
    return top.equals(truth);
  }

  /**
   * Whether a wrong state was decoded.
   *
   * @return true for a decoded state that is not the truth
   */
  public boolean isMisread() {
    return answer.isPresent() && !answer.get().equals(truth);
  }

  /**
   * Whether the truth is a state of the sheet.
   *
   * @return false for an unlisted rhythm and for blinks in no order
   */
  public boolean isOfListedState() {
    return !truth.equals(CodeSheet.UNLISTED) && !truth.equals(CodeSheet.NO_RHYTHM);
  }

  /**
   * The logarithmic loss: -ln(probability of the truth).
   *
   * @return nat, 0 or more; a probability below {@link Tally#LEAST_PROBABILITY} counts as that
   */
  public double logLoss() {
    return -StrictMath.log(Math.max(Tally.LEAST_PROBABILITY, truthProbability));
  }
}
