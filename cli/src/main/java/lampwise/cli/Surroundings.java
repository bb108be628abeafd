package lampwise.cli;

import java.io.BufferedInputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;

/**
 * What a command can touch of the process around it.
 *
 * @param in standard input
 * @param out standard output
 * @param err standard error
 * @param folder the folder that relative paths start from
 * @param variables the environment
 * @param terminal whether a person sits at both ends: input is typed and output is read
 * @param clock what time it is here
 */
record Surroundings(
    InputStream in,
    PrintWriter out,
    PrintWriter err,
    Path folder,
    Map<String, String> variables,
    boolean terminal,
    Clock clock) {

  /** The machine's own. Its zone is looked up when it is asked for: that opens every jar. */
  private static final class OwnClock extends Clock {
    @Override
    public ZoneId getZone() {
      return ZoneId.systemDefault();
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return Clock.system(zone);
    }

    @Override
    public Instant instant() {
      return Instant.now();
    }
  }

  /** With the machine's own clock. */
  Surroundings(
      InputStream in,
      PrintWriter out,
      PrintWriter err,
      Path folder,
      Map<String, String> variables,
      boolean terminal) {
    this(in, out, err, folder, variables, terminal, new OwnClock());
  }

  /** The process itself, text in UTF-8 whatever the locale. */
  // From Java 22 on there is a console without a terminal too, unless this one is asked for.
  @SuppressWarnings("SystemConsoleNull")
  static Surroundings ofProcess() {
    System.setProperty("jdk.console", "java.base");
    return new Surroundings(
        // Bare, it asks a pipe for its position and fails.
        new BufferedInputStream(new FileInputStream(FileDescriptor.in)),
        writer(FileDescriptor.out),
        writer(FileDescriptor.err),
        Path.of(""),
        System.getenv(),
        System.console() != null);
  }

  private static PrintWriter writer(FileDescriptor descriptor) {
    return new PrintWriter(
        new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), false);
  }

  /** A variable of the environment; empty also if it is set to nothing. */
  Optional<String> variable(String name) {
    String value = variables.get(name);
    return value == null || value.isEmpty() ? Optional.empty() : Optional.of(value);
  }

  /** Whether output may be coloured. */
  boolean colour() {
    return terminal && variable("NO_COLOR").isEmpty();
  }
}
