package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import lampwise.file.SheetReader;
import lampwise.light.Blink;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Chance;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The lamp and the judge of the page's script, against the ones in Java; in a real browser. */
class DrillScriptTest {
  private static final double CLOSE = 0.02;
  private static final int CASES = 60;

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();
  private static String script = "";

  private final Phone phone = started.orElseThrow();

  @BeforeAll
  static void startPhone() throws IOException {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    script = resource("drill-light.js") + resource("drill-judge.js");
  }

  @AfterAll
  static void stopPhone() {
    started.ifPresent(Phone::close);
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = Objects.requireNonNull(DrillPage.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8) + "\n";
    }
  }

  /** What the script says, as JSON. */
  private JsonNode ask(String call, String unit, String acts) {
    String json =
        phone.text(
            script
                + "const unit = JSON.parse(arguments[0]); const acts = JSON.parse(arguments[1]);"
                + "return JSON.stringify("
                + call
                + ");",
            unit,
            acts);
    return new ObjectMapper().readTree(json);
  }

  private static String json(List<DrillAct> acts) {
    return "["
        + String.join(
            ",",
            acts.stream()
                .map(
                    act ->
                        "{\"kind\":\"%s\",\"at\":%s}"
                            .formatted(act.kind().word(), Fixed.of(act.atSeconds(), 4, 0)))
                .toList())
        + "]";
  }

  /** Things done at random, in an order that can be. */
  private static List<DrillAct> acts(Chance chance) {
    List<DrillAct> acts = new ArrayList<>();
    boolean hand = false;
    boolean power = true;
    double at = 0;
    for (int i = chance.below(7); i > 0; i--) {
      at += Math.rint(chance.uniform(0.2, 12) * 1000) / 1000;
      int which = power ? chance.below(3) : 1;
      switch (which) {
        case 0 -> {
          hand = !hand;
          acts.add(new DrillAct(hand ? DrillAct.Kind.HAND_IN : DrillAct.Kind.HAND_OUT, at));
        }
        case 1 -> {
          power = !power;
          acts.add(new DrillAct(power ? DrillAct.Kind.POWER_ON : DrillAct.Kind.POWER_OFF, at));
        }
        default -> acts.add(new DrillAct(DrillAct.Kind.BUTTON, at));
      }
    }
    return acts;
  }

  @Test
  void bothLampsShowTheSame() {
    CodeSheet demo = SheetReader.demo();
    int blinks = 0;
    for (int level = 1; level <= 4; level++) {
      DrillPlan plan = DrillPlan.drawn(demo, level, CASES / 4, 9, Chance.of(9));
      JsonNode units = new ObjectMapper().readTree(DrillPage.json(plan)).get("cases");
      for (DrillCase one : plan.cases()) {
        List<DrillAct> acts = acts(Chance.of(level).branch(one.number()));
        List<Blink> expected = one.unit().blinks(acts, 0, 80);
        JsonNode found =
            ask("blinksOf(unit, acts, 0, 80)", units.get(one.number() - 1).toString(), json(acts));
        String said = acts + " " + expected + " " + found;
        assertEquals(expected.size(), found.size(), said);
        for (int i = 0; i < expected.size(); i++) {
          blinks++;
          assertEquals(expected.get(i).onSeconds(), found.get(i).get(0).asDouble(), CLOSE, said);
          assertEquals(expected.get(i).offSeconds(), found.get(i).get(1).asDouble(), CLOSE, said);
        }
      }
    }
    assertTrue(blinks > 500, blinks + " blinks");
  }

  /** Whoever does what the recordings show, and watches as long, can tell every case. */
  @Test
  void whatIsEnoughInJavaIsEnoughForThePage() {
    CodeSheet demo = SheetReader.demo();
    for (int level = 1; level <= 4; level++) {
      DrillPlan plan = DrillPlan.drawn(demo, level, CASES / 4, 4, Chance.of(4));
      JsonNode units = new ObjectMapper().readTree(DrillPage.json(plan)).get("cases");
      for (DrillCase one : plan.cases()) {
        DrillWatch watch = DrillWatch.enough(one);
        String unit = units.get(one.number() - 1).toString();
        String end = Fixed.of(watch.seconds(), 4, 0);
        String name = one.unit().asked().state().name();
        String acts = json(watch.acts());
        assertTrue(ask("canBeTold(unit, acts, " + end + ")", unit, acts).asBoolean(), name);
        assertEquals(
            "right",
            ask("judge(unit, acts, " + end + ", unit.lights[0].state)", unit, acts)
                .get("worth")
                .asString(),
            name);
        assertEquals(
            "wrong",
            ask("judge(unit, acts, " + end + ", 'undecided')", unit, acts).get("worth").asString(),
            name);
        boolean early = ask("canBeTold(unit, [], 0.5)", unit, acts).asBoolean();
        assertTrue(!early, name + " cannot be told at once");
      }
    }
  }

  @Test
  void tapsServeTheNearestBlink() {
    String blinks = "[[1,1.1],[4,4.1],[7,7.1],[10,10.1],[13,13.1]]";
    JsonNode found = ask("compareTaps(acts, unit, [])", "[4.2,7.1,7.3,11.2]", blinks);
    assertEquals("[10,13]", found.get("missed").toString());
    assertEquals("[7.3,11.2]", found.get("extra").toString());
    assertEquals(4, found.get("due").asInt(), "the first came before the first tap");
    assertEquals(0.2, found.get("late").asDouble(), 1e-9);
    JsonNode lapse = ask("compareTaps(acts, unit, [[9, 12]])", "[4.2,7.1]", blinks);
    assertEquals("[13]", lapse.get("missed").toString());
    assertTrue(ask("compareTaps(acts, unit, [])", "[]", blinks).isNull());
  }

  @Test
  void whatLooksTheSameIsRightlyLeftOpen() {
    CodeSheet sheet =
        DrillSheets.of(
            DrillSheets.state("a", "1 blink every 3 s", lampwise.sheet.Seen.ALWAYS),
            DrillSheets.state("b", "1 blink every 3.01 s", lampwise.sheet.Seen.ALWAYS));
    DrillPlan plan = DrillPlan.drawn(sheet, 2, 1, 1, Chance.of(1));
    String unit = new ObjectMapper().readTree(DrillPage.json(plan)).get("cases").get(0).toString();
    assertEquals(
        "right", ask("judge(unit, acts, 60, 'undecided')", unit, "[]").get("worth").asString());
    assertEquals(
        "early", ask("judge(unit, acts, 2, 'undecided')", unit, "[]").get("worth").asString());
    assertEquals(
        "guess",
        ask("judge(unit, acts, 60, unit.lights[0].state)", unit, "[]").get("worth").asString());
  }
}
