package planted.stray;

/** Lies in no known layer. */
final class Faults {}
