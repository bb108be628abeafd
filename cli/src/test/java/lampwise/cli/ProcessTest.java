package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a process of its own shows: pipes, the exit status, the bytes of the output. */
class ProcessTest {
  @TempDir Path folder;

  private CommandRun run(String input, String... args) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Dfile.encoding=US-ASCII");
    command.add("-Xlog:class+load:file=classes");
    command.add("-cp");
    String tested = System.getProperty("surefire.test.class.path");
    command.add(tested == null ? System.getProperty("java.class.path") : tested);
    command.add("lampwise.cli.Main");
    command.addAll(List.of(args));
    Path out = folder.resolve("out");
    Path err = folder.resolve("err");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().remove("LAMPWISE_SHEET");
    builder.environment().put("LC_ALL", "C");
    Process process = builder.start();
    try (OutputStream pipe = process.getOutputStream()) {
      pipe.write(input.getBytes(StandardCharsets.UTF_8));
    }
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "the process does not end");
    return new CommandRun(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  @Test
  void readsAPipe() throws IOException, InterruptedException {
    CommandRun run = run("3.1 6.2 9.3", "decode", "--to", "12");
    assertEquals(0, run.status(), run.err());
    assertEquals("", run.err());
    assertTrue(run.out().startsWith("1 blink every 3.1 s"), run.out());
  }

  @Test
  void refusesAPipeAndWritesUtf8WhateverTheLocale() throws IOException, InterruptedException {
    CommandRun run = run("überall 1", "decode", "--json");
    assertEquals(1, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.out().contains("überall"), run.out());
    assertTrue(run.err().contains("überall"), run.err());
  }

  @Test
  void endsWithTheStatusOfWrongUse() throws IOException, InterruptedException {
    assertEquals(2, run("", "decode", "--sheet", "none.yaml").status());
  }

  /** What a record has of equals and hashCode is put together by this class, at a high price. */
  @Test
  void aSmallDecodeComparesNoRecordByWhatItHasOfItself() throws IOException, InterruptedException {
    CommandRun run = run("0.3 3.5 6.5 9.7 12.8 15.8", "decode", "--sheet", "demo");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("cells-low"), run.out());
    String classes = Files.readString(folder.resolve("classes"));
    assertTrue(classes.contains(" lampwise.decode.LampDecoder "), "no classes are listed");
    assertFalse(classes.contains(" java.lang.runtime.ObjectMethods "), "a decode starts later");
  }

  /** To know the zone opens every jar of the class path. */
  @Test
  void aCommandWithoutADateLooksUpNoZone() throws IOException, InterruptedException {
    assertEquals(0, run("", "--help").status());
    String classes = Files.readString(folder.resolve("classes"));
    assertTrue(classes.contains(" lampwise.cli.Surroundings "), "no classes are listed");
    assertFalse(classes.contains(" java.time.ZoneRegion "), "every command starts later");
  }
}
