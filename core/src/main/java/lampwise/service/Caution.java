package lampwise.service;

import java.util.Optional;

/**
 * How a piece of work can hurt somebody or do damage, and what to do about it. Cautions are shown
 * before the first step.
 *
 * @param id its id
 * @param text what to do and why, one line
 * @param source where it is published; empty for common practice without a source
 */
public record Caution(String id, String text, Optional<String> source) {
  /**
   * Checks the id.
   *
   * @throws GuideException if it is not lower-case letters, digits and hyphens, starting with a
   *     letter
   */
  public Caution {
    Rules.id("a caution", id);
  }
}
