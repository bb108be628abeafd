package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmArbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How soon one blink may follow another, by its phrase and by its trains. */
class LeastApartLawsTest {
  private static final double CLOCK = 0.1;
  private static final OptionalDouble BLINK = OptionalDouble.of(0.1);

  @ParameterizedTest
  @CsvSource({
    "1 blink every 3.1 s, 3.1",
    "3 blinks 0.27 s apart every 10.3 s, 0.27",
    "3 blinks 3 s apart every 8 s, 2",
    "2.3 to 2.5 blinks per second, 0.4",
    "2 blinks 0.45 s apart then dark 1.3 s then 3 blinks 0.45 s apart every 11 s, 0.45",
    "steady then dark 0.5 s every 7.3 s, 0"
  })
  void whatThePhraseSays(String phrase, double seconds) throws PhraseException {
    Rhythm.Blinking rhythm = (Rhythm.Blinking) Phrase.parse(phrase);
    assertEquals(seconds, LeastApart.seconds(rhythm, BLINK), 1e-9);
  }

  @Property(tries = 300)
  @Label("no train has blinks nearer than its phrase says")
  void noTrainIsFaster(@ForAll("blinking") Rhythm.Blinking rhythm, @ForAll boolean own) {
    OptionalDouble blink = own ? BLINK : OptionalDouble.empty();
    double least = Math.sqrt(1 - CLOCK * CLOCK) * LeastApart.seconds(rhythm, blink);
    for (Train train : Templates.of(rhythm, blink, CLOCK)) {
      double apart = TooFast.apartSeconds(train);
      assertTrue(apart >= 0.999 * least, () -> Phrase.print(rhythm) + ": " + apart + " < " + least);
    }
  }

  @Provide
  Arbitrary<Rhythm.Blinking> blinking() {
    return RhythmArbitraries.blinking();
  }
}
