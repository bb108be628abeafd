package lampwise.rhythm;

import java.util.Optional;

/** One part of a cycle or prelude. */
public sealed interface Part permits Part.Blinks, Part.RatedFor, Part.Lit, Part.Unlit {
  /**
   * Some blinks.
   *
   * @param count how many
   * @param size how long they are in words
   * @param of the length of each, if said
   * @param apart from the start of one to the start of the next, if said
   */
  record Blinks(Count count, Size size, Optional<Length> of, Optional<Length> apart)
      implements Part {}

  /**
   * Blinks at a rate for some time: the first at once, and all that begin before the time is over.
   * What follows follows the last of them.
   *
   * @param rate the rate
   * @param length for how long
   */
  record RatedFor(Rate rate, Length length) implements Part {}

  /**
   * The lamp stays on ({@code steady}).
   *
   * @param length for how long, if said
   */
  record Lit(Optional<Length> length) implements Part {}

  /**
   * The lamp stays off ({@code dark}): from the end of the last blink to the start of the next.
   *
   * @param length for how long, if said
   */
  record Unlit(Optional<Length> length) implements Part {}
}
