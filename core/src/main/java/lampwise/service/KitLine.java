package lampwise.service;

import java.util.List;

/**
 * A part to bring along.
 *
 * @param part what it is
 * @param count how many
 * @param fixtures the ids of the fixtures that it is for
 */
public record KitLine(String part, int count, List<String> fixtures) {
  /** Keeps a copy of the list. */
  public KitLine {
    fixtures = List.copyOf(fixtures);
  }
}
