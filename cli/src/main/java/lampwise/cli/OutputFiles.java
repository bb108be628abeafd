package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

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
   * Writes a text.
   *
   * @param name its path, as the user wrote it
   * @param text what it holds, in UTF-8
   * @param force whether it may be written over another
   * @throws UsageException if it may not or cannot be written; nothing of it is then left
   */
  static void write(Surroundings here, String name, String text, boolean force)
      throws UsageException {
    check(here, name, force);
    try {
      put(path(here, name), text.getBytes(StandardCharsets.UTF_8), force);
    } catch (FileAlreadyExistsException e) {
      throw exists(name);
    } catch (NoSuchFileException e) {
      throw new UsageException(Layout.clean(name) + ": its folder does not exist");
    } catch (IOException e) {
      throw new UsageException(Layout.clean(name + ": cannot be written (" + e.getMessage() + ")"));
    }
  }

  /**
   * Writes a file: first beside its place, then moved there, so that half of it never stands under
   * its name. A link is followed, and the file that it leads to is replaced. What is no file, such
   * as a pipe or a device, stays what it is and is written into.
   *
   * @param force whether it may be written over what stands there
   * @throws FileAlreadyExistsException if something stands there and may not be written over
   * @throws NoSuchFileException if there is no such folder
   * @throws IOException if a folder stands there, or it cannot be written
   */
  static void put(Path path, byte[] bytes, boolean force) throws IOException {
    if (Files.isDirectory(path)) {
      throw new FileSystemException(path.toString(), null, "is a folder");
    }
    boolean stands = Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    if (stands && !force) {
      throw new FileAlreadyExistsException(path.toString());
    }
    if (stands && !Files.isRegularFile(path)) {
      // A link that leads nowhere yet comes here too: it says where the new file is to be.
      Files.write(path, bytes, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      return;
    }
    Path place = stands ? path.toRealPath() : path;
    Path part = place.resolveSibling("lampwise-" + System.nanoTime() + ".part");
    try {
      try {
        Files.write(part, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (stands) {
          keepPermissions(place, part);
          Files.move(part, place, StandardCopyOption.REPLACE_EXISTING);
        } else {
          Files.move(part, place);
        }
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (FileAlreadyExistsException e) {
      throw new FileAlreadyExistsException(path.toString());
    } catch (NoSuchFileException e) {
      throw new NoSuchFileException(path.toString());
    } catch (FileSystemException e) {
      // The user knows the file by its own name, not by that of its part.
      throw new FileSystemException(path.toString(), null, e.getReason());
    }
  }

  /** A file that takes another's place can be read by the same people. */
  private static void keepPermissions(Path from, Path to) throws IOException {
    if (Files.getFileStore(to).supportsFileAttributeView(PosixFileAttributeView.class)) {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
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
