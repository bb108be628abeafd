/**
 * Decides which state of a code sheet a recording shows and how sure that is: recording, evidence,
 * templates, fit, posterior, verdict.
 */
package lampwise.decode;
