package lampwise.decode;

import lampwise.light.Blink;

/**
 * A blink that the recording shows.
 *
 * @param blink when; its end may be unknown
 * @param probability how sure it is that the lamp blinked there, 0 to 1
 */
public record SeenBlink(Blink blink, double probability) {}
