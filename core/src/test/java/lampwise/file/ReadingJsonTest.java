package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Candidate;
import lampwise.decode.Nearest;
import lampwise.decode.Next;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;

class ReadingJsonTest {
  private static final CodeSheet SHEET =
      CodeSheet.of(
          "Two states",
          Basis.INVENTED,
          List.of(
              LampState.of("resting", new Rhythm.Dark(), "Rests", Condition.READY),
              LampState.of("held", new Rhythm.Steady(), "Is held off", Condition.HELD_OFF)));

  private static final Window WHOLE = new Window(0, 90);

  private static Candidate candidate(String state, double probability) {
    return new Candidate(state, 0.5, -1, probability);
  }

  private static Observation observation(Origin origin, Marks marks, SeenBlink... blinks) {
    return new Observation(
        new BlinkLog(origin, marks, List.of()),
        marks.window(),
        Optional.of(new Rhythm.Dark()),
        List.of(blinks),
        Optional.empty(),
        List.of("seen note"));
  }

  private static String json(Reading reading) throws IOException {
    StringWriter out = new StringWriter();
    ReadingJson.reading(out, "a.txt", SHEET, reading);
    return out.toString();
  }

  private static Reading reading(Verdict verdict, List<Candidate> candidates, Observation... of) {
    return new Reading(verdict, candidates, Optional.of(new Rhythm.Dark()), List.of(), List.of(of));
  }

  @Test
  void decodedInTheOrderOfTheKeys() throws IOException {
    Verdict verdict = new Verdict.Decoded("resting", 0.9972, WHOLE);
    List<Candidate> candidates =
        List.of(
            candidate("resting", 0.9972), candidate("held", 0.0024), candidate("unlisted", 4e-4));
    Observation observation =
        observation(
            new Origin("a.txt", Optional.of("north-07"), List.of("file note")),
            Marks.watched(0, 90)
                .withTargets(
                    Targets.during(
                        List.of(
                            new TargetSpan(Double.NEGATIVE_INFINITY, 4.5),
                            new TargetSpan(80, Double.POSITIVE_INFINITY)))),
            new SeenBlink(new Blink(0.42, 0.54), 0.99),
            new SeenBlink(Blink.startingAt(7.00049), 0.5));
    Reading reading =
        new Reading(
            verdict,
            candidates,
            Optional.of(new Rhythm.Dark()),
            List.of(new Segment(0, WHOLE, verdict, candidates, Optional.empty())),
            List.of(observation));
    assertEquals(
        "{\"lampwise-json\":1,\"recording\":\"a.txt\",\"fixture\":\"north-07\","
            + "\"sheet\":\"Two states\",\"basis\":\"invented\",\"verdict\":\"decoded\","
            + "\"state\":\"resting\",\"condition\":\"ready\",\"means\":\"Rests\","
            + "\"probability\":0.9972,"
            + "\"candidates\":[{\"state\":\"resting\",\"probability\":0.9972},"
            + "{\"state\":\"held\",\"probability\":0.0024},"
            + "{\"state\":\"others\",\"probability\":0.0004}],"
            + "\"conditions\":[{\"condition\":\"ready\",\"probability\":0.9972},"
            + "{\"condition\":\"held-off\",\"probability\":0.0024}],"
            + "\"observed\":\"dark\",\"reason\":null,\"next\":null,\"nearest\":[],"
            + "\"window_s\":[0.0,90.0],\"targets_s\":[[0.0,4.5],[80.0,90.0]],"
            + "\"blinks\":[{\"on_s\":0.42,\"off_s\":0.54,\"probability\":0.99},"
            + "{\"on_s\":7.0,\"off_s\":null,\"probability\":0.5}],"
            + "\"segments\":[{\"from_s\":0.0,\"to_s\":90.0,\"verdict\":\"decoded\","
            + "\"state\":\"resting\",\"probability\":0.9972,\"observed\":null}],"
            + "\"notes\":[\"file note\",\"seen note\"]}",
        json(reading));
  }

  @Test
  void bothFormsOfNext() throws IOException {
    Next again = new Next.Watch(45, OptionalDouble.empty(), "none", "watch it");
    String record = json(reading(new Verdict.Undecided(List.of(), "too short", again), List.of()));
    assertTrue(
        record.contains(
            "\"reason\":\"too short\",\"next\":{\"kind\":\"record\",\"seconds\":45,"
                + "\"rate_hz\":null,\"target\":\"none\"}"),
        record);
    Next look = new Next.Check("Hold a card there", 0.5);
    String check = json(reading(new Verdict.Unreadable("no contrast", look), List.of()));
    assertTrue(
        check.contains(
            "\"reason\":\"no contrast\",\"next\":{\"kind\":\"check\","
                + "\"ask\":\"Hold a card there\",\"minutes\":0.5}"),
        check);
    assertTrue(check.contains("\"state\":null,\"condition\":null,\"means\":null"), check);
    assertTrue(check.contains("\"window_s\":null,\"targets_s\":[],\"blinks\":[]"), check);
  }

  @Test
  void nearestOfAnUnlistedRhythm() throws IOException {
    Verdict verdict =
        new Verdict.Unlisted(
            Optional.of(new Rhythm.Dark()), List.of(new Nearest("held", "steady", "it is dark")));
    String json = json(reading(verdict, List.of(candidate("unlisted", 1))));
    assertTrue(
        json.contains(
            "\"nearest\":[{\"state\":\"held\",\"rhythm\":\"steady\",\"difference\":\"it is dark\"}]"),
        json);
    assertTrue(
        json.contains("\"candidates\":[{\"state\":\"unlisted\",\"probability\":1.0}]"), json);
  }

  @Test
  void numbersThatAreNoneAreNeverWritten() throws IOException {
    Verdict verdict = new Verdict.Decoded("resting", Double.NaN, WHOLE);
    Next again = new Next.Watch(Double.NaN, OptionalDouble.of(Double.NaN), "any", "");
    for (Verdict each : List.of(verdict, new Verdict.Unreadable("why", again))) {
      String json =
          json(
              reading(
                  each,
                  List.of(candidate("resting", Double.NaN), candidate("held", -1)),
                  observation(
                      Origin.named("a"),
                      Marks.nothing().withTargets(Targets.during(List.of(TargetSpan.always()))),
                      new SeenBlink(Blink.startingAt(1), Double.NaN))));
      assertFalse(json.contains("NaN") || json.contains("Infinity"), json);
      assertTrue(json.contains("\"candidates\":[]"), json);
      assertTrue(json.contains("\"targets_s\":[]"), json);
    }
  }

  @Test
  void togetherShowsTheRecordingThatTheVerdictRestsOn() throws IOException {
    Verdict verdict = new Verdict.Decoded("held", 0.96, new Window(5, 30));
    Verdict other = new Verdict.Undecided(List.of(), "short", new Next.Check("Look again", 1));
    Reading reading =
        new Reading(
            verdict,
            List.of(candidate("held", 0.96), candidate("resting", 0.04)),
            Optional.empty(),
            List.of(
                new Segment(0, new Window(0, 10), other, List.of(), Optional.empty()),
                new Segment(1, new Window(5, 30), verdict, List.of(), Optional.empty())),
            List.of(
                observation(Origin.named("a.txt"), Marks.watched(0, 10)),
                observation(Origin.named("b.txt"), Marks.watched(5, 30))));
    String json = json(reading);
    assertTrue(json.contains("\"window_s\":[5.0,30.0]"), json);
    assertTrue(json.contains("\"segments\":[{\"from_s\":5.0,"), json);
    assertFalse(json.contains("\"from_s\":0.0"), json);
    assertTrue(json.contains("\"notes\":[\"a.txt: seen note\",\"b.txt: seen note\"]"), json);
  }

  @Test
  void withoutSheet() throws IOException {
    StringWriter out = new StringWriter();
    ReadingJson.observation(
        out, "-", observation(Origin.named("standard input"), Marks.watched(0, 5)));
    assertEquals(
        "{\"lampwise-json\":1,\"recording\":\"-\",\"fixture\":null,\"sheet\":null,\"basis\":null,"
            + "\"verdict\":null,\"state\":null,\"condition\":null,\"means\":null,"
            + "\"probability\":null,\"candidates\":null,\"conditions\":[],\"observed\":\"dark\","
            + "\"reason\":null,\"next\":null,\"nearest\":[],\"window_s\":[0.0,5.0],"
            + "\"targets_s\":[],\"blinks\":[],\"segments\":[],\"notes\":[\"seen note\"]}",
        out.toString());
  }

  @Test
  void refusedWithAndWithoutPlace() throws IOException {
    StringWriter out = new StringWriter();
    ReadingJson.refused(out, "a \"b\"\n.csv", new FileFault("x", 12, 3, "not a time"));
    ReadingJson.refused(out, "c", new FileFault("x", 0, 0, "no such file"));
    assertEquals(
        "{\"lampwise-json\":1,\"recording\":\"a \\\"b\\\"\\n.csv\","
            + "\"error\":{\"message\":\"not a time\",\"line\":12,\"column\":3}}"
            + "{\"lampwise-json\":1,\"recording\":\"c\","
            + "\"error\":{\"message\":\"no such file\",\"line\":null,\"column\":null}}",
        out.toString());
  }
}
