package lampwise.sim;

import lampwise.light.Recording;

/**
 * A recording and what is true of it.
 *
 * @param recording what was recorded
 * @param truth what is true of it
 */
public record Labelled(Recording recording, Truth truth) {}
