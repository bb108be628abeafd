package lampwise.file;

import java.util.List;
import java.util.stream.Collectors;

/** A file is refused. Carries every fault that was found, the first one first. */
public final class FileException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<FileFault> faults;

  /**
   * Makes one.
   *
   * @param faults one fault or more, in the order of the file
   */
  public FileException(List<FileFault> faults) {
    super(faults.stream().map(FileFault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /**
   * Makes one of a single fault.
   *
   * @param file the file's name
   * @param line the line, from 1, or 0
   * @param column the column, from 1, or 0
   * @param message what is wrong and what was expected
   */
  public FileException(String file, int line, int column, String message) {
    this(List.of(new FileFault(file, line, column, message)));
  }

  /**
   * The faults.
   *
   * @return one or more
   */
  public List<FileFault> faults() {
    return faults;
  }
}
