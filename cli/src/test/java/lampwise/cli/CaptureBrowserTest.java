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
import lampwise.cli.Phone.Finger;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Recording;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The page of {@code capture} in a real browser; skipped where there is none. */
class CaptureBrowserTest {
  /** A machine that is busy with something else may be late; the page must not be, always. */
  private static final int ATTEMPTS = 3;

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();

  private final Phone phone = started.orElseThrow();

  @BeforeAll
  static void startPhone() throws IOException {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    CommandRun.Setting.in(folder)
        .write("capture", "demo.html", "--sheet", "demo", "--fixture", "north-07");
    CommandRun.Setting.in(folder).write("capture", "plain.html");
    Files.writeString(folder.resolve("h.sheet.yaml"), CaptureTest.hostileSheet());
    CommandRun.Setting.in(folder)
        .write(
            "capture", "hostile.html", "--sheet", "h.sheet.yaml", "--fixture", CaptureTest.HOSTILE);
  }

  @AfterAll
  static void stopPhone() {
    started.ifPresent(Phone::close);
  }

  @BeforeEach
  void openPage() {
    open("demo.html");
  }

  private void open(String page) {
    phone.openAnew(folder.resolve(page));
    phone.requests();
    phone.console();
  }

  /** In no test does the page ask for anything but itself, complain, or write what is no log. */
  @AfterEach
  void nothingWasAskedForAndNothingWentWrong() {
    if (phone.element("result").isDisplayed()) {
      Recording recording = Witness.recording(phone.log());
      assertTrue(recording.window().isPresent(), phone.log().toString());
    }
    assertEquals(List.of(), phone.console());
    String self = folder.toUri().toString();
    assertEquals(
        List.of(), phone.requests().stream().filter(address -> !address.startsWith(self)).toList());
  }

  private Finger onLamp() {
    return new Finger("one").at(phone.element("lamp"));
  }

  /** Stops, also before enough was watched. */
  private void stop() {
    phone.tap("stop");
    if (phone.element("stop").isDisplayed()) {
      assertTrue(phone.label("stop").endsWith("early?"), phone.label("stop"));
      phone.tap("stop");
    }
  }

  /** The recording, which must have so many lines. */
  private List<String> lines(int number) {
    List<String> lines = phone.log();
    assertEquals(number, lines.size(), lines.toString());
    return lines;
  }

  private List<String> marks() {
    return phone.log().stream().filter(line -> line.startsWith("on ")).toList();
  }

  @Test
  void holdsAndTapsGiveTheirTimes() {
    String late = "";
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      open("demo.html");
      phone.script(Witness.SCRIPT);
      phone.tap("start");
      phone.fingers(onLamp().pause(300).down().pause(700).up().pause(500).down().pause(60).up());
      phone.fingers(onLamp().pause(400).down().pause(450).up().pause(350));
      stop();
      late = Witness.lateness(lines(6), phone.script("return window.seen"));
      if (late.isEmpty()) {
        return;
      }
    }
    assertEquals("", late, "in " + ATTEMPTS + " attempts");
  }

  @Test
  void nothingIsRecordedBeforeTheStart() {
    phone.script("document.activeElement.blur()");
    phone.keys(400, Keys.SPACE);
    phone.script("document.getElementById('lamp').click()");
    phone.tap("start");
    assertEquals("no blink yet", phone.label("lamp-count"));
    stop();
    lines(3);
    assertTrue(phone.label("sum").contains("stayed dark all the time"), phone.label("sum"));
  }

  @Test
  void handsEventsAndUndo() {
    phone.tap("start");
    phone.tapEvent("power-up");
    phone.tap("lamp");
    phone.tap("hand");
    assertEquals("Hand out", phone.label("hand"));
    phone.tapEvent("flush");
    phone.tap("hand");
    assertEquals("Hand in", phone.label("hand"));
    phone.tapEvent("button");
    assertTrue(phone.label("undo").startsWith("Undo button, "), phone.label("undo"));
    phone.tap("undo");
    phone.tap("lamp");
    phone.tap("undo");
    assertTrue(phone.label("undo").startsWith("Undo hand out, "), phone.label("undo"));
    phone.tap("hand");
    stop();
    List<String> lines = phone.log();
    String all = String.join("\n", lines);
    String time = "\\d+\\.\\d{3}";
    assertTrue(
        all.matches(
            "lampwise-log: 1\nfixture: north-07\nwindow: 0\\.000 to (T) s\ntarget: T to T s\n"
                .concat("target: T to \\1 s\nevent: power-up at T s\nevent: flush at T s\non T")
                .replace("T", time)),
        all);
    BlinkLog log = (BlinkLog) Witness.recording(lines);
    assertEquals(1, log.blinks().size());
    assertEquals(2, log.marks().targets().spans().size());
    assertEquals(
        List.of(Event.Kind.POWER_UP, Event.Kind.FLUSH),
        log.marks().events().stream().map(Event::kind).toList());
    phone.tap("undo-result");
    assertEquals(lines.size() - 1, phone.log().size(), "the second hand is taken back");
    for (int i = 0; i < 5; i++) {
      phone.tap("undo-result");
    }
    assertEquals("Nothing to undo", phone.label("undo-result"));
    assertFalse(phone.element("undo-result").isEnabled());
    lines(3);
    phone.tap("nobody");
    assertEquals("target: none", phone.log().get(3));
  }

  @Test
  void twoFingersAreOneLampAndOneFingerIsNoMouse() {
    phone.tap("start");
    WebElement lamp = phone.element("lamp");
    phone.fingers(
        new Finger("one").at(lamp, -60, 40).down().pause(200).wait(1).pause(200).up().wait(2),
        new Finger("two").at(lamp, 60, 80).wait(2).down().wait(2).pause(200).up());
    assertTrue(phone.label("lamp-count").startsWith("1 blink, "), phone.label("lamp-count"));
    phone.fingers(onLamp().down().pause(20).up().pause(350).down().pause(20).up().pause(100));
    assertTrue(phone.label("lamp-count").startsWith("3 blinks, "), phone.label("lamp-count"));
    assertEquals("", phone.text("return String(getSelection())"));
    assertEquals("1", phone.text("return visualViewport.scale"));
    stop();
    assertEquals(3, marks().size(), marks().toString());
    assertTrue(marks().get(0).contains(" off "), marks().toString());
  }

  @Test
  void oneFingerHoldsTheLampWhileAnotherMarksAndStops() {
    phone.tap("start");
    phone.fingers(
        onLamp().down().pause(0).pause(400).pause(0).pause(0).pause(400).up(),
        new Finger("two")
            .at(phone.element("hand"))
            .pause(0)
            .down()
            .pause(50)
            .up()
            .pause(0)
            .pause(0)
            .pause(0));
    assertEquals("Hand out", phone.label("hand"));
    assertTrue(phone.label("lamp-count").startsWith("1 blink, "), phone.label("lamp-count"));
    phone.tap("stop");
    phone.fingers(
        onLamp().down().pause(450).pause(0).pause(0).pause(0).up(),
        new Finger("two").at(phone.element("stop")).pause(0).pause(0).down().pause(30).up());
    assertFalse(phone.element("stop").isDisplayed());
    List<String> lines = phone.log();
    String end = lines.get(2).split(" ")[3];
    assertTrue(lines.get(3).endsWith(" to " + end + " s"), "the hand stayed in: " + lines);
    assertTrue(lines.get(5).endsWith(" off " + end), "the lamp stayed lit: " + lines);
  }

  @Test
  void tooFastTapsGiveWayToWords() {
    phone.tap("start");
    assertFalse(phone.element("fast").isDisplayed());
    Finger finger = onLamp();
    for (int i = 0; i < 6; i++) {
      finger.down().pause(40).up().pause(80);
    }
    phone.fingers(finger);
    assertTrue(phone.element("fast").isDisplayed());
    phone.tap("fast-words");
    assertFalse(phone.element("fast").isDisplayed());
    phone.tap("lamp");
    stop();
    assertEquals("saw: fast blinks", phone.log().get(3));
    assertEquals("fast blinks", ((Description) Witness.recording(phone.log())).said());
    lines(4);
    phone.tap("undo-result");
    assertEquals(6, marks().size(), marks().toString());
    phone.tap("fast-result-words");
    assertEquals("saw: fast blinks", phone.log().get(3));
  }

  @Test
  void threeAsecondAreNotTooFastAndTapsMayStay() {
    phone.tap("start");
    Finger slow = onLamp();
    for (int i = 0; i < 5; i++) {
      slow.down().pause(40).up().pause(290);
    }
    phone.fingers(slow);
    assertFalse(phone.element("fast").isDisplayed());
    Finger fast = onLamp();
    for (int i = 0; i < 6; i++) {
      fast.down().pause(30).up().pause(80);
    }
    phone.fingers(fast);
    phone.tap("fast-keep");
    assertFalse(phone.element("fast").isDisplayed());
    assertTrue(phone.label("lamp-count").startsWith("11 blinks"), phone.label("lamp-count"));
    assertTrue(phone.label("undo").startsWith("Undo blink"), "the tap hit nothing below it");
  }

  @Test
  void aReloadEndsTheRecordingAndKeepsIt() {
    phone.tap("start");
    phone.tap("lamp");
    phone.script("document.getElementById('fixture').value = 'changed behind'");
    // The browser takes what a page keeps after it says so.
    phone.letPass(0);
    phone.reload();
    assertTrue(phone.label("ended").contains("ends there"), phone.label("ended"));
    assertEquals(1, marks().size(), phone.log().toString());
    assertEquals("fixture: north-07", phone.log().get(1));
    List<String> before = phone.log();
    phone.reload();
    assertEquals(before, phone.log());
  }

  @Test
  void theScreenGoingOffEndsTheRecording() {
    phone.tap("start");
    phone.tap("lamp");
    phone.script(
        """
        Object.defineProperty(document, 'hidden', { get: () => true, configurable: true });
        document.dispatchEvent(new Event('visibilitychange'));
        delete document.hidden;
        """);
    assertTrue(phone.label("ended").contains("screen went off"), phone.label("ended"));
    assertEquals(1, marks().size());
  }

  @Test
  void aNewRecordingAsksFirst() {
    phone.tap("start");
    phone.tap("lamp");
    stop();
    List<String> before = phone.log();
    phone.element("new").click();
    phone.tap("ask-no");
    assertEquals(before, phone.log());
    phone.element("new").click();
    phone.tap("ask-yes");
    assertTrue(phone.element("start").isDisplayed());
    phone.tap("start");
    stop();
    lines(3);
  }

  @Test
  void enoughIsSaidAndStopsAtOnce() {
    phone.tap("start");
    assertTrue(phone.label("advice").matches("Keep watching, 3[23] s more\\."));
    phone.letPass(33100);
    assertTrue(phone.label("advice").startsWith("Enough. Hand in 5 s, then out 15 s."));
    assertEquals("33", phone.element("bar").getDomAttribute("aria-valuenow"));
    phone.tap("stop");
    assertFalse(phone.element("stop").isDisplayed());
    assertFalse(phone.label("sum").contains("asks for"), phone.label("sum"));
  }

  @Test
  void copyAndSaveGiveTheText() throws Exception {
    phone.command(
        "Browser.grantPermissions",
        Map.of("permissions", List.of("clipboardReadWrite", "clipboardSanitizedWrite")));
    phone.tap("start");
    phone.tap("lamp");
    stop();
    String log = phone.text("return document.getElementById('log').value");
    phone.tap("copy");
    phone.await("copy", "Copied");
    assertEquals(log, phone.text("return navigator.clipboard.readText()"));
    phone.script(
        """
        document.getElementById('log').value += 'x';
        Object.defineProperty(navigator, 'clipboard', { value: undefined, configurable: true });
        """);
    phone.script("document.getElementById('copy').textContent = ''");
    phone.tap("copy");
    phone.await("copy", "Copied");
    phone.script("delete navigator.clipboard");
    assertEquals(log + "x", phone.text("return navigator.clipboard.readText()"));

    phone.script(
        "document.getElementById('result-fixture').value = ' no/rth\\u2028 07 ';"
            + "document.getElementById('result-fixture').dispatchEvent(new Event('input'))");
    assertEquals("fixture: no/rth 07", phone.log().get(1));
    phone.tap("save");
    Path saved = folder.resolve("no-rth-07.log");
    for (int i = 0; i < 100 && !Files.exists(saved); i++) {
      Thread.sleep(20);
    }
    assertEquals(phone.log(), Files.readAllLines(saved));
    CommandRun run =
        CommandRun.Setting.in(folder)
            .run("", "decode", "--json", "--sheet", "demo", "no-rth-07.log");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("\"fixture\":\"no/rth 07\""), run.out());
  }

  @Test
  void hostileTextsStayText() {
    open("hostile.html");
    assertFalse(phone.holds("return 'hacked' in window"));
    assertEquals(CaptureTest.HOSTILE, phone.element("fixture").getDomProperty("value"));
    String title = CaptureTest.HOSTILE.replace("\u2028", "");
    assertEquals("Sheet: " + title + ". Watch for 66 s.", phone.label("sheet-title"));
    phone.tap("start");
    stop();
    assertEquals("fixture: " + CaptureTest.HOSTILE.replace("\u2028", " "), phone.log().get(1));
  }
}
