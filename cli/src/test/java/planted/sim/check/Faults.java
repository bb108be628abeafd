package planted.sim.check;

/** Uses a layer below its own. */
final class Faults {
  static Object arrow() {
    return new planted.cli.Thing();
  }
}
