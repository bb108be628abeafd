/**
 * What was seen of one lamp: blink logs and light curves, with the window that was watched, the
 * targets and events that were noted beside them. All times are seconds on the recording's own
 * clock.
 */
package lampwise.light;
