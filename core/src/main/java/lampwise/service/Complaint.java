package lampwise.service;

import java.util.Optional;

/** What is said to be wrong with a fixture before anybody has looked. */
public enum Complaint {
  /** Nothing happens when somebody comes or leaves. */
  DEAD("dead"),
  /** It flushes or runs although nobody is there. */
  PHANTOM("phantom"),
  /** It starts when it should and runs far too long. */
  RUNS_ON("runs-on"),
  /** Water comes, with too little force. */
  WEAK("weak"),
  /** It stops too early, so that too little water comes. */
  SHORT("short"),
  /** The water does not go away. */
  SLOW_DRAIN("slow-drain"),
  /** Water runs or seeps all the time. */
  NEVER_STOPS("never-stops"),
  /** It works, but the lamp warns. */
  LAMP_ONLY("lamp-only"),
  /** The water is too hot or too cold. */
  TEMPERATURE("temperature");

  private final String word;

  Complaint(String word) {
    this.word = word;
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
   * Finds one by its word.
   *
   * @param word the word, exactly
   * @return the value, or empty for any other word
   */
  public static Optional<Complaint> of(String word) {
    for (Complaint value : values()) {
      if (value.word.equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}
