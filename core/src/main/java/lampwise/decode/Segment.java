package lampwise.decode;

import java.util.List;
import java.util.Optional;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;

/**
 * A stretch of a recording in which the lamp keeps one state.
 *
 * @param recording the number of the recording in the list that was decoded, from 0
 * @param stretch the stretch
 * @param verdict its verdict
 * @param candidates all candidates, likeliest first
 * @param observed the rhythm seen in it; empty if there is none
 */
public record Segment(
    int recording,
    Window stretch,
    Verdict verdict,
    List<Candidate> candidates,
    Optional<Rhythm> observed) {
  /** Keeps a copy of the list. */
  public Segment {
    candidates = List.copyOf(candidates);
  }
}
