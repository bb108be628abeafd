package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwise.cli.Phone.Finger;
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
 * Whether everybody can see, reach and work the page of {@code capture}, on any screen and with
 * keys alone; skipped where there is no browser.
 */
class CaptureLooksTest {
  /**
   * Every visible text whose contrast with what lies behind it is too low, and every line around a
   * control that stands out too little: WCAG 2.2, success criteria 1.4.3 (4.5 to 1) and 1.4.11 (3
   * to 1), with its formula of relative luminance.
   */
  static final String FAINT =
      """
      const rgb = (c) => c.match(/[\\d.]+/g).map(Number);
      const light = (c) => rgb(c).slice(0, 3).map((v) => v / 255)
        .map((v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
        .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
      const contrast = (a, b) => {
        const [low, high] = [light(a), light(b)].sort((x, y) => x - y);
        return (high + 0.05) / (low + 0.05);
      };
      const clear = (c) => rgb(c).length > 3 && rgb(c)[3] === 0;
      const behind = (e) => {
        while (e && clear(getComputedStyle(e).backgroundColor)) e = e.parentElement;
        return e ? getComputedStyle(e).backgroundColor : 'rgb(255, 255, 255)';
      };
      const faint = [];
      let texts = 0;
      for (const e of document.querySelectorAll('body *')) {
        const style = getComputedStyle(e);
        if (!e.checkVisibility({ visibilityProperty: true }) || style.opacity !== '1') continue;
        const field = e.matches('input, textarea');
        const own = field || Array.from(e.childNodes)
          .some((n) => n.nodeType === 3 && n.textContent.trim());
        if (own && e.id !== 'say') {
          texts++;
          const ink = e instanceof SVGElement ? style.fill : style.color;
          const found = contrast(ink, behind(e));
          if (!(found >= 4.5)) faint.push(e.tagName + '#' + e.id + ' text ' + found);
        }
        if (e.matches('button, input[type=text], textarea')) {
          const edge = Math.max(contrast(style.borderTopColor, behind(e.parentElement)),
            contrast(behind(e), behind(e.parentElement)));
          if (!(edge >= 3)) faint.push(e.tagName + '#' + e.id + ' edge ' + edge);
        }
      }
      return texts < 5 ? ['only ' + texts + ' texts'] : faint;
      """;

  /** Every visible control that is smaller than a wet thumb wants, or cut off. */
  static final String SMALL =
      """
      const small = [];
      for (const e of document.querySelectorAll('button, input, textarea, summary')) {
        if (!e.checkVisibility({ visibilityProperty: true })) continue;
        const box = (e.type === 'checkbox' ? e.closest('label') : e).getBoundingClientRect();
        if (!(box.width >= 56 && box.height >= 56)) {
          small.push(`${e.id} ${box.width} x ${box.height}`);
        }
        if (e.scrollWidth > e.clientWidth + 1 && e.tagName === 'BUTTON') {
          small.push(e.id + ' has no room for its words');
        }
      }
      return small;
      """;

  static final String SIZE = "return innerWidth + ' x ' + innerHeight";

  private static final String PLACE =
      "const b = document.getElementById('lamp').getBoundingClientRect();"
          + "return [b.x, b.y, b.width, b.height].join()";

  static final String WIDE =
      "return document.documentElement.scrollWidth > document.documentElement.clientWidth";

  private static final String PREFERS =
      "return matchMedia('(prefers-color-scheme: ' + arguments[0] + ')').matches";

  @TempDir static Path folder;
  private static Optional<Phone> started = Optional.empty();

  private final Phone phone = started.orElseThrow();

  @BeforeAll
  static void startPhone() {
    started = Phone.start(folder);
    Assumptions.assumeTrue(started.isPresent(), "no chromium and chromedriver here");
    CommandRun run =
        CommandRun.Setting.in(folder)
            .run("", "capture", "--sheet", "demo", "--fixture", "north-07 ".repeat(8).strip());
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
    open();
    assertTrue(phone.holds(PREFERS, "light"));
  }

  private void open() {
    phone.openAnew(folder.resolve("capture.html"));
  }

  /** Looks at the page in every state it can be in. */
  private void inEveryState(Consumer<String> check) {
    open();
    phone.script("document.getElementById('states').open = true");
    check.accept("ready");
    phone.tap("start");
    check.accept("watching");
    phone.tap("hand");
    phone.fingers(onLamp().down());
    check.accept("held, with a hand in");
    Finger finger = onLamp().up();
    for (int i = 0; i < 6; i++) {
      finger.down().pause(20).up().pause(50);
    }
    phone.fingers(finger);
    check.accept("too fast");
    phone.tap("fast-words");
    phone.tap("stop");
    check.accept("words, and stop asks");
    phone.tap("undo");
    phone.tap("stop");
    check.accept("stopped");
    phone.script(
        "const undo = document.getElementById('undo-result'); while (!undo.disabled) undo.click()");
    check.accept("nothing to undo");
    phone.script("document.getElementById('new').click()");
    check.accept("asks");
  }

  private Finger onLamp() {
    return new Finger("one").at(phone.element("lamp"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void everyTextAndEdgeStandsOut(String scheme) {
    phone.scheme(scheme);
    open();
    assertTrue(phone.holds(PREFERS, scheme), scheme);
    inEveryState(state -> assertEquals(List.of(), phone.script(FAINT), scheme + ", " + state));
  }

  @Test
  void whatIsWrongWouldBeFound() {
    phone.screen(320, 568);
    open();
    assertEquals(List.of(false, List.of(), List.of()), looks());
    phone.script("document.querySelector('h1').style.color = '#888888'");
    phone.script("document.getElementById('start').style.minHeight = '40px'");
    phone.script("document.getElementById('fixture').style.width = '400px'");
    List<Object> looks = looks();
    assertEquals(true, looks.get(0), "too wide");
    assertEquals(1, ((List<?>) looks.get(1)).size(), "faint: " + looks);
    assertEquals(1, ((List<?>) looks.get(2)).size(), "small: " + looks);
  }

  private List<Object> looks() {
    return List.of(phone.script(WIDE), phone.script(FAINT), phone.script(SMALL));
  }

  @Test
  void theSwitchGoesAgainstThePhone() {
    for (String scheme : List.of("light", "dark")) {
      phone.scheme(scheme);
      open();
      String before = phone.text("return getComputedStyle(document.body).backgroundColor");
      phone.script("document.querySelector('.theme').click()");
      assertFalse(
          phone.holds(
              "return getComputedStyle(document.body).backgroundColor === arguments[0]", before),
          scheme);
      assertEquals(List.of(), phone.script(FAINT), "against " + scheme);
    }
  }

  @ParameterizedTest
  @CsvSource({"320, 568", "390, 664", "768, 1024", "740, 340"})
  void everythingFitsAndIsLargeEnough(int width, int height) {
    phone.screen(width, height);
    inEveryState(
        state -> {
          assertEquals(width + " x " + height, phone.text(SIZE));
          assertFalse(phone.holds(WIDE), state);
          assertEquals(List.of(), phone.script(SMALL), state);
          if (phone.element("watch").isDisplayed()) {
            assertTrue(
                phone.holds(
                    "const w = document.getElementById('watch');"
                        + "return w.scrollHeight <= w.clientHeight && w.scrollWidth <= w.clientWidth"),
                state);
            assertTrue(
                phone.holds(
                    "const b = document.getElementById('lamp').getBoundingClientRect();"
                        + "return b.width * b.height >= 0.22 * innerWidth * innerHeight"),
                "the lamp is too small: " + state);
          }
        });
  }

  /** The lamp's area stays under the thumb, whatever is said above it. */
  @ParameterizedTest
  @CsvSource({"320, 568", "390, 664"})
  void theLampStaysInItsPlace(int width, int height) {
    phone.screen(width, height);
    open();
    assertEquals(width + " x " + height, phone.text(SIZE));
    phone.tap("start");
    Object first = phone.script(PLACE);
    for (int milliseconds : new int[] {20000, 13100, 0, 6000, 0, 16000}) {
      if (milliseconds == 0) {
        phone.tap("hand");
      }
      phone.letPass(milliseconds);
      assertEquals(first, phone.script(PLACE), phone.label("advice"));
    }
    Finger fast = onLamp();
    for (int i = 0; i < 6; i++) {
      fast.down().pause(20).up().pause(50);
    }
    phone.fingers(fast);
    assertTrue(phone.element("fast").isDisplayed());
    assertEquals(first, phone.script(PLACE));
  }

  @Test
  void keysAloneDoItAll() throws InterruptedException {
    open();
    List<String> stops = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      phone.keys(0, Keys.TAB);
      stops.add(phone.active().getTagName() + " " + phone.active().getDomProperty("id"));
      assertTrue(focusShows(), stops.toString());
    }
    assertEquals(List.of("button ", "input fixture", "summary ", "button start"), stops);
    phone.keys(0, Keys.ENTER);
    assertEquals("lamp", phone.active().getDomProperty("id"));
    assertTrue(focusShows());
    phone.keys(400, Keys.SPACE);
    assertTrue(phone.label("lamp-count").startsWith("1 blink, "), phone.label("lamp-count"));
    phone.keys(20, Keys.ENTER);
    reach("hand", true);
    phone.keys(20, Keys.SPACE);
    assertEquals("Hand out", phone.label("hand"));
    assertEquals("lamp", phone.active().getDomProperty("id"));
    phone.keys(20, Keys.SPACE);
    assertTrue(phone.label("lamp-count").startsWith("3 blinks, "), phone.label("lamp-count"));
    reach("undo", false);
    phone.keys(20, Keys.ENTER);
    assertTrue(phone.label("lamp-count").startsWith("2 blinks, "), phone.label("lamp-count"));
    for (int i = 0; i < 2; i++) {
      reach("stop", false);
      phone.keys(20, Keys.SPACE);
    }
    assertEquals("result-title", phone.active().getDomProperty("id"));
    List<String> lines = phone.log();
    assertEquals(6, lines.size(), lines.toString());
    assertTrue(lines.get(4).contains(" off "), lines.toString());
    assertFalse(lines.get(5).contains(" off "), lines.toString());
    reach("copy", false);
    phone.keys(20, Keys.ENTER);
    phone.await("copy", "Copied");
    reach("new", true);
    phone.keys(20, Keys.ENTER);
    phone.keys(20, Keys.ESCAPE);
    assertEquals(lines, phone.log());
    phone.keys(20, Keys.ENTER);
    reach("ask-yes", false);
    phone.keys(20, Keys.ENTER);
    assertTrue(phone.element("start").isDisplayed());
  }

  /** Goes to a control with the tab key, as somebody without a pointer does. */
  private void reach(String id, boolean back) {
    for (int i = 0; i < 12; i++) {
      if (id.equals(phone.active().getDomProperty("id"))) {
        assertTrue(focusShows(), id);
        return;
      }
      if (back) {
        phone.keys(0, Keys.SHIFT, Keys.TAB);
      } else {
        phone.keys(0, Keys.TAB);
      }
    }
    throw new AssertionError(id + " cannot be reached");
  }

  private boolean focusShows() {
    return phone.holds(
        "const s = getComputedStyle(document.activeElement);"
            + "return s.outlineStyle === 'solid' && parseFloat(s.outlineWidth) >= 3");
  }

  @Test
  void whatIsAnnouncedIsSparing() {
    open();
    phone.script(
        """
        window.said = [];
        new MutationObserver(() => window.said.push(document.getElementById('say').textContent))
          .observe(document.getElementById('say'), { childList: true });
        """);
    phone.tap("start");
    phone.tap("lamp");
    phone.tap("lamp");
    phone.tap("hand");
    phone.tap("stop");
    phone.tap("stop");
    @SuppressWarnings("unchecked")
    List<String> said = (List<String>) phone.script("return window.said");
    assertEquals(3, said.size(), said.toString());
    assertTrue(said.get(0).startsWith("Watching."), said.toString());
    assertEquals("Hand in noted", said.get(1));
    assertTrue(said.get(2).endsWith("seconds are missing. Press stop again to stop all the same."));
  }

  @Test
  void aServerIsAskedForThePageAlone() throws IOException {
    byte[] page = Files.readAllBytes(folder.resolve("capture.html"));
    List<String> asked = Collections.synchronizedList(new ArrayList<>());
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          asked.add(exchange.getRequestURI().toString());
          exchange.getResponseHeaders().set("Content-Type", "text/html");
          exchange.sendResponseHeaders(200, page.length);
          exchange.getResponseBody().write(page);
          exchange.close();
        });
    server.start();
    try {
      String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/page";
      phone.open(address);
      phone.tap("start");
      phone.tap("lamp");
      phone.tap("stop");
      phone.tap("stop");
      assertEquals(4, phone.log().size(), phone.log().toString());
      assertEquals(
          "blocked blocked",
          phone.text(
              """
              const image = new Promise((done) => {
                const i = new Image();
                i.onload = () => done('loaded');
                i.onerror = () => done('blocked');
                i.src = '/image';
              });
              const sent = fetch('/data', { method: 'POST', body: 'x' })
                .then(() => 'sent', () => 'blocked');
              return Promise.all([image, sent]).then((all) => all.join(' '));
              """));
      assertEquals(List.of("/page"), asked);
    } finally {
      server.stop(0);
    }
  }
}
