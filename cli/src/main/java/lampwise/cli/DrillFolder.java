package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/** Writes a folder of files, all of them or none. */
final class DrillFolder {
  private DrillFolder() {}

  /**
   * Writes the files. Whatever was made is taken away again if a later one cannot be written.
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
    List<Path> made = new ArrayList<>();
    try {
      make(folder, made);
      for (Map.Entry<String, String> file : files.entrySet()) {
        Path place = folder.resolve(file.getKey());
        boolean stands = Files.exists(place);
        OutputFiles.put(place, file.getValue().getBytes(StandardCharsets.UTF_8), force);
        if (!stands) {
          made.add(place);
        }
      }
      return true;
    } catch (IOException e) {
      takeAway(made);
      String why = e.getMessage() == null ? "" : " (" + e.getMessage() + ")";
      here.err().println(Layout.clean(said + ": cannot be written" + why));
      return false;
    }
  }

  /** Makes a folder and those above it. */
  private static void make(Path folder, List<Path> made) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    Path above = folder.toAbsolutePath().getParent();
    if (above != null) {
      make(above, made);
    }
    Files.createDirectory(folder);
    made.add(folder);
  }

  private static void takeAway(List<Path> made) {
    Collections.reverse(made);
    for (Path path : made) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        // It stays; the first fault is the one to tell.
      }
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
