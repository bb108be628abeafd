package lampwise.service;

/**
 * What a check showed.
 *
 * @param check the check's id
 * @param answer the word of the answer
 */
public record Finding(String check, String answer) {}
