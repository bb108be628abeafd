package lampwise.rhythm;

import java.util.List;

/** What a lamp shows after the prelude, if there is one. */
public sealed interface Cycle permits Cycle.Rated, Cycle.Parts {
  /**
   * Single blinks at a rate.
   *
   * @param rate the rate
   */
  record Rated(Rate rate) implements Cycle {}

  /**
   * Parts in order.
   *
   * @param parts one or more
   * @param ending how it goes on
   */
  record Parts(List<Part> parts, Ending ending) implements Cycle {
    /** Keeps a copy of the parts. */
    public Parts {
      parts = List.copyOf(parts);
    }
  }
}
