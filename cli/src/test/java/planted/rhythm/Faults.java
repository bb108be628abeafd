package planted.rhythm;

/** Uses a layer below its own. */
final class Faults {
  static Object arrow() {
    return new planted.sheet.Thing();
  }
}
