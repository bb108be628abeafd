package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

/** Sheets and recording plans as JSON, to the letter. */
class SheetJsonTest {
  private static CodeSheet sheet(OptionalDouble blink) throws PhraseException {
    return new CodeSheet(
        "T",
        Basis.OBSERVED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.of("amber"),
        0.05,
        blink,
        List.of(
            new LampState(
                "a",
                Phrase.parse("1 blink every 3 s"),
                "M",
                Condition.READY,
                Seen.IDLE,
                2.5,
                Optional.of("says"),
                Optional.of("clears"),
                Optional.of("red")),
            LampState.of("b", Phrase.parse("dark"), "N", Condition.OTHER),
            LampState.of("c", Phrase.parse("dark"), "P", Condition.POWER_LOW)));
  }

  @Test
  void aRightSheetIsShownWhole() throws IOException, PhraseException {
    StringWriter out = new StringWriter();
    SheetJson.right(out, "f.yaml", sheet(OptionalDouble.of(0.12)));
    assertEquals(
        "{\"lampwise-json\":1,\"file\":\"f.yaml\",\"right\":true,\"sheet\":\"T\","
            + "\"basis\":\"observed\",\"clock\":0.05,\"blink_s\":0.12,"
            + "\"states\":[{\"state\":\"a\",\"rhythm\":\"1 blink every 3 s\",\"means\":\"M\","
            + "\"condition\":\"ready\",\"seen\":\"idle\",\"weight\":2.5,\"label_says\":\"says\","
            + "\"cleared_by\":\"clears\",\"lamp\":\"red\"},"
            + "{\"state\":\"b\",\"rhythm\":\"dark\",\"means\":\"N\",\"condition\":\"other\","
            + "\"seen\":\"always\",\"weight\":1,\"label_says\":null,\"cleared_by\":null,"
            + "\"lamp\":null},"
            + "{\"state\":\"c\",\"rhythm\":\"dark\",\"means\":\"P\",\"condition\":\"power-low\","
            + "\"seen\":\"always\",\"weight\":1,\"label_says\":null,\"cleared_by\":null,"
            + "\"lamp\":null}],"
            + "\"warnings\":[{\"kind\":\"same-rhythm\",\"first\":\"b\",\"second\":\"c\","
            + "\"message\":\"b and c have one rhythm; the lamp alone cannot tell them apart\","
            + "\"check\":\"measure the cells or the supply under load at the unit's connector\"}],"
            + "\"faults\":[]}",
        out.toString());
    StringWriter unsaid = new StringWriter();
    SheetJson.right(unsaid, "f.yaml", sheet(OptionalDouble.empty()));
    assertEquals(out.toString().replace("\"blink_s\":0.12", "\"blink_s\":null"), unsaid.toString());
  }

  @Test
  void aTurnedCycleIsAWarningOfItsOwn() throws IOException, PhraseException {
    String one = "1 blink of 0.4 s then dark 1 s then 1 blink of 0.1 s then dark 2 s";
    String other = "1 blink of 0.1 s then dark 2 s then 1 blink of 0.4 s then dark 1 s";
    StringWriter out = new StringWriter();
    SheetJson.right(
        out,
        "f.yaml",
        CodeSheet.of(
            "T",
            Basis.LABEL,
            List.of(
                LampState.of("a", Phrase.parse(one), "M", Condition.READY),
                LampState.of("b", Phrase.parse(other), "N", Condition.OTHER))));
    String json = out.toString();
    assertEquals(
        "\"warnings\":[{\"kind\":\"rotation\",\"first\":\"a\",\"second\":\"b\",\"message\":\"a and"
            + " b have one cycle with another start; once it repeats the lamp cannot tell them"
            + " apart\",\"check\":null}],\"faults\":[]}",
        json.substring(json.indexOf("\"warnings\"")));
  }

  @Test
  void aRefusedSheetHasItsFaultsOnly() throws IOException {
    StringWriter out = new StringWriter();
    SheetJson.refused(
        out,
        "f.yaml",
        List.of(new FileFault("f.yaml", 2, 3, "m"), new FileFault("f.yaml", 0, 0, "n")));
    assertEquals(
        "{\"lampwise-json\":1,\"file\":\"f.yaml\",\"right\":false,\"sheet\":null,\"basis\":null,"
            + "\"clock\":null,\"blink_s\":null,\"states\":null,\"warnings\":null,"
            + "\"faults\":[{\"message\":\"m\",\"line\":2,\"column\":3},"
            + "{\"message\":\"n\",\"line\":null,\"column\":null}]}",
        out.toString());
  }

  @Test
  void aPlanNamesItsPairs() throws IOException, PhraseException {
    StringWriter out = new StringWriter();
    PlanJson.write(
        out,
        sheet(OptionalDouble.empty()),
        "by tapping",
        Watching.bySensor(25),
        List.of(
            new RecordingPlan.Pair(
                "a", "b", OptionalDouble.of(12.5), Optional.empty(), Optional.empty()),
            new RecordingPlan.Pair(
                "b",
                "c",
                OptionalDouble.empty(),
                Optional.of("take the power off"),
                Optional.of("measure"))));
    assertEquals(
        "{\"lampwise-json\":1,\"sheet\":\"T\",\"basis\":\"observed\",\"by\":\"by tapping\","
            + "\"rate_hz\":25,\"sure\":0.99,"
            + "\"pairs\":[{\"first\":\"a\",\"second\":\"b\",\"seconds\":12.5,\"provoke\":null,"
            + "\"otherwise\":null},"
            + "{\"first\":\"b\",\"second\":\"c\",\"seconds\":null,"
            + "\"provoke\":\"take the power off\",\"otherwise\":\"measure\"}]}",
        out.toString());
  }
}
