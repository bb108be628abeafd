package lampwise.rhythm;

import java.util.List;

/** What a rhythm must hold as a whole to mean something. */
final class RhythmRules {
  private RhythmRules() {}

  static void check(List<Part> prelude, Cycle cycle) {}
}
