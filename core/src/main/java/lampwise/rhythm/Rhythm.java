package lampwise.rhythm;

import java.util.List;

/** What a lamp shows: dark, steady, or blinks in some order. One lamp, one colour, on or off. */
public sealed interface Rhythm permits Rhythm.Dark, Rhythm.Steady, Rhythm.Blinking {
  /** The lamp is off. */
  record Dark() implements Rhythm {}

  /** The lamp is on. */
  record Steady() implements Rhythm {}

  /**
   * Blinks in some order, perhaps after something that happens once. A prelude may be followed by a
   * lamp that stays as it is: a repeating cycle of one {@link Part.Lit} or {@link Part.Unlit}
   * without length.
   *
   * @param prelude what comes once before the cycle; empty if nothing does
   * @param cycle what comes then
   */
  record Blinking(List<Part> prelude, Cycle cycle) implements Rhythm {
    /**
     * Keeps a copy of the prelude and checks that the phrase means something.
     *
     * @throws RhythmException if the parts contradict each other
     */
    public Blinking {
      prelude = List.copyOf(prelude);
      RhythmRules.check(prelude, cycle);
    }
  }
}
