package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The same seed and settings give the same bits everywhere: these sums were written down once and
 * must come out on every machine and Java version. Whoever changes on purpose what is drawn, or
 * when, writes them anew and says so: all figures that were ever published change with them.
 */
class PersonRepeatsTest {
  @ParameterizedTest
  @CsvSource({
    "exact, TAPS, 525bfeffce28f91d",
    "exact, HOLDS, a689aaab1c51bd71",
    "exact, WORDS, 19df2a1ed186dfa6",
    "careful, TAPS, 5e5b6e6dcdc77dff",
    "careful, HOLDS, 4b09ce243cef7e20",
    "careful, WORDS, 417549d60841df7b",
    "hurried, TAPS, 34a95e0199312a86",
    "hurried, HOLDS, 1e367a459d92c6d9",
    "hurried, WORDS, 58c8a0ba30d662fc",
    "careless, TAPS, a71f2d529f6c4d8a",
    "careless, HOLDS, 5f0409565d01f7db",
    "careless, WORDS, 449284a57ca22574",
    "everything, TAPS, f310269536bca006",
    "everything, HOLDS, 3eb19fe666efdd81",
    "everything, WORDS, 736e0279a4be2fed",
  })
  void bitsAreThoseWrittenDown(String name, Person.Notes way, String sum) {
    long bits = 0xcbf29ce484222325L;
    Shown shown = Watched.lamp(3600, Watched.flashes(700, 0.09, 5, 2, Chance.of(60)));
    Labelled labelled = person(name).withNotes(way).observe(shown, Chance.of(1125));
    if (labelled.recording() instanceof BlinkLog log) {
      bits = sum(bits, log.blinks());
    } else {
      bits = sum(bits, ((Description) labelled.recording()).said());
    }
    bits = sum(bits, labelled.truth().missed());
    bits = sum(bits, labelled.truth().added().stream().map(Blink::startingAt).toList());
    assertEquals(sum, Long.toHexString(bits));
  }

  private static Person person(String name) {
    return switch (name) {
      case "everything" ->
          Person.careless()
              .with("lapse", 0.05)
              .with("double-tap", 0.05)
              .with("fastest-taps-per-s", 4)
              .with("release-late-s", 0.1)
              .with("release-sd-s", 0.05)
              .with("count-error", 0.3)
              .with("seconds-error", 0.2);
      default -> (Person) Presets.named(name);
    };
  }

  /** FNV-1a, 64 bits (Fowler, Noll and Vo), over the bits of the times. */
  private static long sum(long start, List<Blink> blinks) {
    long sum = start;
    for (Blink blink : blinks) {
      for (double value : new double[] {blink.onSeconds(), blink.offSeconds()}) {
        long bits = Double.doubleToLongBits(value);
        for (int shift = 0; shift < 64; shift += 8) {
          sum = (sum ^ (bits >>> shift & 0xff)) * 0x100000001b3L;
        }
      }
    }
    return sum;
  }

  private static long sum(long start, String text) {
    long sum = start;
    for (int i = 0; i < text.length(); i++) {
      sum = (sum ^ text.charAt(i)) * 0x100000001b3L;
    }
    return sum;
  }
}
