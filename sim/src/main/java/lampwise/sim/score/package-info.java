/** How good a decoder is: the bench, the references that know the noise, and the score. */
package lampwise.sim.score;
