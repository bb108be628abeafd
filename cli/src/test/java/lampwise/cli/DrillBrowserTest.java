package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import tools.jackson.databind.JsonNode;

/** The page of {@code drill} played in a real browser; skipped where there is none. */
class DrillBrowserTest {
  private static final int ATTEMPTS = 3;

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();

  private final Phone phone = started.orElseThrow();
  private JsonNode plan =
      DrillTest.plan("<script type=\"application/json\" id=\"plan\">{}</script>");

  @BeforeAll
  static void startPhone() throws IOException {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    for (int level = 1; level <= 4; level++) {
      CommandRun.Setting.in(folder)
          .write(
              "drill", "level" + level, "--sheet", "demo", "--count", "6", "--level", "" + level);
    }
    Files.writeString(
        folder.resolve("fast.sheet.yaml"),
        """
        lampwise-sheet: 1
        title: Fast
        basis: label
        blink: 50 ms
        states:
          a: { rhythm: 6 blinks per second, means: It is fast, condition: other }
        """);
    CommandRun.Setting.in(folder)
        .write("drill", "fast", "--sheet", "fast.sheet.yaml", "--count", "1");
    Files.writeString(folder.resolve("h.sheet.yaml"), CaptureTest.hostileSheet());
    CommandRun.Setting.in(folder)
        .write("drill", "hostile", "--sheet", "h.sheet.yaml", "--count", "1");
  }

  @AfterAll
  static void stopPhone() {
    started.ifPresent(Phone::close);
  }

  private void open(String drill) {
    Path page = folder.resolve(drill).resolve("drill.html");
    phone.requests();
    phone.console();
    phone.open(page.toUri().toString());
    try {
      plan = DrillTest.plan(Files.readString(page));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @AfterEach
  void nothingWasAskedForAndNothingWentWrong() {
    assertEquals(List.of(), phone.console());
    assertEquals(
        List.of(),
        phone.requests().stream().filter(address -> !address.endsWith("/drill.html")).toList());
  }

  private JsonNode unit(int number) {
    return plan.get("cases").get(number - 1);
  }

  private String asked(int number) {
    int state = unit(number).get("lights").get(0).get("state").asInt();
    return plan.get("states").get(state).get("name").asString();
  }

  /** Whole milliseconds that are enough to tell a case. */
  private int needed(int number) {
    JsonNode need = unit(number).get("need");
    return (int) Math.ceil(1000 * (need.get("rest").asDouble() + need.get("after").asDouble()));
  }

  private void answer(String state) {
    phone.tap("answer");
    WebElement button =
        phone.element("states").findElement(By.cssSelector("[data-state=" + state + "]"));
    phone.script("arguments[0].click()", button);
  }

  private String other(String state) {
    for (JsonNode one : plan.get("states")) {
      if (!one.get("name").asString().equals(state)) {
        return one.get("name").asString();
      }
    }
    throw new AssertionError("one state only");
  }

  private void next() {
    phone.script("document.getElementById('next').click()");
  }

  private boolean lit() {
    return phone.holds("return document.getElementById('lamp').classList.contains('lit')");
  }

  @Test
  void theLampBlinksWhenTheUnitDoes() throws InterruptedException {
    String late = "";
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      open("level1");
      phone.script(DrillWitness.SCRIPT);
      phone.tap("start");
      Thread.sleep(7000);
      late = DrillWitness.lateness(phone, unit(1));
      if (late.isEmpty()) {
        return;
      }
    }
    assertEquals("", late);
  }

  @Test
  void answersRightWrongEarlyAndGuessed() {
    open("level2");
    phone.tap("start");
    phone.letPass(needed(1) + 500);
    answer(asked(1));
    assertEquals("Right: " + asked(1), phone.label("verdict"));
    assertTrue(phone.label("truth").contains("Case 1 is " + asked(1)), phone.label("truth"));
    assertTrue(phone.label("needed").startsWith("You watched "), phone.label("needed"));
    next();
    phone.letPass(needed(2) + 500);
    answer(other(asked(2)));
    assertEquals("Wrong: " + other(asked(2)), phone.label("verdict"));
    next();
    phone.letPass(500);
    answer(asked(3));
    assertEquals("A lucky guess: " + asked(3), phone.label("verdict"));
    next();
    phone.tap("answer");
    phone.tap("undecided");
    assertEquals("Left open too early: undecided", phone.label("verdict"));
    next();
    // Watch longer, rightly, and then undecided although it can be told.
    phone.tap("answer");
    phone.tap("longer");
    phone.letPass(needed(5) + 500);
    phone.tap("answer");
    phone.tap("undecided");
    assertEquals("Wrong: undecided", phone.label("verdict"));
    assertTrue(
        phone.label("needed").contains("“Watch longer” once, rightly."), phone.label("needed"));
    next();
    phone.letPass(needed(6) + 500);
    answer(asked(6));
    assertEquals("Score", phone.label("next"));
    next();
    assertEquals("2 of 6 right", phone.label("score-title"));
    assertEquals("Lucky guesses: 1. Left open too early: 1. Wrong: 2.", phone.label("score-says"));
    assertEquals(6, phone.element("rows").findElements(By.tagName("tr")).size());
    phone.script("document.getElementById('again').click()");
    phone.tap("start");
    assertEquals("Case 1 of 6", phone.label("case"));
  }

  /** The hand, the power and the button make a lamp show what it shows only then. */
  @Test
  void handPowerAndButton() {
    open("level3");
    phone.tap("start");
    int triggered = 0;
    for (int number = 1; number <= 6; number++) {
      List<String> tells =
          unit(number).get("need").get("tells").valueStream().map(JsonNode::asString).toList();
      if (!tells.isEmpty()) {
        triggered++;
        phone.letPass(3000);
        assertFalse(lit(), "dark before anything was done: " + asked(number));
        switch (tells.get(0)) {
          case "hand-in" -> {
            phone.tap("hand");
            assertEquals("Hand out", phone.label("hand"));
            assertTrue(phone.label("circumstances").contains("hand"));
          }
          case "power-on" -> {
            phone.tap("power");
            assertEquals("Power is off", phone.label("power"));
            phone.letPass(3100);
            assertEquals("Power off and on", phone.label("power"));
          }
          default -> phone.tap("button");
        }
      }
      phone.letPass(needed(number) + 600);
      answer(asked(number));
      assertEquals("Right: " + asked(number), phone.label("verdict"));
      next();
    }
    assertTrue(triggered >= 2, "cases that need something done: " + triggered);
    assertEquals("6 of 6 right", phone.label("score-title"));
  }

  /** Dark is told by a check; without one it is right to leave it open, after a fair wait. */
  @Test
  void darkNeedsAcheck() {
    open("level4");
    phone.tap("start");
    int dark = 0;
    for (int number = 1; number <= 6; number++) {
      JsonNode light = unit(number).get("lights").get(0);
      boolean isDark = light.get("cycle").isEmpty() && light.get("prelude").isEmpty();
      dark += isDark ? 1 : 0;
      phone.letPass((int) (1000 * unit(number).get("need").get("rest").asDouble()) + 500);
      if (isDark && dark == 1) {
        phone.tap("answer");
        phone.tap("undecided");
        assertEquals("Right: undecided", phone.label("verdict"));
        next();
        continue;
      }
      if (isDark) {
        phone.tap("hand");
        phone.letPass(6000);
      }
      answer(asked(number));
      assertEquals("Right: " + asked(number), phone.label("verdict"));
      next();
    }
    assertTrue(dark >= 1, "no dark case");
    assertEquals("6 of 6 right", phone.label("score-title"));
  }

  @Test
  void tapsAreComparedWithTheLamp() {
    open("level2");
    phone.tap("start");
    phone.tap("lamp");
    phone.keys(20, Keys.SPACE);
    assertEquals("2 taps", phone.label("taps"));
    phone.letPass(15000);
    phone.tap("answer");
    phone.tap("undecided");
    assertTrue(
        phone.label("tapped").matches("Since your first tap \\d+ blinks? came on: you missed .*"),
        phone.label("tapped"));
    assertFalse(phone.element("watched").findElements(By.cssSelector("rect.missed")).isEmpty());
    assertEquals(
        2, phone.element("watched").findElements(By.cssSelector("path.tap, path.extra")).size());
  }

  @Test
  void waitingIsMarkedAsTimeLapseAndDoesNotFlash() throws InterruptedException {
    open("level2");
    phone.tap("start");
    phone.tap("wait");
    phone.await("lapse", "Time-lapse ×10");
    assertFalse(lit());
    assertFalse(phone.element("answer").isEnabled());
    assertTrue(phone.element("live").isDisplayed());
    Thread.sleep(1300);
    assertFalse(phone.element("lapse").isDisplayed());
    phone.tap("answer");
    String watched = phone.label("choose-note");
    int seconds = Integer.parseInt(watched.replaceAll("\\D+", ""));
    assertTrue(seconds >= 10 && seconds <= 14, watched);
  }

  @Test
  void fastLampsAreWarnedOfAndMayBeSeenAsAstrip() throws InterruptedException {
    open("fast");
    assertTrue(phone.element("fast-note").isDisplayed());
    phone.tap("start");
    assertTrue(phone.element("warn").isDisplayed());
    assertFalse(phone.element("watch").isDisplayed());
    phone.tap("warn-strip");
    for (int i = 0; i < 10; i++) {
      assertFalse(lit(), "a strip does not flash");
      Thread.sleep(40);
    }
    assertTrue(phone.element("live").isDisplayed());
    // Back to the lamp only by the warning.
    phone.tap("strip");
    assertTrue(phone.element("warn").isDisplayed());
    phone.tap("warn-lamp");
    boolean on = false;
    for (int i = 0; i < 200 && !on; i++) {
      on = lit();
    }
    assertTrue(on);
  }

  @Test
  void aStripChosenBeforeTheStartLetsNothingFlash() {
    open("fast");
    phone.script("document.getElementById('ready-strip').click()");
    phone.tap("start");
    assertTrue(phone.element("watch").isDisplayed());
    assertFalse(lit());
    assertEquals("Show the lamp", phone.label("strip"));
  }

  @Test
  void aPageThatIsHiddenDoesNotWatch() {
    open("level2");
    phone.tap("start");
    phone.script(
        "Object.defineProperty(document, 'hidden', { value: true, configurable: true });"
            + "document.dispatchEvent(new Event('visibilitychange'))");
    phone.letPass(30000);
    phone.script(
        "Object.defineProperty(document, 'hidden', { value: false, configurable: true });"
            + "document.dispatchEvent(new Event('visibilitychange'))");
    phone.tap("answer");
    int seconds = Integer.parseInt(phone.label("choose-note").replaceAll("\\D+", ""));
    assertTrue(seconds < 20, phone.label("choose-note"));
  }

  @Test
  void hostileTextsAreOnlyText() {
    open("hostile");
    phone.tap("start");
    phone.tap("answer");
    assertEquals("undefined", phone.text("return typeof window.hacked"));
    assertTrue(phone.label("states").contains("</script><script>"), phone.label("states"));
  }

  /**
   * Less motion is asked for: nothing but the lamp moves, and the page says that there is a strip.
   */
  @Test
  void lessMotionIsHonoured() {
    phone.command(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    open("level1");
    assertTrue(phone.element("motion-note").isDisplayed());
    assertEquals(
        "0",
        phone.text(
            "return Array.from(document.querySelectorAll('*')).filter((e) => {"
                + " const s = getComputedStyle(e);"
                + " return s.animationName !== 'none' || parseFloat(s.transitionDuration) > 0;"
                + "}).length"));
    phone.scheme("light");
    open("level1");
    assertFalse(phone.element("motion-note").isDisplayed());
  }
}
