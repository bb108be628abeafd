package lampwise.cli;

import java.util.Arrays;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * The command {@code lampwise}: hands its arguments to one of its commands. Only the command that
 * was called is set up, since most of a run's time is the start of the process.
 */
public final class Main {
  /** Every recording was read, whatever its verdict. */
  static final int DONE = 0;

  /** Something was refused or went wrong. */
  static final int REFUSED = 1;

  /** Wrong use. */
  static final int WRONG_USE = 2;

  private static final List<Command> COMMANDS =
      List.of(
          new DecodeCommand(),
          new ChartCommand(),
          new SheetCommand(),
          new CaptureCommand(),
          new PlanCommand(),
          new SimulateCommand(),
          new DrillCommand(),
          new ScoreCommand(),
          new DiagnoseCommand(),
          new WaterCommand(),
          new RoundCommand());

  private Main() {}

  /**
   * Runs a command and ends the process with its exit status.
   *
   * @param args the words of the command line after the program's name
   */
  public static void main(String[] args) {
    System.exit(run(args, Surroundings.ofProcess()));
  }

  /** Runs a command; whatever goes wrong becomes a line on standard error and a status. */
  static int run(String[] args, Surroundings here) {
    int status = dispatch(args, here);
    here.out().flush();
    if (here.out().checkError()) {
      here.err().println("lampwise: standard output cannot be written to");
      status = REFUSED;
    }
    here.err().flush();
    return status;
  }

  private static int dispatch(String[] args, Surroundings here) {
    if (args.length == 0) {
      help(here.err());
      return WRONG_USE;
    }
    String word = args[0];
    if (word.equals("--help") || word.equals("-h")) {
      help(here.out());
      return DONE;
    }
    if (word.equals("--version") || word.equals("-V")) {
      here.out().println("lampwise " + version());
      return DONE;
    }
    for (Command command : COMMANDS) {
      if (command.name().equals(word)) {
        return call(command, Arrays.copyOfRange(args, 1, args.length), here);
      }
    }
    String kind = word.startsWith("-") ? "option" : "command";
    here.err()
        .println("lampwise: unknown " + kind + " " + word + "; lampwise --help lists the commands");
    return WRONG_USE;
  }

  private static int call(Command command, String[] args, Surroundings here) {
    String name = "lampwise " + command.name();
    boolean trace = Arrays.asList(args).contains("--trace");
    try {
      CommandSpec spec = command.spec().name(name);
      spec.addOption(
          flag("--trace", "print the stack trace of a fault in the program itself").build());
      spec.addOption(
          flag("--help", "print this text").names("-h", "--help").usageHelp(true).build());
      CommandLine line = new CommandLine(spec);
      line.setOut(here.out());
      line.setErr(here.err());
      line.setExpandAtFiles(false);
      line.setInterpolateVariables(false);
      ParseResult parsed = line.parseArgs(args);
      if (parsed.isUsageHelpRequested()) {
        line.usage(line.getOut(), Ansi.OFF);
        return DONE;
      }
      return command.run(parsed, here);
    } catch (UsageException e) {
      e.lines().forEach(here.err()::println);
      return WRONG_USE;
    } catch (ParameterException e) {
      here.err()
          .println(
              name + ": " + oneLine(String.valueOf(e.getMessage())) + "; see " + name + " --help");
      return WRONG_USE;
    } catch (RuntimeException e) {
      internalFault(name, e, trace, here);
      return REFUSED;
    }
  }

  /** Says that the program itself is at fault, in one line, and where if that was asked for. */
  static void internalFault(
      String where, RuntimeException fault, boolean trace, Surroundings here) {
    String said = fault.getMessage() == null ? "" : ": " + fault.getMessage();
    here.err()
        .println(
            where
                + ": internal fault, "
                + oneLine(fault.getClass().getSimpleName() + said)
                + (trace ? "" : "; --trace shows where"));
    if (trace) {
      fault.printStackTrace(here.err());
    }
  }

  /** The text with every run of line ends and other control characters made one blank. */
  static String oneLine(String text) {
    return Layout.clean(text);
  }

  private static OptionSpec.Builder flag(String name, String description) {
    return OptionSpec.builder(name).type(boolean.class).arity("0").description(description);
  }

  private static String version() {
    String version = Main.class.getPackage().getImplementationVersion();
    return version == null ? "(not packaged)" : version;
  }

  private static void help(java.io.PrintWriter out) {
    out.println("Usage: lampwise COMMAND [OPTION...] [FILE...]");
    out.println("Reads the blinking indicator lamp of a sensor-operated flush valve or faucet.");
    out.println();
    out.println("Commands:");
    for (Command command : COMMANDS) {
      out.println("  " + Layout.padded(command.name(), 10) + command.summary());
    }
    out.println();
    out.println("  -h, --help      print this text; lampwise COMMAND --help tells more");
    out.println("  -V, --version   print the version");
    out.println();
    out.println("Example: lampwise decode --sheet unit.sheet.yaml tapped.txt");
  }
}
