package lampwise.sim.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.rhythm.Phrase;

/** What the laws ask of a reading. */
final class Readings {
  private static final int MOST_SHOWN = 4;

  private Readings() {}

  /**
   * The answer; empty if there is none, which is the first law's to say and no other's.
   *
   * @throws Error whatever is not the decoder's fault
   */
  static Optional<Reading> of(Decoder decoder, Sample sample) {
    try {
      return Optional.ofNullable(decoder.decode(sample.sheet(), sample.recordings()));
    } catch (RuntimeException | StackOverflowError noAnswer) {
      return Optional.empty();
    }
  }

  /** The state that was decoded; empty under any other verdict. */
  static Optional<String> decoded(Reading reading) {
    return reading.verdict() instanceof Verdict.Decoded decoded
        ? Optional.of(decoded.state())
        : Optional.empty();
  }

  static Map<String, Double> probabilities(List<Candidate> candidates) {
    Map<String, Double> map = new HashMap<>();
    candidates.forEach(candidate -> map.put(candidate.state(), candidate.probability()));
    return map;
  }

  /** The probability of a state; 0 if it is no candidate. */
  static double probability(Reading reading, String state) {
    return probabilities(reading.candidates()).getOrDefault(state, 0.0);
  }

  /** The likeliest candidate; empty if there is none. */
  static Optional<String> likeliest(Reading reading) {
    Optional<Candidate> best = Optional.empty();
    for (Candidate candidate : reading.candidates()) {
      if (best.isEmpty() || candidate.probability() > best.get().probability()) {
        best = Optional.of(candidate);
      }
    }
    return best.map(Candidate::state);
  }

  /** A reading in a line, for messages. */
  static String text(Reading reading) {
    StringBuilder text = new StringBuilder(reading.verdict().word());
    decoded(reading).ifPresent(state -> text.append(' ').append(state));
    text.append(" (");
    int shown = Math.min(MOST_SHOWN, reading.candidates().size());
    for (Candidate candidate : reading.candidates().subList(0, shown)) {
      text.append(candidate.state()).append(' ');
      text.append(SampleText.number(candidate.probability())).append(", ");
    }
    text.append("observed ").append(reading.observed().map(Phrase::print).orElse("nothing"));
    return text.append(')').toString();
  }
}
