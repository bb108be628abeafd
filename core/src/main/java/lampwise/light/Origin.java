package lampwise.light;

import java.util.List;
import java.util.Optional;

/**
 * Where a recording came from and how it was understood.
 *
 * @param name the file's name, or a word for pasted text
 * @param fixture the fixture it names, if any
 * @param notes what was inferred when it was read, a sentence each
 */
public record Origin(String name, Optional<String> fixture, List<String> notes) {
  /** Keeps a copy of the notes. */
  public Origin {
    notes = List.copyOf(notes);
  }

  /**
   * A name and nothing else.
   *
   * @param name the name
   * @return an origin without fixture and notes
   */
  public static Origin named(String name) {
    return new Origin(name, Optional.empty(), List.of());
  }
}
