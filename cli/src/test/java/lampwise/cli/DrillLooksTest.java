package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/**
 * Whether everybody can see, reach and work the page of {@code drill}, from a phone to a projector
 * and with keys alone; skipped where there is no browser.
 */
class DrillLooksTest {
  private static final String LAMP_SHARE =
      "const b = document.getElementById('lamp').getBoundingClientRect();"
          + "return b.width * b.height / innerWidth / innerHeight";

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();

  private final Phone phone = started.orElseThrow();

  @BeforeAll
  static void startPhone() {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    CommandRun run =
        CommandRun.Setting.in(folder)
            .run("", "drill", "--sheet", "demo", "--level", "4", "--count", "2", "--out", "x");
    assertEquals(0, run.status(), run.err());
  }

  @AfterAll
  static void stopPhone() {
    started.ifPresent(Phone::close);
  }

  @BeforeEach
  void useAnOrdinaryPhone() {
    phone.screen(390, 844);
    phone.scheme("light");
  }

  private void open() {
    phone.open(folder.resolve("x/drill.html").toUri().toString());
  }

  private void click(String id) {
    phone.script("document.getElementById(arguments[0]).click()", id);
  }

  private void inEveryState(Consumer<String> check) {
    open();
    check.accept("ready");
    click("start");
    phone.letPass(100);
    check.accept("watching");
    click("hand");
    phone.tap("lamp");
    click("power");
    phone.letPass(100);
    check.accept("hand in, power off");
    phone.letPass(3000);
    click("wait");
    phone.letPass(300);
    check.accept("time-lapse");
    phone.letPass(2000);
    click("strip");
    phone.letPass(300);
    check.accept("as a strip");
    phone.letPass(20000);
    click("answer");
    check.accept("choosing");
    click("undecided");
    check.accept("explained");
    click("next");
    click("answer");
    click("undecided");
    click("next");
    check.accept("score");
    assertTrue(phone.element("score").isDisplayed());
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void everyTextAndEdgeStandsOut(String scheme) {
    phone.scheme(scheme);
    inEveryState(
        state ->
            assertEquals(List.of(), phone.script(CaptureLooksTest.FAINT), scheme + ", " + state));
  }

  @ParameterizedTest
  @CsvSource({
    "320, 568, 0.25",
    "360, 740, 0.3",
    "740, 340, 0.35",
    "1280, 800, 0.3",
    "1920, 1080, 0.4"
  })
  void everythingFitsAndIsLargeEnough(int width, int height, double share) {
    phone.screen(width, height);
    inEveryState(
        state -> {
          assertEquals(width + " x " + height, phone.text(CaptureLooksTest.SIZE));
          assertFalse(phone.holds(CaptureLooksTest.WIDE), state);
          assertEquals(List.of(), phone.script(CaptureLooksTest.SMALL), state);
          if (phone.element("watch").isDisplayed()) {
            assertTrue(
                phone.holds("return document.documentElement.scrollHeight <= innerHeight + 1"),
                state + " has to be scrolled");
            if (state.equals("watching")) {
              double found = Double.parseDouble(phone.text(LAMP_SHARE));
              assertTrue(found >= share, "the lamp has " + found + " of the screen");
            }
          }
        });
  }

  /**
   * Lit and dark differ by more than colour: the glass by three to one, and rays by being there.
   */
  @Test
  void lightIsNotToldByColourAlone() {
    open();
    click("start");
    String rays =
        "document.getElementById('lamp').classList.toggle('lit', arguments[0]);"
            + "return getComputedStyle(document.querySelector('.rays')).visibility";
    assertEquals("hidden", phone.text(rays, false));
    assertEquals("visible", phone.text(rays, true));
  }

  @Test
  void keysAloneDoItAll() {
    open();
    reach("start");
    phone.keys(0, Keys.ENTER);
    assertEquals("lamp", phone.active().getDomProperty("id"));
    phone.keys(20, Keys.SPACE);
    assertEquals("1 tap", phone.label("taps"));
    reach("hand");
    phone.keys(20, Keys.SPACE);
    assertEquals("Hand out", phone.label("hand"));
    assertEquals("lamp", phone.active().getDomProperty("id"), "the lamp has the space bar again");
    phone.keys(20, Keys.SPACE);
    assertEquals("2 taps", phone.label("taps"));
    reach("answer");
    phone.keys(20, Keys.ENTER);
    reach("undecided");
    phone.keys(20, Keys.ENTER);
    assertTrue(phone.element("explain").isDisplayed());
    reach("next");
    phone.keys(20, Keys.ENTER);
    assertEquals("Case 2 of 2", phone.label("case"));
  }

  private void reach(String id) {
    for (int i = 0; i < 40; i++) {
      if (id.equals(phone.active().getDomProperty("id"))) {
        assertTrue(
            phone.holds(
                "const s = getComputedStyle(document.activeElement);"
                    + "return s.outlineStyle === 'solid' && parseFloat(s.outlineWidth) >= 3"),
            "the focus shows on " + id);
        return;
      }
      phone.keys(0, Keys.TAB);
    }
    throw new AssertionError(id + " cannot be reached");
  }
}
