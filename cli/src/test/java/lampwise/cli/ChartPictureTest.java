package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.imageio.ImageIO;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChartPictureTest {
  private static final CodeSheet SHEET = Readings.sheet(Basis.LABEL);

  private static ChartSubject subject(Reading reading) {
    return ChartSubject.of(SHEET, reading, 0);
  }

  private static Observation observed(Recording recording, List<SeenBlink> blinks) {
    return new Observation(
        recording, recording.window(), Optional.empty(), blinks, Optional.empty(), List.of());
  }

  private static Reading withSegments(Observation observation, Segment... segments) {
    Reading base = Readings.decoded();
    return new Reading(
        base.verdict(),
        base.candidates(),
        base.observed(),
        List.of(segments),
        List.of(observation));
  }

  private static Segment segment(double from, double to, Verdict verdict) {
    return new Segment(0, new Window(from, to), verdict, List.of(), Optional.empty());
  }

  private static LightCurve curve(double perSecond, int samples, Marks marks) {
    double[] seconds = new double[samples];
    double[] levels = new double[samples];
    for (int i = 0; i < samples; i++) {
      seconds[i] = i / perSecond;
      levels[i] = 40 + (i * 7919 % 13) * 0.1 + (seconds[i] % 3.1 < 0.1 ? 18 : 0);
    }
    return LightCurve.of(
        Origin.named("levels.csv"), marks, LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  @Test
  void theAnswerStandsAboveAndEachStretchIsNamed() {
    Pictures picture = Pictures.of(subject(Readings.decoded()), 1000);
    assertEquals(
        List.of(
            "Sheet made for a test; a.txt",
            "cells-low (97 %): Backup cells are running down",
            "seen: 1 blink every 3.2 s",
            "state",
            "cells-low, 97 %",
            "blinks",
            "seconds",
            "bracket: only the start of the blink is known; hollow: a doubtful blink"),
        picture.labels());
  }

  @Test
  void anInventedSheetIsNamedSoInTheFirstLine() {
    ChartSubject subject = ChartSubject.of(Readings.sheet(Basis.INVENTED), Readings.decoded(), 0);
    assertEquals(
        "[invented sheet] Sheet made for a test; a.txt", Pictures.of(subject, 1000).texts().get(0));
  }

  @Test
  void everyVerdictHasItsWordsAndAShapeOfItsOwn() {
    Pictures undecided = Pictures.of(subject(Readings.undecided()), 1000);
    assertTrue(undecided.labels().contains("undecided: cells-low (62 %) or unlisted (36 %)"));
    assertTrue(undecided.labels().contains("undecided, perhaps cells-low 62 %"));
    Pictures unlisted = Pictures.of(subject(Readings.unlisted()), 1000);
    assertTrue(unlisted.labels().contains("unlisted (98 %): this rhythm is not on the sheet"));
    assertTrue(
        unlisted.labels().contains("unlisted: 1 blink every 3.2 s"), unlisted.labels()::toString);
    Pictures unreadable = Pictures.of(subject(Readings.unreadable()), 1000);
    assertTrue(
        unreadable.labels().contains("unreadable: the light is sampled too slowly"),
        unreadable.labels()::toString);
    assertTrue(unreadable.labels().contains("unreadable"));
    // No hatch, lines one way, lines both ways.
    assertEquals(0, hatches(Pictures.of(subject(Readings.decoded()), 1000)));
    assertEquals(1, hatches(undecided));
    assertEquals(2, hatches(unlisted));
    assertEquals(2, hatches(unreadable));
  }

  private static int hatches(Pictures picture) {
    return picture.paths("stroke:rgb(169,178,187)").size();
  }

  @Test
  void withoutASheetTheObservedRhythmIsTheTitle() {
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observation("a.txt")), 1000);
    assertEquals(List.of("a.txt", "1 blink every 3.2 s"), picture.labels().subList(0, 2));
    assertFalse(picture.labels().contains("state"));
  }

  @Test
  void targetsEventsAndWhatWasNotSeenAreLabelledInTheirRows() {
    Marks marks =
        new Marks(
            Optional.of(new Window(5, 50)),
            Targets.during(List.of(new TargetSpan(20, Double.POSITIVE_INFINITY))),
            List.of(new Event(Event.Kind.POWER_UP, 6), new Event(Event.Kind.FLUSH, 7)),
            List.of(new Window(8, 19)));
    BlinkLog log =
        new BlinkLog(
            Origin.named("marks.txt"),
            marks,
            List.of(new Blink(6, 6.2), new Blink(30, 31), new Blink(60, 61)));
    List<SeenBlink> blinks = log.blinks().stream().map(b -> new SeenBlink(b, 0.9)).toList();
    Pictures picture = Pictures.of(ChartSubject.of(observed(log, blinks)), 1000);
    List<String> labels = picture.labels();
    for (String label :
        List.of("target", "unseen", "covered", "not watched", "event", "power-up", "flush")) {
      assertTrue(labels.contains(label), () -> label + " in " + labels);
    }
    // The name of the row and the label of the stretch.
    assertEquals(2, labels.stream().filter("target"::equals).count());
    // The mark of each event runs through the whole chart as a dashed line.
    long dashed = picture.source().split("stroke-dasharray:4,3", -1).length - 1L;
    assertTrue(dashed >= 1, picture.source());
  }

  @Test
  void aStretchWithoutRoomHasANumberThatIsExplainedBelow() {
    Observation observation = Readings.observation("a.txt");
    Verdict ready = new Verdict.Decoded("standing-by", 0.98, new Window(0, 3));
    Verdict low = new Verdict.Decoded("cells-low", 0.99, new Window(3, 90));
    Reading reading = withSegments(observation, segment(0, 3, ready), segment(3, 90, low));
    Pictures wide = Pictures.of(ChartSubject.of(SHEET, reading, 0), 1000);
    assertTrue(wide.texts().contains("1: standing-by, 98 %, 0 to 3 s"), wide.texts()::toString);
    assertTrue(wide.texts().contains("1"));
    assertTrue(wide.texts().contains("cells-low, 99 %"));
  }

  @Test
  void aDoubtfulBlinkAndOneWithoutEndHaveShapesOfTheirOwn() {
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 40), 1);
    List<SeenBlink> blinks =
        List.of(
            new SeenBlink(new Blink(1, 2), 0.9),
            new SeenBlink(new Blink(10, 11), 0.2),
            new SeenBlink(Blink.startingAt(20), 0.9),
            new SeenBlink(Blink.startingAt(30), 0.2));
    Pictures picture = Pictures.of(ChartSubject.of(observed(log, blinks)), 1000);
    List<String> drawn = picture.paths("rgb(138,90,0)");
    assertEquals(4, drawn.size(), drawn::toString);
    assertEquals(2, drawn.stream().filter(path -> path.endsWith("Z")).count(), drawn::toString);
    assertTrue(
        picture
            .texts()
            .contains("bracket: only the start of the blink is known; hollow: a doubtful blink"));
  }

  @Test
  void manyBlinksAreCountedNotPassedForASteadyLight() {
    List<SeenBlink> blinks = new ArrayList<>();
    for (int i = 0; i < 900; i++) {
      blinks.add(new SeenBlink(new Blink(i, i + 0.1), 0.9));
    }
    BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, 900), 1);
    Pictures picture = Pictures.of(ChartSubject.of(observed(log, blinks)), 1000);
    assertTrue(
        picture.texts().contains("900 blinks, too close to be told apart here"),
        picture.texts()::toString);
  }

  /** Groups of three, 0.27 s apart, in 90 s. */
  private static ChartSubject groups() {
    double[] starts = new double[27];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = 2 + i / 3 * 10.3 + i % 3 * 0.27;
    }
    return ChartSubject.of(
        new LampDecoder().observe(BlinkLog.ofStarts(Marks.watched(0, 90), starts)));
  }

  @Test
  void aGroupThatRunsIntoOneSaysHowManyItHolds() {
    Pictures narrow = Pictures.of(groups(), 360);
    assertEquals(9, narrow.texts().stream().filter("3\u00d7"::equals).count());
    assertTrue(
        String.join(" ", narrow.texts()).contains("3\u00d7: so many blinks, too close"),
        narrow.texts()::toString);
    assertFalse(String.join(" ", Pictures.of(groups(), 4000).texts()).contains("3\u00d7"));
  }

  @Test
  void aRowWithoutBlinksSaysSo() {
    Observation none = observed(BlinkLog.ofStarts(Marks.watched(0, 60)), List.of());
    assertTrue(Pictures.of(ChartSubject.of(none), 1000).texts().contains("none seen"));
  }

  @Test
  void theNameOfTheLevelsStandsAboveTheirTrace() {
    Pictures picture =
        Pictures.of(ChartSubject.of(observed(curve(20, 200, Marks.nothing()), List.of())), 1000);
    assertTrue(picture.topOf("rgb(36,80,107)") > picture.baselineOf("light level"));
  }

  @Test
  void aLogThatCannotBeReadIsDrawnAsItWasNoted() {
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing(), 3.3);
    Pictures picture = Pictures.of(ChartSubject.of(new LampDecoder().observe(log)), 1000);
    assertEquals(1, picture.paths("rgb(138,90,0)").size());
  }

  @Test
  void evenSamplesAreALineAndChangesAreSteps() {
    Pictures even =
        Pictures.of(ChartSubject.of(observed(curve(2, 5, Marks.nothing()), List.of())), 1000);
    String line = even.paths("rgb(36,80,107)").get(0);
    assertEquals(5, points(line), line);
    LightCurve changes =
        LightCurve.of(
            Origin.named("changes.csv"),
            Marks.nothing(),
            LightCurve.Lit.DARKER,
            new double[] {0, 0.1, 3, 3.1, 6, 6.1},
            new double[] {10, 5, 10, 5, 10, 5});
    Pictures steps = Pictures.of(ChartSubject.of(observed(changes, List.of())), 1000);
    assertTrue(steps.labels().contains("light level (lower is on)"), steps.labels()::toString);
    String stepped = steps.paths("rgb(36,80,107)").get(0);
    // Each change is a level line and an upright one.
    assertTrue(points(stepped) >= 10, stepped);
  }

  /** The points of a path that are not its empty beginning or the dot of a first sample. */
  private static int points(String path) {
    return path.split("[L]", -1).length - 1;
  }

  @Test
  void missingLevelsAreSaidAndNotBridged() {
    double[] seconds = new double[100];
    double[] levels = new double[100];
    for (int i = 0; i < 100; i++) {
      seconds[i] = i < 50 ? i * 0.1 : i * 0.1 + 10;
      levels[i] = i >= 20 && i < 40 ? Double.NaN : 5;
    }
    LightCurve curve =
        LightCurve.of(
            Origin.named("gaps.csv"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
    Pictures picture = Pictures.of(ChartSubject.of(observed(curve, List.of())), 1000);
    assertEquals(
        2,
        picture.labels().stream().filter("no levels"::equals).count(),
        picture.labels()::toString);
    String trace = picture.paths("rgb(36,80,107)").get(0);
    assertEquals(3, trace.split("M", -1).length - 1, trace);
  }

  @Test
  void anHourAtFiftySamplesASecondIsASmallPicture() {
    LightCurve hour = curve(50, 180_000, Marks.nothing());
    Pictures picture = Pictures.of(ChartSubject.of(observed(hour, List.of())), 1000);
    assertTrue(picture.source().length() < 1_000_000, () -> picture.source().length() + " bytes");
    // It still shows the least and the greatest level of every column.
    assertTrue(picture.paths("rgb(36,80,107)").get(0).length() > 10_000);
  }

  @ParameterizedTest
  @ValueSource(strings = {"3 blinks every 7 to 9 s", "nothing", "steady", "fast blinks"})
  void aDescriptionIsDrawnAsItWasSaid(String said) {
    Description description =
        new Description(Origin.named("what was said"), Marks.watched(0, 40), said);
    Pictures picture = Pictures.of(ChartSubject.of(new LampDecoder().observe(description)), 360);
    assertTrue(picture.labels().contains("as described"), picture.labels()::toString);
    assertTrue(
        String.join(" ", picture.labels()).contains("as described: " + said + ", watched 40 s"),
        picture.labels()::toString);
  }

  @Test
  void aPictureHasTheSizeThatWasAskedForAndIsNotBlank() throws IOException {
    for (int width : new int[] {240, 360, 1000}) {
      ChartPicture picture =
          new ChartPicture(subject(Readings.decoded()), OptionalDouble.empty(), width);
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(ChartImage.PNG.bytes(picture)));
      assertEquals(width, image.getWidth());
      assertEquals(picture.height(), image.getHeight());
      Set<Integer> colours = new HashSet<>();
      for (int x = 0; x < image.getWidth(); x++) {
        for (int y = 0; y < image.getHeight(); y++) {
          colours.add(image.getRGB(x, y));
        }
      }
      assertTrue(colours.size() > 20, () -> colours.size() + " colours");
    }
  }

  @Test
  void theSameRecordingGivesTheSameBytes() {
    for (ChartImage image : ChartImage.values()) {
      byte[] first = image.bytes(picture());
      assertArrayEquals(first, image.bytes(picture()), image::name);
    }
  }

  private static ChartPicture picture() {
    return new ChartPicture(subject(Readings.undecided()), OptionalDouble.empty(), 600);
  }

  @Test
  void lettersStayLettersAndNothingRefersElsewhere() {
    Pictures picture = Pictures.of(subject(Readings.undecided()), 1000);
    for (String never :
        List.of("href=", "url(", "<image", "<font", "<!DOCTYPE", "<script", "<!--")) {
      assertFalse(picture.source().contains(never), never);
    }
  }

  @Test
  void hostileNamesAreOnlyText() {
    String name = "</text><script>alert('&\"')</script>\u0007\u202e.csv";
    Observation observation = observed(BlinkLog.ofStarts(Marks.watched(0, 9), 1), List.of());
    ChartSubject subject = new ChartSubject(name, name, List.of(name), observation, List.of());
    Pictures picture = Pictures.of(subject, 1000);
    assertEquals(0, picture.document().getElementsByTagName("script").getLength());
    assertTrue(
        picture.texts().get(0).startsWith("</text><script>alert('&\"')</script>"),
        picture.texts()::toString);
  }

  @Test
  void longWordsAreCutToTheWidth() {
    String name = "x".repeat(5000);
    Observation observation = observed(BlinkLog.ofStarts(Marks.watched(0, 9), 1), List.of());
    Pictures picture =
        Pictures.of(new ChartSubject(name, name, List.of(), observation, List.of()), 240);
    assertTrue(picture.texts().get(0).length() < 60, picture.texts().get(0));
    assertTrue(picture.texts().get(0).endsWith("..."));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-300, 1e9, 1e15, -1e15})
  void anyTimeCanBeDrawn(double at) {
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing(), at);
    Pictures picture =
        Pictures.of(
            ChartSubject.of(observed(log, List.of(new SeenBlink(log.blinks().get(0), 1)))), 360);
    assertTrue(picture.labels().contains("blinks"));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, 1e-300, 1.7e308, -1.7e308, Double.NaN})
  void anyLevelCanBeDrawn(double level) {
    LightCurve curve =
        LightCurve.of(
            Origin.named("levels.csv"),
            Marks.nothing(),
            LightCurve.Lit.BRIGHTER,
            new double[] {0, 1, 2},
            new double[] {level, level, -level});
    Pictures picture = Pictures.of(ChartSubject.of(observed(curve, List.of())), 360);
    assertTrue(picture.labels().contains("light level"));
  }

  @Test
  void anEmptyCurveAndAnEmptyLogAreDrawn() {
    LightCurve curve = curve(1, 0, Marks.nothing());
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing());
    for (Recording recording : List.of(curve, log)) {
      Pictures picture = Pictures.of(ChartSubject.of(observed(recording, List.of())), 360);
      assertTrue(picture.labels().contains("seconds"));
    }
  }

  @Test
  void candidatesAreNotNeeded() {
    Verdict verdict =
        new Verdict.Undecided(
            List.<Candidate>of(), "nothing to weigh", new lampwise.decode.Next.Check("look", 1));
    Reading reading = withSegments(Readings.observation("a.txt"), segment(0, 90, verdict));
    assertTrue(Pictures.of(subject(reading), 1000).labels().contains("undecided"));
  }
}
