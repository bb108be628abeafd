package lampwise.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import lampwise.file.FileException;

/** Reads whole files; whatever is wrong becomes a fault of one line. */
final class InputFiles {
  private InputFiles() {}

  /**
   * The bytes of a file.
   *
   * @param name its path, as the user wrote it
   * @param expected what it should be: {@code a recording}
   * @throws FileException if it is not there, is a folder or cannot be read
   */
  static byte[] read(Surroundings here, String name, String expected) throws FileException {
    try {
      Path path = here.folder().resolve(name);
      if (Files.isDirectory(path)) {
        throw fault(name, "is a folder; expected the file of " + expected);
      }
      return Files.readAllBytes(path);
    } catch (NoSuchFileException | InvalidPathException e) {
      throw fault(name, "no such file; expected the file of " + expected);
    } catch (AccessDeniedException e) {
      throw fault(name, "may not be read; expected the file of " + expected);
    } catch (IOException e) {
      throw fault(name, "cannot be read (" + Layout.clean(String.valueOf(e.getMessage())) + ")");
    } catch (OutOfMemoryError e) {
      throw fault(name, "is too large for the memory at hand");
    }
  }

  /** Where a file lies, if it is one that is there; what else a name leads to is for reading. */
  static Optional<Path> file(Surroundings here, String name) {
    try {
      Path path = here.folder().resolve(name);
      return Files.isRegularFile(path) ? Optional.of(path) : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  private static FileException fault(String name, String message) {
    return new FileException(name.isEmpty() ? "\"\"" : name, 0, 0, message);
  }
}
