package lampwise.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The folder that recordings and their truths are written into: all of them or none. They are
 * written apart first, and moved to their places when the last one is there.
 */
final class MadeUpFiles implements AutoCloseable {
  /** The file of the truths. */
  static final String TRUTH = "truth.jsonl";

  private final String name;
  private final Path folder;
  private final boolean force;
  private final Path apart;
  private final List<String> written = new ArrayList<>();
  private final BufferedWriter truths;
  private final Thread ifStopped = new Thread(this::clearQuietly);

  private MadeUpFiles(String name, Path folder, boolean force, Path apart, BufferedWriter truths) {
    this.name = name;
    this.folder = folder;
    this.force = force;
    this.apart = apart;
    this.truths = truths;
    Runtime.getRuntime().addShutdownHook(ifStopped);
  }

  /**
   * Gets ready to write; nothing is seen in the folder yet.
   *
   * @param name the folder, as the user wrote it; made when all is written if it is not there
   * @param force whether files may be written over
   * @throws UsageException if it is no folder, or truths stand there that may not be written over
   * @throws IOException if nothing can be written there
   */
  static MadeUpFiles in(Surroundings here, String name, boolean force)
      throws UsageException, IOException {
    Path folder = folder(here, name);
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new UsageException(Layout.clean(name) + ": is a file; --out takes a folder");
    }
    if (!force && Files.exists(folder.resolve(TRUTH))) {
      throw exists(name, TRUTH);
    }
    Path there = folder.toAbsolutePath();
    while (there.getParent() != null && !Files.exists(there)) {
      there = there.getParent();
    }
    Path apart = Files.createTempDirectory(there, ".made-up-");
    return new MadeUpFiles(
        name,
        folder,
        force,
        apart,
        Files.newBufferedWriter(apart.resolve(TRUTH), StandardCharsets.UTF_8));
  }

  /**
   * Writes a recording and its truth.
   *
   * @param file the recording's file
   * @param recording what it holds
   * @param truth its truth, a line
   * @throws UsageException if the file stands there and may not be written over
   * @throws IOException if it cannot be written
   */
  synchronized void add(String file, byte[] recording, String truth)
      throws UsageException, IOException {
    if (!force && Files.exists(folder.resolve(file))) {
      throw exists(name, file);
    }
    Files.write(apart.resolve(file), recording);
    truths.write(truth);
    truths.write('\n');
    written.add(file);
  }

  /**
   * Moves everything to its place.
   *
   * @throws IOException if that cannot be done
   */
  synchronized void finish() throws IOException {
    truths.close();
    Files.createDirectories(folder);
    for (String file : written) {
      move(file);
    }
    move(TRUTH);
  }

  private void move(String file) throws IOException {
    if (force) {
      Files.move(apart.resolve(file), folder.resolve(file), StandardCopyOption.REPLACE_EXISTING);
    } else {
      Files.move(apart.resolve(file), folder.resolve(file));
    }
  }

  /** Takes away what was written apart and is not in its place. */
  @Override
  public void close() throws IOException {
    try {
      Runtime.getRuntime().removeShutdownHook(ifStopped);
    } catch (IllegalStateException e) {
      return; // The process is being stopped, and the other thread clears.
    }
    truths.close();
    clear();
  }

  private void clearQuietly() {
    try {
      clear();
    } catch (IOException e) {
      // Nobody is left to tell.
    }
  }

  private synchronized void clear() throws IOException {
    List<Path> left;
    try (Stream<Path> files = Files.list(apart)) {
      left = files.toList();
    }
    for (Path file : left) {
      Files.deleteIfExists(file);
    }
    Files.deleteIfExists(apart);
  }

  private static UsageException exists(String name, String file) {
    return new UsageException(
        Layout.clean(name) + ": holds " + file + " already; --force writes over it");
  }

  private static Path folder(Surroundings here, String name) throws UsageException {
    try {
      if (!name.isEmpty()) {
        return here.folder().resolve(name);
      }
    } catch (InvalidPathException e) {
      // Said below.
    }
    throw new UsageException(
        "--out takes the name of a folder, not \"" + Layout.clean(name) + "\"");
  }
}
