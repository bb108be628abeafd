package lampwise.cli;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lampwise.light.Recording;
import lampwise.service.Fixture;

/**
 * Finds out of which fixture a recording is: the one that is named inside it, else the one whose id
 * is a word, or several words, of the file's name. Case does not matter; the longest id goes first.
 */
final class RoundJoin {
  private final Map<String, Fixture> byKey = new HashMap<>();

  RoundJoin(List<Fixture> fixtures) {
    fixtures.forEach(fixture -> byKey.put(fixture.key(), fixture));
  }

  /**
   * The fixture of a recording.
   *
   * @param fixture the fixture; empty if it belongs to none
   * @param why why it belongs to none
   */
  record Joined(Optional<Fixture> fixture, String why) {}

  Joined of(String file, Recording recording) {
    Optional<String> inside = recording.origin().fixture();
    if (inside.isPresent()) {
      Fixture named = byKey.get(inside.get().strip().toLowerCase(Locale.ROOT));
      return named == null
          ? new Joined(Optional.empty(), "names the fixture " + inside.get() + ", not on the list")
          : new Joined(Optional.of(named), "");
    }
    return ofName(file);
  }

  private Joined ofName(String file) {
    String name = file.toLowerCase(Locale.ROOT);
    Optional<Fixture> found = Optional.empty();
    Optional<Fixture> other = Optional.empty();
    for (int from = 0; from < name.length(); from++) {
      for (int to = name.length(); isBorder(name, from) && to > from; to--) {
        Fixture here = isBorder(name, to) ? byKey.get(name.substring(from, to)) : null;
        if (here == null || found.equals(Optional.of(here))) {
          continue;
        }
        int longer = here.key().length() - found.map(one -> one.key().length()).orElse(0);
        if (longer > 0) {
          found = Optional.of(here);
          other = Optional.empty();
        } else if (longer == 0) {
          other = Optional.of(here);
        }
      }
    }
    if (other.isPresent()) {
      String two = found.orElseThrow().id() + " and " + other.get().id();
      return new Joined(Optional.empty(), "its name holds two fixtures, " + two);
    }
    return new Joined(found, "neither it nor its name says a fixture of the list");
  }

  /** Whether a word begins or ends there; an id of signs alone begins anywhere. */
  private static boolean isBorder(String text, int at) {
    return at == 0
        || at == text.length()
        || !Character.isLetterOrDigit(text.charAt(at))
        || !Character.isLetterOrDigit(text.charAt(at - 1));
  }
}
