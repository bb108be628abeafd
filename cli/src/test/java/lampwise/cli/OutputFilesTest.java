package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands under a name before and after something is written there. */
class OutputFilesTest {
  private static final byte[] NEW = "new".getBytes(StandardCharsets.UTF_8);

  /** The commands that write a file, with the option that names it last. */
  private static final String CAPTURE = "capture --force --out";

  private static final String CHART = "chart --force --to 12 --out";
  private static final String CARD = "sheet demo --force --print";

  @TempDir Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  private Path old(String name) throws IOException {
    return Files.writeString(folder.resolve(name), "old and longer");
  }

  /** Runs a command that writes to {@code out.svg}. */
  private CommandRun run(String command) {
    return CommandRun.Setting.in(folder).run("3.1 6.2 9.3", (command + " out.svg").split(" "));
  }

  /** A pipe with a name; the test is skipped where there are none. */
  private Path pipe(String name) throws IOException, InterruptedException {
    Path pipe = folder.resolve(name);
    boolean made;
    try {
      made = new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
    } catch (IOException e) {
      made = false;
    }
    assumeTrue(made, "no mkfifo here");
    return pipe;
  }

  /** Reads a pipe to its end while something else writes into it. */
  private static CompletableFuture<String> reading(Path pipe) {
    return CompletableFuture.supplyAsync(
        () -> {
          try {
            return Files.readString(pipe);
          } catch (IOException e) {
            return "unread: " + e;
          }
        });
  }

  private static String all(CompletableFuture<String> reading)
      throws InterruptedException, ExecutionException, TimeoutException {
    return reading.get(30, TimeUnit.SECONDS);
  }

  private static boolean isSpecial(Path path) throws IOException {
    return Files.readAttributes(path, BasicFileAttributes.class).isOther();
  }

  @Test
  void aNewFileStandsAlone() throws IOException {
    for (boolean force : new boolean[] {false, true}) {
      Path path = folder.resolve("new-" + force);
      OutputFiles.put(path, NEW, force);
      assertEquals("new", Files.readString(path));
    }
    assertEquals(List.of("new-false", "new-true"), names());
  }

  @Test
  void whatStandsThereStaysUnlessForced() throws IOException {
    Path path = old("a");
    assertThrows(FileAlreadyExistsException.class, () -> OutputFiles.put(path, NEW, false));
    assertEquals("old and longer", Files.readString(path));
    OutputFiles.put(path, NEW, true);
    assertEquals("new", Files.readString(path));
    assertEquals(List.of("a"), names());
  }

  @Test
  void whoMayReadItStaysAsItWas() throws IOException {
    Path path = old("a");
    assumeTrue(Files.getFileStore(path).supportsFileAttributeView("posix"));
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rw-r-----"));
    OutputFiles.put(path, NEW, true);
    assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(path)));
  }

  @Test
  void aLinkIsFollowed() throws IOException {
    Files.createDirectory(folder.resolve("elsewhere"));
    Path real = old("elsewhere/a");
    Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("elsewhere", "a"));
    assertThrows(FileAlreadyExistsException.class, () -> OutputFiles.put(link, NEW, false));
    OutputFiles.put(link, NEW, true);
    assertTrue(Files.isSymbolicLink(link));
    assertEquals("new", Files.readString(real));
    assertEquals(List.of("elsewhere", "link"), names());
  }

  @Test
  void aLinkThatLeadsNowhereSaysWhereTheFileGoes() throws IOException {
    Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("later"));
    assertThrows(FileAlreadyExistsException.class, () -> OutputFiles.put(link, NEW, false));
    assertEquals(List.of("link"), names());
    OutputFiles.put(link, NEW, true);
    assertTrue(Files.isSymbolicLink(link));
    assertEquals("new", Files.readString(folder.resolve("later")));
  }

  @Test
  void aFolderIsRefused() throws IOException {
    Path sub = Files.createDirectory(folder.resolve("sub"));
    for (boolean force : new boolean[] {false, true}) {
      FileSystemException fault =
          assertThrows(FileSystemException.class, () -> OutputFiles.put(sub, NEW, force));
      assertEquals("is a folder", fault.getReason());
    }
    assertTrue(Files.isDirectory(sub));
  }

  @Test
  void aFaultNamesTheFileThatWasAskedFor() throws IOException {
    Path lost = folder.resolve("none").resolve("a");
    NoSuchFileException none =
        assertThrows(NoSuchFileException.class, () -> OutputFiles.put(lost, NEW, true));
    assertEquals(lost.toString(), none.getFile());
    Path below = old("file").resolve("a");
    FileSystemException fault =
        assertThrows(FileSystemException.class, () -> OutputFiles.put(below, NEW, true));
    assertEquals(below.toString(), fault.getFile());
  }

  @Test
  void aPipeStaysAPipe()
      throws IOException, InterruptedException, ExecutionException, TimeoutException {
    Path pipe = pipe("pipe");
    assertThrows(FileAlreadyExistsException.class, () -> OutputFiles.put(pipe, NEW, false));
    CompletableFuture<String> read = reading(pipe);
    OutputFiles.put(pipe, NEW, true);
    assertEquals("new", all(read));
    assertTrue(isSpecial(pipe));
    assertEquals(List.of("pipe"), names());
  }

  @ParameterizedTest
  @ValueSource(strings = {CAPTURE, CHART, CARD})
  void everyCommandWritesIntoAPipe(String command)
      throws IOException, InterruptedException, ExecutionException, TimeoutException {
    Path pipe = pipe("out.svg");
    CompletableFuture<String> read = reading(pipe);
    CommandRun run = run(command);
    assertEquals(0, run.status(), run.err());
    assertTrue(all(read).contains("</"), command);
    assertTrue(isSpecial(pipe));
    assertEquals(List.of("out.svg"), names());
  }

  @ParameterizedTest
  @ValueSource(strings = {CAPTURE, CHART, CARD})
  void everyCommandFollowsALink(String command) throws IOException {
    Path real = old("real.svg");
    Files.createSymbolicLink(folder.resolve("out.svg"), Path.of("real.svg"));
    CommandRun run = run(command);
    assertEquals(0, run.status(), run.err());
    assertTrue(Files.isSymbolicLink(folder.resolve("out.svg")));
    assertFalse(Files.readString(real).contains("old and longer"));
    assertEquals(List.of("out.svg", "real.svg"), names());
  }

  @ParameterizedTest
  @ValueSource(strings = {CAPTURE, CHART, CARD})
  void noCommandWritesOverAFolder(String command) throws IOException {
    Files.createDirectory(folder.resolve("out.svg"));
    CommandRun run = run(command);
    assertEquals(command.equals(CHART) ? Main.REFUSED : Main.WRONG_USE, run.status());
    assertTrue(run.err().startsWith("out.svg: "), run.err());
    assertTrue(run.err().contains("is a folder"), run.err());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(Files.isDirectory(folder.resolve("out.svg")));
  }
}
