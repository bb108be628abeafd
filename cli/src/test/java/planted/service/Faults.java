package planted.service;

/** Uses a layer below its own, and one that is too deep for it. */
final class Faults {
  static Object arrow() {
    return new planted.file.Thing();
  }

  static Object deepArrow() {
    return new planted.light.Thing();
  }
}
