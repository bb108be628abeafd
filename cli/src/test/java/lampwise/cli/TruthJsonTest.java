package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Event;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Scene;
import lampwise.sim.Shown;
import lampwise.sim.Truth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TruthJsonTest {
  private static final String STARTING = "first steady 4.8 s afterwards 1 blink every 1.8 s";

  private static String example() throws IOException {
    return Files.readString(JsonSchema.folder().resolve("truth-example.json"));
  }

  private static CodeSheet sheet() throws Exception {
    LampState starting =
        LampState.of("starting", Phrase.parse(STARTING), "Starts", Condition.SETTING_UP);
    return CodeSheet.of("Demonstration wall unit, amber lamp", Basis.INVENTED, List.of(starting));
  }

  private static TruthJson.Source source(Map<String, Double> settings) throws Exception {
    return new TruthJson.Source(
        "starting-careful-001.log", 7, 1, sheet(), "careful", Optional.of("taps"), settings);
  }

  private static Scene scene(List<Act> acts) {
    return new Scene(
        new Window(0, 12),
        acts,
        List.of(new TargetSpan(Double.NEGATIVE_INFINITY, 2.5)),
        List.of(new Event(Event.Kind.POWER_UP, 1.25)),
        true,
        new Scene.Clock(0.05, 0),
        OptionalDouble.empty());
  }

  private static Truth truth() throws Exception {
    Scene scene = scene(List.of(Act.of(sheet().states().get(0))));
    List<Blink> blinks =
        List.of(
            new Blink(2.1, 6.9576),
            new Blink(6.9576, 7.0676),
            new Blink(8.7792, 8.8892),
            new Blink(10.6008, 10.7108));
    Shown shown = new Shown(scene, blinks, List.of(new Shown.ClockRate(0, 1.012)));
    return new Truth(shown, List.of(blinks.get(1)), List.of(9.4));
  }

  @Test
  void theExampleIsWhatIsWritten() throws Exception {
    Map<String, Double> settings = new LinkedHashMap<>();
    settings.put("timing-sd-s", 0.04);
    settings.put("missed", 0.03);
    assertEquals(example(), TruthJson.line(source(settings), truth()) + "\n");
    assertEquals("", JsonSchema.TRUTH.faults(example()));
  }

  @Test
  void numbersHaveFixedDecimalsAndWhatIsEndlessIsNull() throws Exception {
    Map<String, Double> settings = new LinkedHashMap<>();
    settings.put("small", 1.0 / 3e6);
    settings.put("large", 1e9);
    settings.put("most", Double.POSITIVE_INFINITY);
    Act random = Act.random(1.0 / 3);
    Scene scene = scene(List.of(random, Act.of(sheet().states().get(0)).from(11)));
    Shown shown =
        new Shown(
            scene,
            List.of(new Blink(-0.0, 1e-7), Blink.startingAt(20.0 / 3)),
            List.of(new Shown.ClockRate(0, 1)));
    String line =
        TruthJson.line(source(settings), new Truth(shown, List.of(), List.of(0.1 + 0.2, 1e5)));
    assertTrue(
        line.contains("\"settings\":{\"small\":0.000000333,\"large\":1000000000,\"most\":null}"),
        line);
    assertTrue(
        line.contains(
            "\"acts\":[{\"from_s\":null,\"state\":\"no-rhythm\",\"rhythm\":null,"
                + "\"random_per_s\":0.333333333},{\"from_s\":11.0,\"state\":\"starting\""),
        line);
    assertTrue(line.contains("\"state\":\"no-rhythm\",\"condition\":null,\"rhythm\":null"), line);
    assertTrue(
        line.contains(
            "\"blinks\":[{\"on_s\":0.0,\"off_s\":0.0},{\"on_s\":6.666667,\"off_s\":null}]"),
        line);
    assertTrue(line.contains("\"missed_s\":[],\"added_s\":[0.3,100000.0]}"), line);
    assertEquals("", JsonSchema.TRUTH.faults(line));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"lampwise-truth\":1   | \"lampwise-truth\":2",
        "\"seed\":7             | \"seed\":7.5",
        "\"number\":1           | \"number\":0",
        "\"basis\":\"invented\" | \"basis\":\"dreamt\"",
        "\"setting-up\",\"rhythm\" | \"setting-down\",\"rhythm\"",
        "\"noted_as\":\"taps\"  | \"noted_as\":\"songs\"",
        "\"missed\":0.03        | \"missed\":\"3 %\"",
        "[0.0,12.0]             | [0.0]",
        "\"marked\":true,       | ``",
        "[null,2.5]             | [null]",
        "\"power-up\"           | \"power-down\"",
        "\"at_s\":1.25          | \"at_s\":null",
        "\"random_per_s\":null  | \"random_per_s\":0.5",
        "\"ratio\":1.012        | \"ratio\":0",
        "\"on_s\":2.1           | \"on_s\":null",
        "\"missed_s\":[6.9576]  | \"missed_s\":6.9576",
        "\"added_s\"            | \"more_s\"",
      })
  void aSpoiledExampleIsFound(String found, String spoiled) throws IOException {
    String line = example();
    assertTrue(line.contains(found), found + " is not in the example");
    assertFalse(
        JsonSchema.TRUTH.faults(line.replace(found, spoiled == null ? "" : spoiled)).isEmpty());
  }
}
