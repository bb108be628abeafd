package lampwise.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import lampwise.service.Visit;

/**
 * The visit log: a comma-separated file to which rows are only added. Its columns and rules are in
 * {@code core/docs/visit-log.md}.
 *
 * <p>A row is acknowledged, by a method's return, only once it is forced to the disk. Any number of
 * processes and threads may write at a time; each waits for the others. What a writer that was cut
 * off left behind is set aside in a file of its own before the next row is added, never joined to
 * it. A file that is no visit log, or has a fault, is not written to.
 */
public final class VisitLog {
  /** A channel's lock, let go when it is closed, parts processes; this one parts our threads. */
  private static final Object ONE_AT_A_TIME = new Object();

  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final int MOST_SET_ASIDE = 10_000;
  private static final int MOST_BYTES = 100_000_000;

  private VisitLog() {}

  /**
   * A row was added.
   *
   * @param row its number, from 1, for a correction to name
   * @param setAside the file that took what a writer had left unfinished; empty if nothing was
   */
  public record Added(int row, Optional<Path> setAside) {}

  /**
   * Reads a log. Nothing is written.
   *
   * @param path the file
   * @return its visits, corrected; a last row that is not whole is left out and counted
   * @throws FileException with every fault and its place: the file cannot be read, is no visit log,
   *     is of a newer version, or has a cell that cannot be understood
   */
  public static VisitRows read(Path path) throws FileException {
    synchronized (ONE_AT_A_TIME) {
      try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
        channel.lock(0, Long.MAX_VALUE, true);
        return VisitRows.of(path.toString(), content(channel));
      } catch (IOException e) {
        throw failed(path, "could not be read", e);
      }
    }
  }

  /**
   * Adds a visit. The file is made if it is not there.
   *
   * @param path the file
   * @param visit the visit
   * @return the row's number, once the row is on the disk
   * @throws FileException if the file has a fault or cannot be written; it is then as it was
   */
  public static Added append(Path path, Visit visit) throws FileException {
    return add(path, 0, visit);
  }

  /**
   * Adds a row that stands for an earlier one.
   *
   * @param path the file
   * @param row the number of the row that was wrong
   * @param visit the visit as it should have been
   * @return the number of the row that corrects it
   * @throws FileException if there is no such row, the file has a fault or cannot be written; it is
   *     then as it was
   */
  public static Added correct(Path path, int row, Visit visit) throws FileException {
    if (row < 1) {
      throw new FileException(path.toString(), 0, 0, "has no row " + row + " to correct");
    }
    return add(path, row, visit);
  }

  private static Added add(Path path, int corrects, Visit visit) throws FileException {
    synchronized (ONE_AT_A_TIME) {
      boolean isNew = !Files.exists(path);
      try (FileChannel channel =
          FileChannel.open(
              path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.CREATE)) {
        channel.lock();
        Added added = add(path, channel, corrects, visit);
        if (isNew) {
          forceFolder(path);
        }
        return added;
      } catch (IOException e) {
        throw failed(path, "could not be written, nothing was added", e);
      }
    }
  }

  private static Added add(Path path, FileChannel channel, int corrects, Visit visit)
      throws IOException, FileException {
    byte[] content = content(channel);
    VisitRows rows = VisitRows.of(path.toString(), content);
    if (corrects > 0 && !rows.has(corrects)) {
      throw new FileException(path.toString(), 0, 0, "has no row " + corrects + " to correct");
    }
    Optional<Path> aside = setAside(path, channel, content, rows.wholeBytes());
    String text = rows.hasHeader() ? "" : BYTE_ORDER_MARK + CsvRows.text(VisitColumns.NAMES);
    int row = rows.last() + 1;
    write(channel, text + CsvRows.text(VisitColumns.cells(row, corrects, visit)));
    return new Added(row, aside);
  }

  /** Moves what is behind the last whole row to a new file, and cuts it off once it is safe. */
  private static Optional<Path> setAside(Path path, FileChannel channel, byte[] content, int whole)
      throws IOException {
    if (whole == content.length) {
      return Optional.empty();
    }
    Path aside = free(path);
    try (FileChannel torn =
        FileChannel.open(aside, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW)) {
      ByteBuffer rest = ByteBuffer.wrap(content, whole, content.length - whole);
      while (rest.hasRemaining()) {
        torn.write(rest);
      }
      torn.force(true);
    }
    forceFolder(path);
    channel.truncate(whole);
    channel.force(true);
    return Optional.of(aside);
  }

  private static Path free(Path path) throws IOException {
    for (int i = 1; i <= MOST_SET_ASIDE; i++) {
      Path aside = path.resolveSibling(path.getFileName() + ".torn-" + i);
      if (!Files.exists(aside)) {
        return aside;
      }
    }
    throw new IOException("there are " + MOST_SET_ASIDE + " unfinished rows set aside beside it");
  }

  /** Adds text at the end; if that fails, the file gets its old length back as far as it goes. */
  private static void write(FileChannel channel, String text) throws IOException {
    long length = channel.size();
    try {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      channel.position(length);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    } catch (IOException e) {
      try {
        channel.truncate(length);
        channel.force(true);
      } catch (IOException again) {
        e.addSuppressed(again);
      }
      throw e;
    }
  }

  /** A new file's name is on the disk only once its folder is. Not every system can do that. */
  private static void forceFolder(Path path) {
    Path folder = path.toAbsolutePath().getParent();
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      return;
    }
  }

  private static byte[] content(FileChannel channel) throws IOException {
    if (channel.size() > MOST_BYTES) {
      throw new IOException("it is over " + MOST_BYTES + " bytes; begin a new one");
    }
    ByteBuffer bytes = ByteBuffer.allocate((int) channel.size());
    channel.position(0);
    int read = 0;
    while (bytes.hasRemaining() && read >= 0) {
      read = channel.read(bytes);
    }
    return Arrays.copyOf(bytes.array(), bytes.position());
  }

  /**
   * Reads the content of a log that lies in no file of its own.
   *
   * @param name its name, for faults
   * @param content its bytes
   * @return the visits, corrections applied
   * @throws FileException with every fault of its rows
   */
  public static VisitRows read(String name, byte[] content) throws FileException {
    return VisitRows.of(name, content);
  }

  private static FileException failed(Path path, String what, IOException e) {
    String why;
    if (e instanceof NoSuchFileException) {
      why = "there is no such file or folder";
    } else if (e instanceof AccessDeniedException) {
      why = "it may not be touched by this user";
    } else {
      String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
      why = reason == null ? "the disk failed" : reason.lines().findFirst().orElse("it failed");
    }
    return new FileException(path.toString(), 0, 0, what + ": " + why);
  }
}
