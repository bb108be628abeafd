package planted.sim;

import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Uses the decoder and a layer below its own, draws without a seed, and keeps state. */
final class Faults {
  private static int calls;

  static Object arrow() {
    return new planted.decode.Thing();
  }

  static Object arrowToScore() {
    return new planted.sim.score.Thing();
  }

  static Object random() {
    return new Random();
  }

  static double mathRandom() {
    return Math.random();
  }

  static void shuffle(List<String> words) {
    Collections.shuffle(words);
  }

  static int count() {
    return ++calls;
  }
}
