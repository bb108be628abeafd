package lampwise.service;

import java.util.Optional;

/** What makes a fixture urgent; a site weighs it by its own rules. */
public enum Urgency {
  /** It overflows, or sewage comes up. */
  OVERFLOWING("overflowing", 100),
  /** Water runs and does not stop. */
  RUNNING("running", 60),
  /** It is the only accessible one. */
  ONLY_ACCESSIBLE("only-accessible", 50),
  /** Nobody can use it. */
  DEAD("dead", 20),
  /** It drains slowly. */
  SLOW_DRAIN("slow-drain", 20),
  /** The water is too hot or too cold. */
  TEMPERATURE("temperature", 15),
  /** It works badly: weak, short, runs on too long. */
  WEAK("weak", 10),
  /** It goes off without anybody. */
  PHANTOM("phantom", 10),
  /** It was worked on within thirty days. */
  REPEAT("repeat", 5),
  /** It works, but the lamp warns. */
  LAMP_ONLY("lamp-only", 3);

  private final String word;
  private final double usualWeight;

  Urgency(String word, double usualWeight) {
    this.word = word;
    this.usualWeight = usualWeight;
  }

  /**
   * The word for it in files and output.
   *
   * @return the word, lower case
   */
  public String word() {
    return word;
  }

  /**
   * The weight where a site says none: common practice, no source.
   *
   * @return the weight, over 0
   */
  public double usualWeight() {
    return usualWeight;
  }

  /**
   * Finds one by its word.
   *
   * @param word the word, exactly
   * @return the value, or empty for any other word
   */
  public static Optional<Urgency> of(String word) {
    for (Urgency value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}
