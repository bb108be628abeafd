package lampwise.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** One command of {@code lampwise}. Holds no state, so that making one costs nothing. */
interface Command {
  /** The word that calls it. */
  String name();

  /** What it does, for the list of commands: a few words. */
  String summary();

  /** Its options and its help text, without {@code --help} and {@code --trace}. */
  CommandSpec spec();

  /**
   * Runs it.
   *
   * @return the exit status
   * @throws UsageException if the command line asks for something that cannot be
   */
  int run(ParseResult parsed, Surroundings here) throws UsageException;
}
