package lampwise.rhythm;

/**
 * Which rule a rhythm breaks, and where.
 *
 * @param inPrelude whether the part belongs to the prelude, else to the cycle
 * @param part the part's index there; zero where the ending is meant
 * @param spot what of it
 * @param reason why, one line
 * @param better a phrase that does not break the rule there; empty for none
 */
record Broken(boolean inPrelude, int part, Spot spot, String reason, String better) {
  /** What of a part is meant. */
  enum Spot {
    PART,
    SIZE,
    OF,
    APART,
    ENDING
  }
}
