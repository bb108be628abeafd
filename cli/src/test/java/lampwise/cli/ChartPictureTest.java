package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
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

/** The picture as a whole: its words, its rows, its size. */
class ChartPictureTest {
  private static final CodeSheet SHEET = Readings.sheet(Basis.LABEL);

  private static ChartSubject subject(Reading reading) {
    return ChartSubject.of(SHEET, reading, 0);
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
    Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(log, blinks)), 1000);
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
    Observation observation =
        Readings.observed(BlinkLog.ofStarts(Marks.watched(0, 9), 1), List.of());
    ChartSubject subject =
        new ChartSubject(name, name, List.of(name), observation, List.of(), Optional.empty());
    Pictures picture = Pictures.of(subject, 1000);
    assertEquals(0, picture.document().getElementsByTagName("script").getLength());
    assertTrue(
        picture.texts().get(0).startsWith("</text><script>alert('&\"')</script>"),
        picture.texts()::toString);
  }

  @Test
  void longWordsAreCutToTheWidth() {
    String name = "x".repeat(5000);
    Observation observation =
        Readings.observed(BlinkLog.ofStarts(Marks.watched(0, 9), 1), List.of());
    Pictures picture =
        Pictures.of(
            new ChartSubject(name, name, List.of(), observation, List.of(), Optional.empty()), 240);
    assertTrue(picture.texts().get(0).length() < 60, picture.texts().get(0));
    assertTrue(picture.texts().get(0).endsWith("..."));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-300, 1e9, 1e15, -1e15})
  void anyTimeCanBeDrawn(double at) {
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing(), at);
    Pictures picture =
        Pictures.of(
            ChartSubject.of(Readings.observed(log, List.of(new SeenBlink(log.blinks().get(0), 1)))),
            360);
    assertTrue(picture.labels().contains("blinks"));
  }

  @Test
  void anEmptyCurveAndAnEmptyLogAreDrawn() {
    LightCurve curve =
        LightCurve.of(
            Origin.named("levels.csv"),
            Marks.nothing(),
            LightCurve.Lit.BRIGHTER,
            new double[0],
            new double[0]);
    BlinkLog log = BlinkLog.ofStarts(Marks.nothing());
    for (Recording recording : List.of(curve, log)) {
      Pictures picture = Pictures.of(ChartSubject.of(Readings.observed(recording, List.of())), 360);
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
