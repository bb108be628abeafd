package planted.decode;

/** Uses a layer below its own. */
final class Faults {
  static Object arrow() {
    return new planted.service.Thing();
  }
}
