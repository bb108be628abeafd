package lampwise.decode;

import java.util.List;
import java.util.Optional;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;

/** The answer in one of four kinds. */
public sealed interface Verdict
    permits Verdict.Decoded, Verdict.Unlisted, Verdict.Undecided, Verdict.Unreadable {
  /**
   * The verdict's name in output.
   *
   * @return {@code decoded}, {@code unlisted}, {@code undecided} or {@code unreadable}
   */
  default String word() {
    if (this instanceof Decoded) {
      return "decoded";
    }
    if (this instanceof Unlisted) {
      return "unlisted";
    }
    return this instanceof Undecided ? "undecided" : "unreadable";
  }

  /**
   * One listed state, at least 95 % sure.
   *
   * @param state the state's name
   * @param probability its probability
   * @param stretch the stretch of the recording that it rests on
   */
  record Decoded(String state, double probability, Window stretch) implements Verdict {
    // Written out, as in Window: a record's own would cost every cold start.

    @Override
    public boolean equals(Object other) {
      return other instanceof Decoded decoded
          && state.equals(decoded.state)
          && Double.compare(probability, decoded.probability) == 0
          && stretch.equals(decoded.stretch);
    }

    @Override
    public int hashCode() {
      return 31 * (31 * state.hashCode() + Double.hashCode(probability)) + stretch.hashCode();
    }
  }

  /**
   * A rhythm that no state has, at least 95 % sure.
   *
   * @param measured the rhythm as it was measured; empty if it has no phrase
   * @param nearest the nearest listed states, nearest first
   */
  record Unlisted(Optional<Rhythm> measured, List<Nearest> nearest) implements Verdict {
    /** Keeps a copy of the list. */
    public Unlisted {
      nearest = List.copyOf(nearest);
    }
  }

  /**
   * More than one candidate is left.
   *
   * @param candidates the fewest that together are at least 95 % sure, likeliest first
   * @param reason why it is not decided, one sentence
   * @param next what would settle it
   */
  record Undecided(List<Candidate> candidates, String reason, Next next) implements Verdict {
    /** Keeps a copy of the list. */
    public Undecided {
      candidates = List.copyOf(candidates);
    }
  }

  /**
   * The recording cannot carry an answer.
   *
   * @param reason why, one sentence
   * @param next how to record instead
   */
  record Unreadable(String reason, Next next) implements Verdict {}
}
