package lampwise.sheet;

import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Rhythm;

/**
 * What a label's words say of one state, to be offered to the person who typed them.
 *
 * @param words the words of this state alone
 * @param rhythms what the lamp may show, the likeliest first, one or more
 * @param seen when it is seen; empty where nothing was said of it
 * @param means what it means; empty where nothing was said of it
 * @param condition the condition that the words speak of; empty where they name none
 * @param clearedBy what clears the state; empty where nothing was said of it
 * @param lamp the lamp's colour; empty where none was named
 * @param notes what of the words a sheet cannot hold, or was taken for granted, a sentence each
 */
public record LabelEntry(
    String words,
    List<Rhythm> rhythms,
    Optional<Seen> seen,
    Optional<String> means,
    Optional<Condition> condition,
    Optional<String> clearedBy,
    Optional<String> lamp,
    List<String> notes) {
  /** Keeps copies of the lists. */
  public LabelEntry {
    rhythms = List.copyOf(rhythms);
    notes = List.copyOf(notes);
  }

  /** The same entry with its words as they were typed. */
  LabelEntry saying(String typed) {
    return new LabelEntry(typed, rhythms, seen, means, condition, clearedBy, lamp, notes);
  }
}
