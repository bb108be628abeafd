package lampwise.rhythm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What phrases mean and how they are printed. */
class PhraseTest {
  private static final Optional<Length> NONE = Optional.empty();

  private static Optional<Length> exactly(double seconds) {
    return Optional.of(Length.exactly(seconds));
  }

  private static Part blinks(int count, Optional<Length> of, Optional<Length> apart) {
    return new Part.Blinks(Count.of(count), Size.UNSAID, of, apart);
  }

  private static Part sized(int count, Size size) {
    return new Part.Blinks(Count.of(count), size, NONE, NONE);
  }

  private static Rhythm cycle(Ending ending, Part... parts) {
    return new Rhythm.Blinking(List.of(), new Cycle.Parts(List.of(parts), ending));
  }

  private static Rhythm rate(Rate rate) {
    return new Rhythm.Blinking(List.of(), new Cycle.Rated(rate));
  }

  private static Ending every(double seconds) {
    return new Ending.Every(Length.exactly(seconds));
  }

  private static void means(String phrase, Rhythm rhythm) throws PhraseException {
    assertEquals(rhythm, Phrase.parse(phrase), phrase);
  }

  @Test
  void theExamplesOfTheNotationMeanWhatTheySay() throws PhraseException {
    means("1 blink every 7 s", cycle(every(7), blinks(1, NONE, NONE)));
    means("2 to 3 blinks per second", rate(new Rate(Rate.Form.RANGE, 2, 3, Rate.Per.SECOND)));
    means("4 blinks 0.5 s apart every 9 s", cycle(every(9), blinks(4, NONE, exactly(0.5))));
    means(
        "3 blinks 0.8 s apart then dark 1.1 s then 2 blinks 0.25 s apart, every 12 s",
        cycle(
            every(12),
            blinks(3, NONE, exactly(0.8)),
            new Part.Unlit(exactly(1.1)),
            blinks(2, NONE, exactly(0.25))));
    means(
        "1 long blink then 2 short blinks",
        cycle(new Ending.Repeating(), sized(1, Size.LONG), sized(2, Size.SHORT)));
    means(
        "steady 5 s then 8 blinks 0.3 s apart once",
        cycle(new Ending.Once(), new Part.Lit(exactly(5)), blinks(8, NONE, exactly(0.3))));
    means(
        "5 blinks per second for 3 s then dark 2 s",
        cycle(
            new Ending.Repeating(),
            new Part.RatedFor(new Rate(Rate.Form.EXACT, 5, 5, Rate.Per.SECOND), Length.exactly(3)),
            new Part.Unlit(exactly(2))));
    means(
        "1 blink of 60 ms every 25 to 30 s",
        cycle(new Ending.Every(Length.between(25, 30)), blinks(1, exactly(0.06), NONE)));
    means(
        "steady then dark 0.2 s every 8 s",
        cycle(every(8), new Part.Lit(NONE), new Part.Unlit(exactly(0.2))));
    means("fast blinks", rate(Rate.inWords(Rate.Form.FAST)));
  }

  @Test
  void darkAndSteadyAloneAreTheWholeRhythm() throws PhraseException {
    means("dark", new Rhythm.Dark());
    means(" Steady,", new Rhythm.Steady());
  }

  @Test
  void whatComesFirstHappensOnce() throws PhraseException {
    means(
        "first steady 5 s afterwards 1 blink every 10 s",
        new Rhythm.Blinking(
            List.of(new Part.Lit(exactly(5))),
            new Cycle.Parts(List.of(blinks(1, NONE, NONE)), every(10))));
    means(
        "first 3 blinks then dark 1 s afterwards slow blinks",
        new Rhythm.Blinking(
            List.of(blinks(3, NONE, NONE), new Part.Unlit(exactly(1))),
            new Cycle.Rated(Rate.inWords(Rate.Form.SLOW))));
    means(
        "first 3 blinks afterwards dark",
        new Rhythm.Blinking(
            List.of(blinks(3, NONE, NONE)),
            new Cycle.Parts(List.of(new Part.Unlit(NONE)), new Ending.Repeating())));
    means(
        "first 3 blinks afterwards steady",
        new Rhythm.Blinking(
            List.of(blinks(3, NONE, NONE)),
            new Cycle.Parts(List.of(new Part.Lit(NONE)), new Ending.Repeating())));
  }

  @Test
  void blinksAreARateUnlessTheyAreCounted() throws PhraseException {
    means("blinks", rate(Rate.inWords(Rate.Form.ANY)));
    means("slow blinks", rate(Rate.inWords(Rate.Form.SLOW)));
    means("3 blinks", cycle(new Ending.Repeating(), blinks(3, NONE, NONE)));
    means("3 blinks per second", rate(new Rate(Rate.Form.EXACT, 3, 3, Rate.Per.SECOND)));
    means("blink per minute", rate(new Rate(Rate.Form.EXACT, 1, 1, Rate.Per.MINUTE)));
    means("about 90 blinks per minute", rate(new Rate(Rate.Form.ABOUT, 90, 90, Rate.Per.MINUTE)));
    means(
        "about 0.5 to 2.5 blinks per second",
        rate(new Rate(Rate.Form.ABOUT_RANGE, 0.5, 2.5, Rate.Per.SECOND)));
    means(
        "2 to 3 blinks every 7 s",
        cycle(every(7), new Part.Blinks(new Count(2, 3), Size.UNSAID, Optional.empty(), NONE)));
  }

  @Test
  void durationsAreSaidInManyForms() throws PhraseException {
    double more = Double.POSITIVE_INFINITY;
    Length.Form about = Length.Form.ABOUT;
    means("steady about 3 s once", lit(new Length(about, 3, 3)));
    means("steady about 3 to 4 s once", lit(new Length(Length.Form.ABOUT_RANGE, 3, 4)));
    means("steady over 3 min once", lit(new Length(Length.Form.OVER, 180, more)));
    means("steady under 3 h once", lit(new Length(Length.Form.UNDER, 0, 10800)));
    means("steady 60 ms once", lit(Length.exactly(0.06)));
    means("steady 0.1 to 168 h once", lit(Length.between(360, 604800)));
    means(
        "2 blinks of about 0.1 s over 0.5 s apart",
        cycle(
            new Ending.Repeating(),
            blinks(
                2,
                Optional.of(new Length(about, 0.1, 0.1)),
                Optional.of(new Length(Length.Form.OVER, 0.5, more)))));
  }

  private static Rhythm lit(Length length) {
    return cycle(new Ending.Once(), new Part.Lit(Optional.of(length)));
  }

  @Test
  void thePartsWithoutEndingRepeat() throws PhraseException {
    assertEquals(
        Phrase.parse("3 blinks then 2 blinks repeating"), Phrase.parse("3 blinks then 2 blinks"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3 BLINK Then   2 blink | 3 blinks then 2 blinks repeating",
        "1 blinks every 7s | 1 blink every 7 s",
        "1,  blink , every 7 s , | 1 blink every 7 s",
        "1\u00a0blink\u202fevery\t7 s | 1 blink every 7 s",
        "007 blinks of 0.060 s 1.50 s apart | 7 blinks of 60 ms 1.5 s apart repeating",
        "1 blinks per second | 1 blink per second",
        "1.0 blink per second | 1 blink per second",
        "100 blinks | 100 blinks repeating",
        "1000 blinks per second | 1000 blinks per second",
        "60000 blinks per minute | 60000 blinks per minute",
        "ABOUT 3 blinks per second | about 3 blinks per second",
        "1 blink then dark 1 to 2 s every 4 s | 1 blink then dark 1 to 2 s every 4 s",
        "3 blinks 0.5 s apart then dark 1 s every 4 s | 3 blinks 0.5 s apart then dark 1 s every 4"
            + " s",
        "5 blinks per second for 3 s then dark 2 s every 5.2 s | 5 blinks per second for 3 s then"
            + " dark 2 s every 5.2 s",
        "3 blinks then dark 1 s every 9 s | 3 blinks then dark 1 s every 9 s",
        "2 blinks of 2 s then dark 1 s every 6 s | 2 blinks of 2 s then dark 1 s every 6 s",
        "2 blinks of 4 s then dark 1 s every 99 s | 2 blinks of 4 s then dark 1 s every 99 s",
        "0.5 blink per second | 0.5 blinks per second",
        "1 to 2 blink per minute | 1 to 2 blinks per minute",
        "slow blink | slow blinks",
        "1 to 2 blink once | 1 to 2 blinks once",
        "first 3 blinks afterwards dark repeating | first 3 blinks afterwards dark",
        "steady once | steady once",
        "1 blink every 100 ms | 1 blink every 0.1 s",
        "1 blink every 0.099 s | 1 blink every 99 ms",
        "1 blink every 1 min | 1 blink every 60 s",
        "1 blink every 120 s | 1 blink every 2 min",
        "1 blink every 121 s | 1 blink every 121 s",
        "1 blink every 1.5 min | 1 blink every 90 s",
        "1 blink every 60 min | 1 blink every 60 min",
        "1 blink every 120 min | 1 blink every 2 h",
        "1 blink every 2.5 h | 1 blink every 150 min",
        "1 blink every 168 h | 1 blink every 168 h",
        "1 blink every 60 to 120 s | 1 blink every 1 to 2 min",
        "1 blink every 90 to 120 s | 1 blink every 90 to 120 s",
        "1 blink of 60 to 100 ms every 2 s | 1 blink of 0.06 to 0.1 s every 2 s",
        "1 blink of 60 to 90 ms every 2 s | 1 blink of 60 to 90 ms every 2 s",
        "steady 0.1 s then dark 0.2 s every 0.3 s | steady 0.1 s then dark 0.2 s every 0.3 s",
        "steady 0.7 s then dark 0.1 s every 0.8 s | steady 0.7 s then dark 0.1 s every 0.8 s",
        "1 blink every over 7200 s | 1 blink every over 2 h",
        "1 blink every under 0.05 s | 1 blink every under 50 ms",
        "0.0000001 blinks per minute | 0.0000001 blinks per minute",
      })
  void isPrintedInOneForm(String phrase, String printed) throws PhraseException {
    assertEquals(printed, Phrase.print(Phrase.parse(phrase)));
    assertEquals(printed, Phrase.print(Phrase.parse(printed)));
  }

  @Test
  void numbersAreReadExactly() throws PhraseException {
    assertEquals(Phrase.parse("steady 60 ms once"), Phrase.parse("steady 0.06 s once"));
    assertEquals(Phrase.parse("steady 70.3 ms once"), Phrase.parse("steady 0.0703 s once"));
    assertEquals(Phrase.parse("steady 0.7 min once"), Phrase.parse("steady 42 s once"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.45 | 0.45 s",
        "0.06 | 60 ms",
        "0 | 0 s",
        "-0.0 | 0 s",
        "1e-7 | 0.0001 ms",
        "1e7 | 10000000 s",
        "7200 | 2 h",
        "119 | 119 s",
        "60 | 60 s",
      })
  void oneDurationIsShown(double seconds, String shown) {
    assertEquals(shown, Phrase.shown(seconds));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -1, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNoDurationIsNotShown(double seconds) {
    assertThrows(RhythmException.class, () -> Phrase.shown(seconds));
  }

  @Test
  void anUnsaidLowerBorderHasOneZero() {
    assertEquals(new Length(Length.Form.UNDER, 0.0, 3), new Length(Length.Form.UNDER, -0.0, 3));
  }
}
