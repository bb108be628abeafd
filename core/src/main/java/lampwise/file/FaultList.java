package lampwise.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the faults of one file, so that all of them can be told in one go. */
final class FaultList {
  private final String file;
  private final List<FileFault> faults = new ArrayList<>();

  FaultList(String file) {
    this.file = file;
  }

  void add(int line, int column, String message) {
    faults.add(new FileFault(file, line, column, message));
  }

  void add(YamlNode where, String message) {
    add(where.line(), where.column(), message);
  }

  /** Whether a fault was found. */
  boolean any() {
    return !faults.isEmpty();
  }

  /** How many faults were found. */
  int size() {
    return faults.size();
  }

  /** Throws what was found, sorted by line and column, or does nothing if nothing was. */
  void throwIfAny() throws FileException {
    if (!faults.isEmpty()) {
      throw new FileException(sorted());
    }
  }

  /** What was found, sorted by line and column. */
  List<FileFault> sorted() {
    List<FileFault> sorted = new ArrayList<>(faults);
    sorted.sort(Comparator.comparingInt(FileFault::line).thenComparingInt(FileFault::column));
    return sorted;
  }
}
