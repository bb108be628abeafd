package lampwise.decode;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/**
 * A decoder's answer. Verdict, candidates and observed rhythm are those of the segment that covers
 * most of the window outside target spans.
 *
 * @param verdict the answer
 * @param candidates every state of the sheet, {@code unlisted} and {@code no-rhythm}, likeliest
 *     first; their probabilities sum to 1. Empty if there was nothing to weigh
 * @param observed the rhythm seen; empty if there is none
 * @param segments the stretches in which the lamp keeps one state, in order
 * @param observations what each recording shows by itself, in the order given
 */
public record Reading(
    Verdict verdict,
    List<Candidate> candidates,
    Optional<Rhythm> observed,
    List<Segment> segments,
    List<Observation> observations) {
  /** Keeps copies of the lists. */
  public Reading {
    candidates = List.copyOf(candidates);
    segments = List.copyOf(segments);
    observations = List.copyOf(observations);
  }

  /**
   * The number of the recording that the verdict rests on, from 0: the one whose segment it
   * repeats, else that of the first segment.
   *
   * @return the number in the list that was decoded; 0 if there is no segment
   */
  public int mainRecording() {
    for (Segment segment : segments) {
      // Mostly it is the very same; comparing records for the first time costs a cold start.
      if (Objects.equals(segment.verdict(), verdict)) {
        return segment.recording();
      }
    }
    return segments.isEmpty() ? 0 : segments.get(0).recording();
  }

  /**
   * What the recording shows that the verdict rests on.
   *
   * @return its observation; empty if nothing was decoded
   */
  public Optional<Observation> main() {
    int main = mainRecording();
    return main < observations.size() ? Optional.of(observations.get(main)) : Optional.empty();
  }

  /**
   * The probability of each condition: the sum over its states, {@code unlisted} and {@code
   * no-rhythm} left out, so that it may sum to less than 1.
   *
   * @param sheet the sheet that was decoded against
   * @return conditions with a probability over zero, likeliest first
   */
  public Map<Condition, Double> conditions(CodeSheet sheet) {
    Map<Condition, Double> sums = new LinkedHashMap<>();
    for (Candidate candidate : candidates) {
      Optional<LampState> state = sheet.state(candidate.state());
      if (state.isPresent() && candidate.probability() > 0) {
        sums.merge(state.get().condition(), candidate.probability(), Double::sum);
      }
    }
    Map<Condition, Double> sorted = new LinkedHashMap<>();
    sums.entrySet().stream()
        .sorted(Map.Entry.<Condition, Double>comparingByValue().reversed())
        .forEach(entry -> sorted.put(entry.getKey(), entry.getValue()));
    return sorted;
  }
}
