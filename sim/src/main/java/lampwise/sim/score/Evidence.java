package lampwise.sim.score;

/** What was seen of a lamp, and how likely it is under a rhythm that is folded. */
interface Evidence {
  /** Start of the window. */
  double from();

  /** End of the window. */
  double to();

  /** How far blinks may move to either side within the cells that a sum begins with, seconds. */
  double reach();

  /** How far they may move in the last cells, seconds, where so many blinks are in the window. */
  double last(double blinks);

  /** How far the points of a sum may be apart, seconds. */
  double step(double blinks);

  /**
   * Logarithm of the density of what was seen, or a bound above it where each blink may lie a
   * little to either side.
   *
   * @param fold the rhythm
   * @param start when one of its cycles starts
   * @param stretch its stretch
   * @param aside how far to either side each blink may lie; 0 for the density itself
   * @param turn how much further it may lie for each second that it is away from the middle of the
   *     window
   * @param least a density below the exponential of this does not matter
   * @return the logarithm; may be negative infinity where it is certain to be below {@code least}
   */
  double log(Fold fold, double start, double stretch, double aside, double turn, double least);
}
