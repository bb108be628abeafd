package planted.sim.score;

import net.jqwik.api.Arbitraries;
import org.junit.jupiter.api.Assertions;

/** Uses a layer below its own, and the libraries of the property kit. */
final class Faults {
  static Object arrow() {
    return new planted.sim.check.Thing();
  }

  static Object jqwik() {
    return Arbitraries.integers();
  }

  static void junit() {
    Assertions.assertTrue(true);
  }
}
