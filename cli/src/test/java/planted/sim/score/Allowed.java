package planted.sim.score;

/** Uses the decoder, which this layer may. */
final class Allowed {
  static Object decoder() {
    return new planted.decode.Thing();
  }
}
