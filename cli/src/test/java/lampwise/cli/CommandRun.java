package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Runs the command line inside the test's own process and keeps what it printed. */
record CommandRun(int status, String out, String err) {

  /** Where and with what a command is run. */
  record Setting(Path folder, Map<String, String> variables, boolean terminal) {
    static Setting in(Path folder) {
      return new Setting(folder, Map.of(), false);
    }

    CommandRun run(String input, String... args) {
      return run(input.getBytes(StandardCharsets.UTF_8), args);
    }

    /** Runs a command that writes to {@code out} and must succeed. */
    void write(String command, String out, String... words) {
      List<String> args = new ArrayList<>(List.of(words));
      args.add(0, command);
      args.addAll(List.of("--out", out));
      CommandRun run = run("", args.toArray(String[]::new));
      assertEquals(0, run.status(), run.err());
    }

    CommandRun run(byte[] input, String... args) {
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      Surroundings here =
          new Surroundings(
              new ByteArrayInputStream(input),
              new PrintWriter(out),
              new PrintWriter(err),
              folder,
              variables,
              terminal);
      int status = Main.run(args, here);
      return new CommandRun(status, out.toString(), err.toString());
    }
  }

  List<String> outLines() {
    return out.lines().toList();
  }

  List<String> errLines() {
    return err.lines().toList();
  }

  /** The project's root: the nearest folder upwards that holds testdata. */
  static Path root() {
    Path folder = Path.of("").toAbsolutePath();
    while (folder != null && !Files.isDirectory(folder.resolve("testdata"))) {
      folder = folder.getParent();
    }
    if (folder == null) {
      throw new IllegalStateException("no folder upwards from here holds testdata");
    }
    return folder;
  }
}
