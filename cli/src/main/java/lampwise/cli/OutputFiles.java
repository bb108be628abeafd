package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes whole files, all of them or nothing. */
final class OutputFiles {
  private OutputFiles() {}

  /**
   * Refuses a name under which nothing may be written.
   *
   * @throws UsageException if something stands there already and may not be written over
   */
  static void check(Surroundings here, String name, boolean force) throws UsageException {
    Path path = path(here, name);
    if (Files.isDirectory(path)) {
      throw new UsageException(Layout.clean(name) + ": is a folder; expected a file's name");
    }
    if (Files.exists(path) && !force) {
      throw exists(name);
    }
  }

  /**
   * Writes a file: first beside it, then moved to its name.
   *
   * @param name its path, as the user wrote it
   * @param text what it holds, in UTF-8
   * @param force whether it may be written over another
   * @throws UsageException if it may not or cannot be written; nothing of it is then left
   */
  static void write(Surroundings here, String name, String text, boolean force)
      throws UsageException {
    check(here, name, force);
    Path path = path(here, name);
    Path half = path.resolveSibling(path.getFileName() + "." + System.nanoTime() + ".part");
    try {
      try {
        Files.write(half, text.getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
        if (force) {
          Files.move(half, path, StandardCopyOption.REPLACE_EXISTING);
        } else {
          Files.move(half, path);
        }
      } finally {
        Files.deleteIfExists(half);
      }
    } catch (FileAlreadyExistsException e) {
      throw exists(name);
    } catch (NoSuchFileException e) {
      throw new UsageException(Layout.clean(name) + ": its folder does not exist");
    } catch (IOException e) {
      throw new UsageException(Layout.clean(name + ": cannot be written (" + e.getMessage() + ")"));
    }
  }

  private static UsageException exists(String name) {
    return new UsageException(Layout.clean(name) + ": exists already; --force writes over it");
  }

  private static Path path(Surroundings here, String name) throws UsageException {
    try {
      if (name.isEmpty()) {
        throw new UsageException("the name of a file is empty");
      }
      return here.folder().resolve(name);
    } catch (InvalidPathException e) {
      throw new UsageException(Layout.clean(name) + ": is not the name of a file");
    }
  }
}
