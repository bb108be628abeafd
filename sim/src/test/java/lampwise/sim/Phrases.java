package lampwise.sim;

import java.util.List;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;

/** Phrases that cover the grammar, and what a test wants of phrases. */
public final class Phrases {
  /** Phrases that hold together, so that every value of a draw can be as it was said. */
  static final List<String> SOUND =
      List.of(
          "dark",
          "steady",
          "blinks",
          "slow blinks",
          "fast blinks",
          "1 blink per minute",
          "about 90 blinks per minute",
          "2 to 3 blinks per second",
          "about 2 to 3 blinks per second",
          "10 blinks per second",
          "400 blinks per second",
          "1 blink repeating",
          "1 blink every 7 s",
          "1 blink of 60 ms every 25 to 30 s",
          "1 blink of 60 ms every about 7 s",
          "1 blink of 0.1 to 0.2 s every over 5 s",
          "1 blink of under 0.5 s every under 5 s",
          "1 blink every about 4 to 5 s",
          "3 blinks repeating",
          "2 to 5 blinks repeating",
          "100 blinks repeating",
          "4 blinks 0.5 s apart every 9 s",
          "4 blinks 0.5 s apart every 2 s",
          "4 blinks 0.4 to 0.6 s apart every 9 s",
          "4 blinks of 0.2 s over 0.5 s apart repeating",
          "4 blinks of over 0.5 s over 0.2 s apart repeating",
          "4 blinks of under 0.5 s under 0.4 s apart repeating",
          "2 to 3 blinks about 0.4 s apart every 7 s",
          "3 blinks then 2 blinks",
          "2 blinks then 3 blinks then 1 blink every 9 s",
          "2 blinks then 2 blinks then 2 blinks then 2 blinks",
          "3 blinks 0.8 s apart then dark 1.1 s then 2 blinks 0.25 s apart, every 12 s",
          "3 blinks 0.8 s apart then dark 1.1 s then 2 blinks 0.25 s apart repeating",
          "2 blinks then dark then 3 blinks every 20 s",
          "2 blinks then dark then 3 blinks then dark 5 s repeating",
          "3 blinks then dark repeating",
          "dark 2 s then 3 blinks repeating",
          "dark then 3 blinks 0.4 s apart every 8 s",
          "1 long blink then 2 short blinks",
          "2 short blinks then 2 long blinks every 8 s",
          "1 long blink of 0.6 s then 2 short blinks every 8 s",
          "1 long blink then 2 short blinks of 0.1 s 0.4 s apart every 8 s",
          "1 long blink of 0.57 s then 2 short blinks of 0.11 s 0.61 s apart every 9.6 s",
          "1 long blink then dark 2 s then 1 short blink repeating",
          "3 long blinks of 1 s repeating",
          "5 blinks per second for 3 s then dark 2 s",
          "4 to 6 blinks per second for 2 to 3 s then dark 2 s",
          "slow blinks for 10 s then fast blinks for 3 s repeating",
          "fast blinks for 2 s then dark 2 s every 4.1 s",
          "2 blinks per second for 20 s once",
          "steady then dark 0.2 s every 8 s",
          "steady 0.2 s then dark every 8 s",
          "steady then dark repeating",
          "steady 2 to 3 s then dark 1 to 2 s every 4 s",
          "steady then 3 blinks every 20 s",
          "2 blinks of about 28 to 300 s 25 s apart repeating",
          "4 blinks of over 2 s under 4 s apart repeating",
          "dark over 28 s then 3 blinks of under 20 s 14 s apart every 2 h",
          "steady 4 s then dark 4 s",
          "1 blink then dark 2 s every 3.5 s",
          "4 blinks then dark 2 s every 4 s",
          "steady 5 s then 8 blinks 0.3 s apart once",
          "dark 2 s then 3 blinks 0.47 s apart once",
          "3 blinks 0.47 s apart once",
          "3 blinks then 2 blinks once",
          "steady once",
          "1 blink of over 2 s once",
          "first steady 5 s afterwards 1 blink every 10 s",
          "first 3 blinks afterwards 2 blinks every 9 s",
          "first dark 2 s afterwards 1 blink every 10 s",
          "first 1 long blink then 1 short blink afterwards 2 to 3 blinks per second",
          "first 3 blinks 0.5 s apart then dark 2 s afterwards steady",
          "first 3 blinks 0.5 s apart afterwards steady",
          "first steady afterwards dark",
          "first fast blinks for 2 s afterwards dark",
          "first steady 2 s afterwards 6 blinks once");

  /** Phrases whose numbers a lamp cannot show all at once. */
  static final List<String> CONTRADICTORY =
      List.of(
          "5 blinks per second for 3 s then dark 2 s every 5 s",
          "fast blinks for 2 s then dark 2 s every 4.5 s",
          "20 blinks then dark 50 s then 20 blinks every 56 s",
          "1 short blink of 0.4 s then 3 long blinks 0.5 s apart every 4 s",
          "1000 blinks per second for 168 h then dark 1 s");

  private Phrases() {}

  /**
   * The rhythm of a phrase that is right.
   *
   * @param phrase the phrase
   * @return its rhythm
   */
  public static Rhythm rhythm(String phrase) {
    try {
      return Phrase.parse(phrase);
    } catch (PhraseException e) {
      throw new AssertionError(phrase, e);
    }
  }
}
