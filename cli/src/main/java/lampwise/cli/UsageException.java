package lampwise.cli;

import java.util.List;
import lampwise.file.FileException;
import lampwise.file.FileFault;

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

  /** What is wrong with a file that was named, a line for each fault. */
  UsageException(FileException refused) {
    this(refused.faults().stream().map(FileFault::toString).map(Layout::clean).toList());
  }

  List<String> lines() {
    return lines;
  }
}
