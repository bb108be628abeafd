/**
 * The property kit: arbitraries and a domain for rhythms, code sheets, recordings and observers,
 * and {@link lampwise.sim.check.DecoderContract}, the laws that any decoder must hold.
 *
 * <p>It is made for jqwik, and no other package of the project knows that. Whoever uses the kit
 * names jqwik's API and engine in the own tests.
 */
package lampwise.sim.check;
