package lampwise.sim;

import java.util.List;
import lampwise.light.Blink;

/**
 * What a person noted of a lamp.
 *
 * @param blinks the marks in order of time, with ends where these were noted too
 * @param missed the blinks of the lamp that began in the window and have no mark
 * @param added the starts of the marks without a blink
 */
record Noted(List<Blink> blinks, List<Blink> missed, List<Double> added) {}
