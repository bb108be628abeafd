package lampwise.rhythm;

/**
 * Reads and prints rhythm phrases.
 *
 * <pre>
 * rhythm = "dark" | "steady" | ["first" parts "afterwards"] cycle
 * cycle  = rate | parts [ending]
 * parts  = part { "then" part }
 * part   = blinks | rate "for" dur | "steady" [dur] | "dark" [dur]
 * blinks = count [size] ("blink" | "blinks") ["of" dur] [dur "apart"]
 * rate   = [["about"] number ["to" number]] ("blink" | "blinks") "per" ("second" | "minute")
 *        | ["slow" | "fast"] "blinks"
 * count  = integer ["to" integer]            size = "short" | "long"
 * ending = "every" dur | "repeating" | "once"
 * dur    = ["about"] number ["to" number] unit | ("over" | "under") number unit
 * unit   = "ms" | "s" | "min" | "h"
 * </pre>
 */
public final class Phrase {
  private Phrase() {}

  /**
   * Reads a phrase, in time linear in its length. Upper and lower case, the number of blanks of any
   * kind, and {@code blink} or {@code blinks} make no difference; a comma followed by a blank or
   * the end is noise. A rate per second or minute without a number is one blink. A cycle of parts
   * without an ending repeats.
   *
   * @param text the phrase
   * @return its rhythm
   * @throws PhraseException if it cannot be read or means nothing; the column lies in 1 to one more
   *     than the text's length
   */
  public static Rhythm parse(String text) throws PhraseException {
    try {
      return PhraseParser.parse(text);
    } catch (Fault fault) {
      throw new PhraseException(fault.column(), fault.reason(), Repair.suggestion(fault));
    }
  }

  /**
   * Prints a rhythm: the one phrase for it. Parsing it gives an equal rhythm, and equal rhythms
   * print alike. It is all lower case with single blanks and no comma; {@code repeating} is printed
   * wherever a cycle of parts has neither {@code every} nor {@code once}, except after a lone
   * {@code steady} or {@code dark}. Durations are as {@link #shown} prints them, the two borders of
   * a range in one unit, which its upper border chooses.
   *
   * @param rhythm the rhythm
   * @return its phrase
   */
  public static String print(Rhythm rhythm) {
    return PhrasePrinter.rhythm(rhythm);
  }

  /**
   * Prints one duration as phrases do: in ms below 0.1 s, in h or min where it is a whole number of
   * them and at least two, else in s; never with an exponent, and with as many digits as it takes
   * to read back the same double.
   *
   * @param seconds the duration; zero gives {@code 0 s}
   * @return for example {@code 0.45 s} or {@code 60 ms}
   * @throws RhythmException if it is NaN, infinite or below zero
   */
  public static String shown(double seconds) {
    if (!(seconds >= 0) || seconds == Double.POSITIVE_INFINITY) {
      throw new RhythmException("a duration to print must be zero or more: " + seconds);
    }
    return PhrasePrinter.single(seconds);
  }
}
