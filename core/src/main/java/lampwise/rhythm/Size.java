package lampwise.rhythm;

/** The length of a blink in words. A long blink lasts at least twice as long as a short one. */
public enum Size {
  /** Nothing was said. */
  UNSAID,
  /** The shorter kind. */
  SHORT,
  /** The longer kind. */
  LONG
}
