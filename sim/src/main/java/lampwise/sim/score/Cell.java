package lampwise.sim.score;

import lampwise.sim.Observer;

/**
 * One field of the table: who watches, and for how long.
 *
 * @param observer the observer's name
 * @param watching the observer
 * @param seconds the window, over zero
 */
public record Cell(String observer, Observer watching, double seconds) {}
