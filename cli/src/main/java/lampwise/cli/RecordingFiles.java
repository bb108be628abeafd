package lampwise.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwise.file.FileException;
import lampwise.file.FileFault;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.Recording;

/** Reads the recordings of file after file, as every command that takes them does. */
final class RecordingFiles {
  /** The file name that means standard input. */
  static final String STANDARD_INPUT = "-";

  /** Files of so many bytes are not held as a whole. */
  private static final long LONG_BYTES = 4_000_000;

  /** Where the files that could not be read are told. */
  interface Refusals {
    /**
     * A file was refused.
     *
     * @param name its name on the command line
     * @param fault its first fault
     * @param line what to say; empty where it was said before
     * @param status the exit status that it asks for
     */
    void refuse(String name, FileFault fault, String line, int status);

    /** The program itself failed at a file. */
    void fault(String name, String label, RuntimeException fault);

    /** What a refusal came from, for those who ask where. */
    void cause(Exception cause);
  }

  private final Surroundings here;
  private final ReadOptions options;
  private final boolean several;
  private final Set<String> told = new LinkedHashSet<>();

  RecordingFiles(Surroundings here, ReadOptions options, boolean several) {
    this.here = here;
    this.options = options;
    this.several = several;
  }

  /** The recordings of a file; none if it was refused, which has then been told. */
  List<Recording> read(String name, Refusals refusals) {
    boolean standardInput = name.equals(STANDARD_INPUT);
    String label = standardInput ? "standard input" : name;
    try {
      Optional<Path> path = standardInput ? Optional.empty() : InputFiles.file(here, name);
      if (path.isPresent() && Files.size(path.get()) >= LONG_BYTES) {
        return RecordingReader.read(label, path.get(), options);
      }
      byte[] content =
          standardInput ? readStandardInput(label) : InputFiles.read(here, name, "a recording");
      return RecordingReader.read(label, content, options);
    } catch (FileException e) {
      FileFault fault = e.faults().get(0);
      int more = e.faults().size() - 1;
      String line = fault + (more > 0 ? " (and " + Words.count(more, "more fault") + ")" : "");
      refusals.refuse(name, fault, line, Main.REFUSED);
      refusals.cause(e);
    } catch (IOException e) {
      String why = Layout.clean(String.valueOf(e.getMessage()));
      FileFault fault = new FileFault(label, 0, 0, "cannot be read (" + why + ")");
      refusals.refuse(name, fault, fault.toString(), Main.REFUSED);
      refusals.cause(e);
    } catch (OptionException e) {
      String message = String.valueOf(e.getMessage());
      // What no file can understand is said once.
      boolean again = !told.add(message);
      FileFault fault = new FileFault(label, 0, 0, message);
      String line = again ? "" : several ? fault.toString() : message;
      refusals.refuse(name, fault, line, Main.WRONG_USE);
      refusals.cause(e);
    } catch (RuntimeException e) {
      refusals.fault(name, label, e);
    } catch (OutOfMemoryError e) {
      FileFault fault = new FileFault(label, 0, 0, "is too large for the memory at hand");
      refusals.refuse(name, fault, fault.toString(), Main.REFUSED);
    }
    return List.of();
  }

  private byte[] readStandardInput(String label) throws FileException {
    if (here.terminal()) {
      here.out().flush();
      here.err().println("Type or paste what was seen; Ctrl-D on a line of its own ends it.");
      here.err().flush();
    }
    try {
      return here.in().readAllBytes();
    } catch (IOException e) {
      throw new FileException(label, 0, 0, "cannot be read (" + e.getMessage() + ")");
    }
  }
}
