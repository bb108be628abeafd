package lampwise.decode;

/**
 * One state that a recording may show.
 *
 * @param state the state's name, {@code unlisted} or {@code no-rhythm}
 * @param prior its probability before the recording, 0 to 1
 * @param logLikelihood the natural logarithm of the recording's likelihood under it, up to a
 *     constant that all candidates share; may be negative infinity
 * @param probability its probability after the recording, 0 to 1
 */
public record Candidate(String state, double prior, double logLikelihood, double probability) {}
