package lampwise.cli;

import java.util.List;

/** The command line asks for something that cannot be; the exit status is 2. */
final class UsageException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<String> lines;

  UsageException(String line) {
    this(List.of(line));
  }

  /** One line or more, each ready to be printed. */
  UsageException(List<String> lines) {
    super(String.join("\n", lines));
    this.lines = List.copyOf(lines);
  }

  List<String> lines() {
    return lines;
  }
}
