package lampwise.decode;

/**
 * A listed state that comes near to an unlisted rhythm.
 *
 * @param state the state's name
 * @param rhythm the state's phrase
 * @param difference how what was seen differs from it, in words
 */
public record Nearest(String state, String rhythm, String difference) {}
