package lampwise.sim;

import lampwise.rhythm.Rhythm;

/** What a lamp is made to show. */
public sealed interface Show permits Show.Rhythmic, Show.Random {
  /**
   * A rhythm; what its phrase leaves open is drawn once and kept.
   *
   * @param rhythm the rhythm
   */
  record Rhythmic(Rhythm rhythm) implements Show {}

  /**
   * Blinks in no order: a Poisson process of starts.
   *
   * @param perSecond how many a second on average, over zero and at most 10
   */
  record Random(double perSecond) implements Show {
    /**
     * Checks the rate.
     *
     * @throws SimulationException if it is out of range
     */
    public Random {
      if (!(perSecond > 0 && perSecond <= 10)) {
        throw new SimulationException(
            "random blinks come over 0 and at most 10 times a second: " + perSecond);
      }
    }
  }
}
