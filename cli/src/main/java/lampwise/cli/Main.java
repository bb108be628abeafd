package lampwise.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command {@code lampwise}: hands its arguments to one of its subcommands. */
@Command(
    name = "lampwise",
    mixinStandardHelpOptions = true,
    version = "lampwise 0.1.0",
    description = "Reads the blinking indicator lamp of a sensor-operated flush valve or faucet.")
public final class Main implements Runnable {
  @Spec private CommandSpec spec;

  /** Makes the command with nothing parsed yet. */
  public Main() {}

  /**
   * Runs the command and ends the process with its exit status.
   *
   * @param args the words of the command line after the program's name
   */
  public static void main(String[] args) {
    System.exit(new CommandLine(new Main()).execute(args));
  }

  /** Says how the command is used; called when no subcommand was named. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
