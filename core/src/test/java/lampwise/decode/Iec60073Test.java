package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import lampwise.sheet.CodeSheet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Flash rates of indicator lamps: slow 0.4 to 0.8 Hz (24 to 48 a minute), normal 1.4 to 2.8 Hz (84
 * to 168 a minute).
 *
 * <p>Source: IEC 60073:2002, seen-secondary (a design note that quotes the IEEE P1621 draft of 15
 * December 2002, 4.4.2 and 4.4.3, and several web summaries). Equal light and dark is from memory
 * and only the lamp's way here, not asserted.
 */
class Iec60073Test {
  private static CodeSheet sheet(double clock) {
    return Sheets.of(
        clock,
        "slow",
        "24 to 48 blinks per minute",
        "normal",
        "84 to 168 blinks per minute",
        "fixed",
        "steady");
  }

  private static CleanRecordings lamp(double hertz, double phase, double seconds) {
    return CleanRecordings.blinks(0.5 / hertz, 1 / hertz, 0).phase(phase).window(seconds);
  }

  @ParameterizedTest
  @CsvSource({"0.5, slow", "0.6, slow", "0.7, slow", "1.6, normal", "2, normal", "2.5, normal"})
  void insideABandFromStarts(double hertz, String state) {
    for (double phase : new double[] {0, 0.4, 0.9}) {
      Answers.assertDecoded(state, Answers.decode(sheet(0.1), lamp(hertz, phase, 30).starts()));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.5, slow", "0.6, slow", "0.7, slow", "1.6, normal", "2, normal", "2.5, normal"})
  void insideABandFromStartsAndEnds(double hertz, String state) {
    for (double phase : new double[] {0, 0.4, 0.9}) {
      Answers.assertDecoded(state, Answers.decode(sheet(0.1), lamp(hertz, phase, 30).onAndOff()));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.4, slow", "0.8, slow", "1.4, normal", "2.8, normal"})
  void onTheBorders(double hertz, String state) {
    Reading reading = Answers.decode(sheet(0), lamp(hertz, 0.3, 120).starts());
    assertEquals(state, Answers.top(reading), () -> Answers.shown(reading));
  }

  @ParameterizedTest
  @CsvSource({"0.402, slow", "0.798, slow", "1.405, normal", "2.79, normal"})
  void justInside(double hertz, String state) {
    Answers.assertDecoded(state, Answers.decode(sheet(0), lamp(hertz, 0.3, 120).starts()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.39, 0.82, 1, 1.37, 2.86})
  void outsideTheBands(double hertz) {
    Reading reading = Answers.decode(sheet(0), lamp(hertz, 0.3, 120).starts());
    assertEquals(CodeSheet.UNLISTED, Answers.top(reading), () -> Answers.shown(reading));
  }
}
