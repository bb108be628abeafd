package lampwise.service;

/** Something that happened during a visit. */
public sealed interface Act
    permits Act.Found, Act.Skipped, Act.Secured, Act.Tried, Act.Lamp, Act.Handed, Act.Logged {
  /**
   * A check was made.
   *
   * @param finding what it showed
   */
  record Found(Finding finding) implements Act {}

  /**
   * A check cannot be made, or its answer is not known.
   *
   * @param check the check's id
   */
  record Skipped(String check) implements Act {}

  /**
   * A danger was dealt with.
   *
   * @param rule the id of the rule to make safe
   */
  record Secured(String rule) implements Act {}

  /**
   * A remedy was tried.
   *
   * @param remedy the remedy's id
   * @param worked whether the fixture then worked, by the checks that prove the remedy
   */
  record Tried(String remedy, boolean worked) implements Act {}

  /**
   * The lamp was read.
   *
   * @param said what it says
   * @param seen the recordings and what was decoded
   */
  record Lamp(LampSaid said, Visit.Lamp seen) implements Act {}

  /**
   * It was handed over.
   *
   * @param to to whom
   */
  record Handed(Who to) implements Act {}

  /**
   * The visit was written to the visit log.
   *
   * @param row the number of its row, from 1
   */
  record Logged(int row) implements Act {}
}
