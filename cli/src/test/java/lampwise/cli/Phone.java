package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Interaction;
import org.openqa.selenium.interactions.Pause;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A browser of a phone's size with a touch screen, and fingers for it. */
final class Phone implements AutoCloseable {
  private static final List<String> FOLDERS =
      Stream.concat(
              Stream.of("/usr/bin"),
              Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)))
          .toList();

  /** Selenium says at every start that it does not know the newest browser's protocol. */
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

  private final ChromeDriver driver;

  private Phone(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts one; empty where there is no browser, or no driver for it. Nothing is downloaded. */
  static Optional<Phone> start(Path downloads) {
    Optional<Path> browser = program("chromium");
    Optional<Path> server = program("chromedriver");
    if (browser.isEmpty() || server.isEmpty()) {
      return Optional.empty();
    }
    SELENIUM.setLevel(Level.SEVERE);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(browser.get().toFile());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    // With the driver's path given, nothing is looked for elsewhere.
    System.setProperty(ChromeDriverService.CHROME_DRIVER_EXE_PROPERTY, server.get().toString());
    Phone phone = new Phone(new ChromeDriver(options));
    phone.driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(10));
    phone.command(
        "Emulation.setTouchEmulationEnabled", Map.of("enabled", true, "maxTouchPoints", 5));
    phone.screen(390, 844);
    phone.command(
        "Browser.setDownloadBehavior",
        Map.of("behavior", "allow", "downloadPath", downloads.toString()));
    return Optional.of(phone);
  }

  private static Optional<Path> program(String name) {
    return FOLDERS.stream()
        .map(folder -> Path.of(folder, name))
        .filter(Files::isExecutable)
        .findFirst();
  }

  @Override
  public void close() {
    driver.quit();
  }

  void open(String address) {
    driver.get(address);
  }

  /** Opens a file of the machine, as if it had never been open before. */
  void openAnew(Path page) {
    open(page.toUri().toString());
    // A page that is left keeps its recording, and a busy browser may hand the old one over once
    // more.
    for (int i = 0; i == 0 || (i < 20 && !element("start").isDisplayed()); i++) {
      script("sessionStorage.clear(); Storage.prototype.setItem = () => {}");
      reload();
    }
  }

  void reload() {
    driver.navigate().refresh();
  }

  /** A command of the browser's own protocol. */
  Map<String, Object> command(String name, Map<String, Object> parameters) {
    return driver.executeCdpCommand(name, parameters);
  }

  void screen(int width, int height) {
    command(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", true));
  }

  void scheme(String scheme) {
    command(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** Runs a script in the page and gives what it returns. */
  Object script(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  String text(String script, Object... arguments) {
    return String.valueOf(script(script, arguments));
  }

  boolean holds(String script, Object... arguments) {
    return Boolean.TRUE.equals(script(script, arguments));
  }

  WebElement element(String id) {
    return driver.findElement(By.id(id));
  }

  WebElement active() {
    return driver.switchTo().activeElement();
  }

  String label(String id) {
    return element(id).getText().replace('\u00a0', ' ');
  }

  /** Lets so much time pass on the page's clock at once, and waits until the page has noticed. */
  void letPass(int milliseconds) {
    script(
        "const before = performance.now.bind(performance);"
            + "performance.now = () => before() + arguments[0];"
            + "return new Promise((done) => setTimeout(done, 220))",
        milliseconds);
  }

  /** Waits until something has this label. */
  void await(String id, String label) throws InterruptedException {
    for (int i = 0; i < 200 && !label(id).equals(label); i++) {
      Thread.sleep(25);
    }
    assertEquals(label, label(id));
  }

  /** The recording's text, line by line. */
  List<String> log() {
    return text("return document.getElementById('log').value").lines().toList();
  }

  /** Presses keys, for some time together. */
  void keys(int milliseconds, CharSequence... keys) {
    var actions = new org.openqa.selenium.interactions.Actions(driver);
    for (CharSequence key : keys) {
      actions.keyDown(key);
    }
    actions.pause(milliseconds);
    for (CharSequence key : keys) {
      actions.keyUp(key);
    }
    actions.perform();
  }

  /** Waits until something is there to be touched, for a slow machine up to five seconds. */
  private WebElement shown(String id) {
    WebElement element = element(id);
    for (int i = 0; i < 200 && !(element.isDisplayed() && element.getSize().height > 0); i++) {
      try {
        Thread.sleep(25);
      } catch (InterruptedException e) {
        throw new AssertionError("interrupted while waiting for " + id, e);
      }
    }
    return element;
  }

  /** Taps what has this id. */
  void tap(String id) {
    fingers(new Finger("one").at(shown(id)).down().pause(40).up());
  }

  /** Taps the button of an event. */
  void tapEvent(String name) {
    WebElement button = driver.findElement(By.cssSelector("[data-event=" + name + "]"));
    fingers(new Finger("one").at(button).down().pause(40).up());
  }

  /** Moves fingers, all at once; each step of one takes as long as the same step of the others. */
  void fingers(Finger... fingers) {
    driver.perform(Arrays.stream(fingers).map(Finger::moves).toList());
  }

  /** What the page asked for since the last call, but for what the browser has itself. */
  List<String> requests() {
    List<String> addresses = new ArrayList<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
      String said = entry.getMessage();
      String start = "\"request\":{";
      int request = said.contains("\"Network.requestWillBeSent\"") ? said.indexOf(start) : -1;
      if (request >= 0) {
        int url = said.indexOf("\"url\":\"", request) + "\"url\":\"".length();
        addresses.add(said.substring(url, said.indexOf('"', url)));
      }
    }
    addresses.removeIf(address -> address.startsWith("data:") || address.startsWith("blob:"));
    return addresses;
  }

  /** What the page wrote to its console since the last call, faults included. */
  List<String> console() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .toList();
  }

  /** One finger's moves. */
  static final class Finger {
    private final PointerInput pointer;
    private final Sequence moves;

    Finger(String name) {
      pointer = new PointerInput(PointerInput.Kind.TOUCH, name);
      moves = new Sequence(pointer, 0);
    }

    private Sequence moves() {
      return moves;
    }

    private Finger add(Interaction step) {
      moves.addAction(step);
      return this;
    }

    Finger at(WebElement element) {
      return at(element, 0, 0);
    }

    /** Some pixels off the middle of an element. */
    Finger at(WebElement element, int x, int y) {
      return add(
          pointer.createPointerMove(Duration.ZERO, PointerInput.Origin.fromElement(element), x, y));
    }

    Finger down() {
      return add(pointer.createPointerDown(PointerInput.MouseButton.LEFT.asArg()));
    }

    Finger up() {
      return add(pointer.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
    }

    Finger pause(int milliseconds) {
      return add(new Pause(pointer, Duration.ofMillis(milliseconds)));
    }

    /** Lets some steps of the other fingers pass. */
    Finger wait(int steps) {
      for (int i = 0; i < steps; i++) {
        pause(0);
      }
      return this;
    }
  }
}
