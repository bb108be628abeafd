/** How good a decoder is: the bench, the reference decoder that knows the noise, and the score. */
package lampwise.sim.score;
