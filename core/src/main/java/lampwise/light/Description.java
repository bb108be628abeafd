package lampwise.light;

import java.util.Optional;

/**
 * A rhythm in words as a person counted it.
 *
 * @param origin where it came from
 * @param marks what was noted beside it; the window is how long the person watched
 * @param said the rhythm phrase, or {@value #NOTHING} if no light was seen
 */
public record Description(Origin origin, Marks marks, String said) implements Recording {
  /** What is said of a lamp that showed nothing. */
  public static final String NOTHING = "nothing";

  /** The window as marked; empty if the person did not say how long they watched. */
  @Override
  public Optional<Window> window() {
    return marks.window();
  }
}
