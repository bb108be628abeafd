package lampwise.cli;

import java.awt.Graphics2D;

/** What can be made an image: laid out already, so that it is the same on any ground. */
interface Drawing {
  /** Pixels. */
  int width();

  /** Pixels. */
  int height();

  /** Draws it on an empty ground of its width and height. */
  void draw(Graphics2D g);
}
