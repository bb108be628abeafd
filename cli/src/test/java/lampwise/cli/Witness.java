package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import lampwise.file.FileException;
import lampwise.file.LampwiseLog;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Recording;
import lampwise.light.Window;

/** Sees the fingers beside the page's own listeners, on the page's clock. */
final class Witness {
  /** How far a mark may lie from the moment at which the page's window saw the finger. */
  static final double TOLERANCE_SECONDS = 0.030;

  /** Notes in {@code seen} when fingers touch and leave, and when the start is pressed. */
  static final String SCRIPT =
      """
      window.seen = [];
      for (const type of ['pointerdown', 'pointerup', 'click']) {
        window.addEventListener(type, (e) => {
          if (type !== 'click' || e.target.id === 'start') {
            window.seen.push([type, performance.now() / 1000]);
          }
        }, true);
      }
      """;

  private Witness() {}

  /**
   * Holds a recording of a hold, a tap and a hold against what was seen.
   *
   * @return each time that differs by more than the tolerance; empty if none does
   */
  @SuppressWarnings("unchecked")
  static String lateness(List<String> lines, Object seenByScript) {
    assertEquals(List.of("lampwise-log: 1", "fixture: north-07"), lines.subList(0, 2));
    BlinkLog log = (BlinkLog) recording(lines);
    List<Blink> blinks = log.blinks();
    assertEquals(List.of(true, false, true), blinks.stream().map(Blink::hasOff).toList());
    List<List<Object>> seen = (List<List<Object>>) seenByScript;
    int click = 0;
    while (!seen.get(click).get(0).equals("click")) {
      click++;
    }
    double start = seconds(seen.get(click));
    StringBuilder late = new StringBuilder();
    int next = click + 1;
    for (Blink blink : blinks) {
      compare("on", blink.onSeconds(), seconds(seen.get(next)) - start, late);
      if (blink.hasOff()) {
        compare("off", blink.offSeconds(), seconds(seen.get(next + 1)) - start, late);
      }
      next += 2;
    }
    Window window = log.marks().window().orElseThrow();
    assertEquals(0, window.fromSeconds());
    double end = seconds(seen.get(seen.size() - 1)) - start;
    compare("end of the window", window.toSeconds(), end, late);
    return late.toString();
  }

  /** The one recording that the text of a page holds. */
  static Recording recording(List<String> lines) {
    byte[] text = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    try {
      List<Recording> recordings = LampwiseLog.read("page.log", text);
      assertEquals(1, recordings.size());
      return recordings.get(0);
    } catch (FileException e) {
      throw new AssertionError(String.join("\n", lines), e);
    }
  }

  private static double seconds(List<Object> seen) {
    return ((Number) seen.get(1)).doubleValue();
  }

  private static void compare(String what, double said, double seen, StringBuilder late) {
    if (!(Math.abs(said - seen) <= TOLERANCE_SECONDS)) {
      late.append(what).append(' ').append(said).append(", seen at ").append(seen).append('\n');
    }
  }
}
