/**
 * Lamps, people and sensors that make labelled recordings.
 *
 * <p>Everything here is a pure function of a seed and of settings: the same two give the same
 * recording, bit for bit, on every machine. The package builds on {@code lampwise.light}, {@code
 * lampwise.rhythm} and {@code lampwise.sheet} and never on {@code lampwise.decode}, so that a
 * recording owes nothing to the decoder it is meant to try.
 */
package lampwise.sim;
