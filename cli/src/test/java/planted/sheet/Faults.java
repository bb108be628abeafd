package planted.sheet;

/** Uses a layer below its own. */
final class Faults {
  static Object arrow() {
    return new planted.decode.Thing();
  }
}
