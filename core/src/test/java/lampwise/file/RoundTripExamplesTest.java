package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One sample for each law of what is written and read back. */
class RoundTripExamplesTest {
  private static final List<Long> MILLIS =
      List.of(300L, 3_500L, 6_720L, 9_900L, 13_041L, 61_500L, 64_700L, 71_000L);

  private final RecordingRoundTripTest times = new RecordingRoundTripTest();

  @ParameterizedTest
  @ValueSource(strings = {" ", ", ", "; ", "\t", "\n", "\r\n", ",\n", "   "})
  void timesInAnyWriting(String separator) throws Exception {
    times.plainSeconds(MILLIS, separator);
    times.numberedLists(MILLIS, separator);
    times.minutesAndHours(MILLIS, separator);
    times.pairsOfOnAndOff(MILLIS, separator);
  }

  @Test
  void timesInAnyOrder() throws Exception {
    times.clockTimesOverMidnight(MILLIS);
    times.gapsAfterAStart(MILLIS);
    times.listsFromLastToFirst(MILLIS);
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t", " ", ", ", ",\t"})
  void lightFilesWithAnyDelimiter(String delimiter) throws Exception {
    times.lightFiles(MILLIS, delimiter);
  }

  @ParameterizedTest
  @EnumSource(LightShape.class)
  void curvesInAnyShape(LightShape shape) throws Exception {
    List<Integer> gaps = new ArrayList<>();
    List<Integer> levels = new ArrayList<>();
    for (int i = 0; i < 80; i++) {
      gaps.add(120_000 + 7_919 * i % 150_000);
      levels.add(37 * i % 900);
    }
    for (int decimals = 0; decimals <= 3; decimals++) {
      new LightShapeTest()
          .everyShapeIsReadAsTheCurveThatWasWritten(
              shape, new LightShapeTest.Drawn(1_234_567, gaps, levels), decimals);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1,2\n3,4\n5,6",
        "1,2\r\n3,4\r\n5,6\r\n",
        "1\r2\r3\r",
        "\n\n\n",
        "\u00e9,\u00e9\n\"a\nb\"\r\n",
        "a"
      })
  void partsOfALongText(String text) throws Exception {
    for (int size = 1; size <= 9; size++) {
      new LongTextTest().thePartsAreTheTextAndEndWhereLinesDo(text, size);
    }
  }

  private static Origin origin(String fixture) {
    return new Origin("r", Optional.of(fixture), List.of());
  }

  @Test
  void curvesAsTheirOwnFiles() throws Exception {
    List<Long> gaps = List.of(1L, 20_000L, 41_237L, 1_000_000L, 30_000_000L);
    for (int decimals = 0; decimals <= LightCsv.MOST_DECIMALS; decimals++) {
      new LightCsvTest().isReadAsTheSameCurve(gaps, -1_500_000, decimals, 1234);
    }
  }

  @Test
  void logsOfEveryKind() throws Exception {
    Marks all =
        new Marks(
            Optional.of(new Window(-1, 60.5)),
            Targets.during(List.of(new TargetSpan(3, 4.25), new TargetSpan(20, 28))),
            List.of(new Event(Event.Kind.POWER_UP, 0), new Event(Event.Kind.FLUSH, 30.125)),
            List.of(new Window(40, 42)));
    List<Recording> recordings =
        List.of(
            new BlinkLog(
                origin("north-07"),
                all,
                List.of(new Blink(3.1, 3.22), new Blink(6.25, Double.NaN))),
            new BlinkLog(origin("b: x # y"), Marks.nothing(), List.of()),
            new Description(origin("c"), all, "fast blinks"));
    LogRoundTripTest log = new LogRoundTripTest();
    log.readingGivesBackWhatWasWritten(recordings);
    log.readingGivesBackWhatWasWritten(
        List.of(
            new BlinkLog(
                new Origin("r", Optional.empty(), List.of()),
                new Marks(Optional.empty(), Targets.none(), List.of(), List.of()),
                List.of(new Blink(-2.5, -2.25)))));
    log.anyTimesAreRoundedOnce(List.of(-3.5, 0.0004, 1.23456, 7.0, 7.0, 123456.789, 2e5));
  }
}
