package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

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
    String time = "\\d+\\.\\d{3}";
    String hold = "on T off T".replace("T", time);
    assertTrue(lines.get(2).matches("window: 0\\.000 to " + time + " s"), lines.get(2));
    assertTrue(lines.get(3).matches(hold), lines.get(3));
    assertTrue(lines.get(4).matches("on " + time), lines.get(4));
    assertTrue(lines.get(5).matches(hold), lines.get(5));
    List<List<Object>> seen = (List<List<Object>>) seenByScript;
    int click = 0;
    while (!seen.get(click).get(0).equals("click")) {
      click++;
    }
    double start = seconds(seen.get(click));
    StringBuilder late = new StringBuilder();
    int next = click + 1;
    for (String line : lines.subList(3, lines.size())) {
      String[] words = line.split(" ");
      compare(line, words[1], seconds(seen.get(next)) - start, late);
      if (words.length > 2) {
        compare(line, words[3], seconds(seen.get(next + 1)) - start, late);
      }
      next += 2;
    }
    double end = seconds(seen.get(seen.size() - 1)) - start;
    compare(lines.get(2), lines.get(2).split(" ")[3], end, late);
    return late.toString();
  }

  private static double seconds(List<Object> seen) {
    return ((Number) seen.get(1)).doubleValue();
  }

  private static void compare(String line, String said, double seen, StringBuilder late) {
    if (!(Math.abs(Double.parseDouble(said) - seen) <= TOLERANCE_SECONDS)) {
      late.append(line).append(": seen at ").append(seen).append('\n');
    }
  }
}
