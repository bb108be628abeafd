package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

/**
 * Timing of the Morse code by Recommendation ITU-R M.1677-1, part I, section 2: a dash is three
 * dots long, the space inside a letter one dot, between letters three, between words seven. The
 * word PARIS with the space after it takes 50 dots.
 */
class MorseTest {
  private static final double UNIT_SECONDS = 0.12;
  private static final List<String> PARIS = List.of(".--.", ".-", ".-.", "..", "...");

  /** Light and dark in turn, in units, the last one the space between words. */
  private static List<Integer> units() {
    List<Integer> units = new ArrayList<>();
    for (String letter : PARIS) {
      for (int i = 0; i < letter.length(); i++) {
        units.add(letter.charAt(i) == '.' ? 1 : 3);
        units.add(i + 1 < letter.length() ? 1 : 3);
      }
    }
    units.set(units.size() - 1, 7);
    return units;
  }

  private static String phrase() {
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < units().size(); i++) {
      String length = Math.round(units().get(i) * UNIT_SECONDS * 1000) + " ms";
      parts.add((i % 2 == 0 ? "1 blink of " : "dark ") + length);
    }
    return String.join(" then ", parts) + " repeating";
  }

  @Test
  void parisTakesFiftyUnits() {
    assertEquals(50, units().stream().mapToInt(Integer::intValue).sum());
    DrawnRhythm drawn =
        DrawnRhythm.of(Phrases.rhythm(phrase()), OptionalDouble.empty(), Chance.of(1));
    assertEquals(50 * UNIT_SECONDS, drawn.cycleSeconds(), 1e-9);
    assertEquals(14, drawn.cycle().size());
  }

  @Test
  void theLampKeepsEveryLength() {
    Act act = LampScenes.act(phrase(), Seen.ALWAYS);
    Shown shown = Lamp.shine(LampScenes.unlit(3 * 50 * UNIT_SECONDS, act), Chance.of(4));
    List<Blink> blinks = shown.blinks();
    int units = units().size();
    int first = -1;
    for (int turn = 0; turn < units && first < 0; turn += 2) {
      first = matches(blinks, turn) ? turn : -1;
    }
    assertTrue(first >= 0, () -> "no turn of PARIS: " + blinks);
  }

  /** Whether light and dark from the second blink to the last but one are PARIS from a place on. */
  private static boolean matches(List<Blink> blinks, int turn) {
    List<Integer> units = units();
    for (int i = 1; i + 1 < blinks.size(); i++) {
      int at = (turn + 2 * (i - 1)) % units.size();
      double lit = blinks.get(i).offSeconds() - blinks.get(i).onSeconds();
      double dark = blinks.get(i + 1).onSeconds() - blinks.get(i).offSeconds();
      if (Math.abs(lit - units.get(at) * UNIT_SECONDS) > 1e-9
          || Math.abs(dark - units.get(at + 1) * UNIT_SECONDS) > 1e-9) {
        return false;
      }
    }
    return blinks.size() > 2 * units.size() / 2;
  }
}
