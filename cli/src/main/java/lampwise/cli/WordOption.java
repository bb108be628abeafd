package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/**
 * An option that takes words of a closed list.
 *
 * @param name the option
 * @param values what can be meant, in the order of the help
 * @param word how each is written
 * @param <T> what the words mean
 */
record WordOption<T>(String name, List<T> values, Function<T, String> word) {
  WordOption(String name, T[] values, Function<T, String> word) {
    this(name, List.of(values), word);
  }

  /** An option whose words are the names of constants, in small letters. */
  static <E extends Enum<E>> WordOption<E> ofEnum(String name, E[] values) {
    return new WordOption<>(name, values, value -> value.name().toLowerCase(Locale.ROOT));
  }

  /** Adds the option to a command, to be given once; before the words stands what they tell. */
  void addOnce(CommandSpec spec, String label, String tells) {
    ReadingFlags.one(spec, name, label, tells + known());
  }

  /** Adds the option to a command, to be given as often as wanted. */
  void addMany(CommandSpec spec, String label, String tells) {
    ReadingFlags.many(spec, name, label, tells + known() + "; repeatable");
  }

  /** All words, for people. */
  String known() {
    return String.join(", ", values.stream().map(word).toList());
  }

  /** What a word means, capitals or not; empty for a word of no meaning here. */
  Optional<T> of(String given) {
    return values.stream().filter(value -> word.apply(value).equalsIgnoreCase(given)).findFirst();
  }

  /**
   * What was given once.
   *
   * @return empty if the option is not there
   * @throws UsageException if the word is unknown
   */
  Optional<T> one(ParseResult parsed) throws UsageException {
    return read(ReadingFlags.text(parsed, name).stream().toList()).stream().findFirst();
  }

  /**
   * What was given, in its order.
   *
   * @throws UsageException if a word is unknown
   */
  List<T> many(ParseResult parsed) throws UsageException {
    return read(parsed.matchedOptionValue(name, List.<String>of()));
  }

  private List<T> read(List<String> words) throws UsageException {
    List<T> read = new ArrayList<>();
    for (String given : words) {
      read.add(
          of(given)
              .orElseThrow(
                  () ->
                      new UsageException(
                          name + " takes " + known() + ", not " + Layout.clean(given))));
    }
    return read;
  }
}
