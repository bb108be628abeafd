package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Draws the timings of the demonstration sheet again. The generator is SplitMix64 (Steele, Lea and
 * Flood, Fast Splittable Pseudorandom Number Generators, OOPSLA 2014), which the Java library has
 * as SplittableRandom; a draw between two borders takes the upper 53 bits of one number. Seconds
 * are rounded to 0.1 from 1 up and to 0.01 below. The seed is the first from 1 up that gives
 * cells-low its 3.1 s.
 */
class DemoSheetDrawTest {
  private static final long SEED = 17;

  private final Map<String, String> drawn = new LinkedHashMap<>();

  private void draw(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    drawn.put("blink", between(random, 0.08, 0.13));
    String low = between(random, 2.5, 4.0);
    drawn.put("cells-low", "1 blink every " + low + " s");
    double lowSeconds = Double.parseDouble(low);
    drawn.put(
        "sees-too-far",
        "1 blink every " + between(random, 1.15 * lowSeconds, 1.3 * lowSeconds) + " s");
    drawn.put("sees-too-near", "1 blink every " + round(2 * lowSeconds) + " s");
    drawn.put("target-seen", "2 blinks " + between(random, 0.25, 0.5) + " s apart once");
    drawn.put("flushing", "steady " + between(random, 1, 3) + " s once");
    String narrow = between(random, 0.25, 0.45);
    String wide = between(random, 0.6, 1);
    String both = between(random, 7, 12);
    drawn.put("window-covered", "3 blinks " + narrow + " s apart every " + both + " s");
    drawn.put("coil-open", "3 blinks " + wide + " s apart every " + both + " s");
    drawn.put(
        "coil-shorted",
        "3 blinks "
            + between(random, 0.3, 0.6)
            + " s apart then dark "
            + between(random, 1, 1.6)
            + " s then 2 blinks "
            + between(random, 0.25, 0.5)
            + " s apart every "
            + between(random, 10, 15)
            + " s");
    drawn.put(
        "starting",
        "first steady "
            + between(random, 4, 6)
            + " s afterwards 1 blink every "
            + between(random, 1.3, 2.2)
            + " s");
    drawn.put(
        "learning",
        between(random, 1.8, 2.4) + " to " + between(random, 2.6, 3.4) + " blinks per second");
    drawn.put(
        "held-off",
        "steady then dark "
            + between(random, 0.2, 0.5)
            + " s every "
            + between(random, 6, 9)
            + " s");
    drawn.put(
        "hygiene-flush",
        "1 long blink of "
            + between(random, 0.5, 0.9)
            + " s then 2 short blinks of "
            + between(random, 0.1, 0.2)
            + " s "
            + between(random, 0.4, 0.7)
            + " s apart every "
            + between(random, 9, 14)
            + " s");
  }

  private static String between(SplittableRandom random, double from, double to) {
    return round(from + (to - from) * ((random.nextLong() >>> 11) * 0x1.0p-53));
  }

  private static String round(double value) {
    return new BigDecimal(value)
        .setScale(value < 1 ? 2 : 1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String sheet() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(SheetReader.class.getResourceAsStream("demo.sheet.yaml"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void everyTimingOfTheSheetIsTheDrawOfTheSeedInItsNote() throws IOException {
    draw(SEED);
    Map<String, String> written = new LinkedHashMap<>();
    String state = "";
    for (String line : sheet().lines().toList()) {
      if (line.startsWith("blink: ")) {
        written.put("blink", line.substring("blink: ".length(), line.length() - " s".length()));
      } else if (line.matches("  [a-z-]+:")) {
        state = line.substring(2, line.length() - 1);
      } else if (line.startsWith("    rhythm: ") && !line.endsWith(" dark")) {
        written.put(state, line.substring("    rhythm: ".length()));
      }
    }
    assertEquals(drawn.toString().replace(", ", "\n"), written.toString().replace(", ", "\n"));
    assertTrue(sheet().contains("SplitMix64 with seed " + SEED), sheet());
  }

  @Test
  void noEarlierSeedGivesCellsLowItsPeriod() {
    for (long seed = 1; seed < SEED; seed++) {
      draw(seed);
      assertNotEquals("1 blink every 3.1 s", drawn.get("cells-low"), "seed " + seed);
    }
    draw(SEED);
    assertEquals("1 blink every 3.1 s", drawn.get("cells-low"));
  }
}
