package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;

/** Writes a folder of files, all of them or none. */
final class DrillFolder {
  private DrillFolder() {}

  /**
   * Writes the files: first apart, then moved to their places.
   *
   * @param name the folder, as the user wrote it; made if it is not there
   * @param files the files by their names
   * @param force whether files may be written over
   * @return whether it could be written; if not, that was said
   * @throws UsageException if it is no folder, or a file stands there that may not be written over
   */
  static boolean write(Surroundings here, String name, Map<String, String> files, boolean force)
      throws UsageException {
    String said = name.isEmpty() ? "\"\"" : Layout.clean(name);
    Path folder = folder(here, name, said);
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new UsageException(said + ": is a file; --out takes a folder");
    }
    for (String file : files.keySet()) {
      if (Files.isDirectory(folder.resolve(file))) {
        throw new UsageException(said + ": holds a folder named " + file);
      }
      if (!force && Files.exists(folder.resolve(file))) {
        throw new UsageException(said + ": holds " + file + " already; --force writes over it");
      }
    }
    try {
      write(folder, files, force);
      return true;
    } catch (IOException e) {
      String why = e.getMessage() == null ? "" : " (" + e.getMessage() + ")";
      here.err().println(Layout.clean(said + ": cannot be written" + why));
      return false;
    }
  }

  private static void write(Path folder, Map<String, String> files, boolean force)
      throws IOException {
    Path there = folder.toAbsolutePath();
    while (there.getParent() != null && !Files.exists(there)) {
      there = there.getParent();
    }
    Path apart = Files.createTempDirectory(there, ".drill-");
    try {
      for (Map.Entry<String, String> file : files.entrySet()) {
        Files.write(apart.resolve(file.getKey()), file.getValue().getBytes(StandardCharsets.UTF_8));
      }
      Files.createDirectories(folder);
      for (String file : files.keySet()) {
        Path to = folder.resolve(file);
        if (force) {
          Files.move(apart.resolve(file), to, StandardCopyOption.REPLACE_EXISTING);
        } else {
          Files.move(apart.resolve(file), to);
        }
      }
    } finally {
      for (String file : files.keySet()) {
        Files.deleteIfExists(apart.resolve(file));
      }
      Files.deleteIfExists(apart);
    }
  }

  private static Path folder(Surroundings here, String name, String said) throws UsageException {
    try {
      if (!name.isEmpty()) {
        return here.folder().resolve(name);
      }
    } catch (InvalidPathException e) {
      // Said below.
    }
    throw new UsageException(said + ": is not the name of a folder");
  }
}
