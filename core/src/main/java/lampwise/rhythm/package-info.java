/**
 * What a lamp can show, and the phrase that says it. A {@link lampwise.rhythm.Rhythm} is a tree
 * that mirrors its phrase; {@link lampwise.rhythm.Phrase} reads and prints it.
 */
package lampwise.rhythm;
