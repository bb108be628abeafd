package lampwise.rhythm;

/** How a cycle goes on after its parts. */
public sealed interface Ending permits Ending.Every, Ending.Repeating, Ending.Once {
  /**
   * It repeats in this time, start to start.
   *
   * @param cycle the whole cycle
   */
  record Every(Length cycle) implements Ending {}

  /** It repeats; the pause before it does is not said (or is a part of its own). */
  record Repeating() implements Ending {}

  /** From the first to the last light, then dark until the next trigger. */
  record Once() implements Ending {}
}
