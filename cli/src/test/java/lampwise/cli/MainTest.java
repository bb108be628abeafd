package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MainTest {
  private static final CommandRun.Setting HERE = CommandRun.Setting.in(Path.of(""));

  @Test
  void helpListsTheCommandsWithAnExample() {
    for (String option : List.of("--help", "-h")) {
      CommandRun run = HERE.run("", option);
      assertEquals(0, run.status());
      assertEquals("", run.err());
      assertTrue(run.out().contains("\n  decode    read recordings"), run.out());
      assertTrue(run.out().contains("\n  simulate  make up recordings"), run.out());
      assertTrue(run.out().contains("\n  plan      say how long"), run.out());
      assertTrue(run.out().contains("\n  drill     write a page"), run.out());
      assertTrue(run.out().contains("\n  score     measure a decoder"), run.out());
      assertTrue(run.out().contains("Example: lampwise decode"), run.out());
      assertFits(run);
    }
  }

  @Test
  void helpOfDecodeNamesEachOption() {
    CommandRun run = HERE.run("", "decode", "--help");
    assertEquals(0, run.status());
    for (String option :
        List.of(
            "--sheet",
            "--from",
            "--to",
            "--target",
            "--event",
            "--covered",
            "--as",
            "--column",
            "--time",
            "--unit",
            "--lit",
            "--together",
            "--json",
            "--trace",
            "--help")) {
      assertTrue(run.out().contains(option), option + " is missing in\n" + run.out());
    }
    assertTrue(run.out().contains("| lampwise decode --to 12"), run.out());
    assertFits(run);
  }

  @Test
  void version() {
    CommandRun run = HERE.run("", "--version");
    assertEquals(0, run.status());
    assertTrue(run.out().startsWith("lampwise "), run.out());
    assertEquals(1, run.outLines().size());
  }

  @Test
  void withoutCommandSaysHowToUseItAndFails() {
    CommandRun run = HERE.run("");
    assertEquals(2, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("Usage: lampwise COMMAND"), run.err());
  }

  @Test
  void wrongWordsAreOneLineAndStatusTwo() {
    wrong("unknown command decoed", "decoed");
    wrong("unknown option --verbose", "--verbose");
    wrong("Unknown option: '--tagret'", "decode", "--tagret", "none");
    wrong("Unknown option: '--rates'", "decode", "--rates", "50");
    wrong("Missing required parameter for option '--sheet'", "decode", "--sheet");
    wrong("'--to' (T) should be specified only once", "decode", "--to", "3", "--to", "4");
    wrong("--as takes times, gaps, spans, levels, not blinks", "decode", "--as", "blinks");
    wrong("--unit takes s, ms, us, ns, not min", "decode", "--unit", "min");
    wrong("--rate takes rows a second, more than 0", "decode", "--rate", "0");
    wrong("--rate takes rows a second", "decode", "--rate", "1e6");
    wrong("--rate takes a number, not NaN", "decode", "--rate", "NaN");
    wrong("--dates takes dmy, mdy, not ymd", "decode", "--dates", "ymd");
    wrong("--decimal takes point, comma, not dot", "decode", "--decimal", "dot");
    wrong("--lit takes dark, bright, not blue", "decode", "--lit", "blue");
  }

  private static void wrong(String message, String... args) {
    CommandRun run = HERE.run("", args);
    assertEquals(2, run.status(), run.err());
    assertEquals("", run.out());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().contains(message), run.err());
  }

  @Test
  void aClosedOutputIsSaid() {
    StringWriter err = new StringWriter();
    Writer closed =
        new Writer() {
          @Override
          public void write(char[] text, int from, int length) throws IOException {
            throw new IOException("closed");
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    Surroundings here =
        new Surroundings(
            new ByteArrayInputStream(new byte[0]),
            new PrintWriter(closed),
            new PrintWriter(err),
            Path.of(""),
            Map.of(),
            false);
    assertEquals(1, Main.run(new String[] {"--version"}, here));
    assertEquals("lampwise: standard output cannot be written to", err.toString().strip());
  }

  @Test
  void anInternalFaultIsOneLineUnlessTheTraceIsAskedFor() {
    for (boolean trace : List.of(false, true)) {
      StringWriter err = new StringWriter();
      PrintWriter printer = new PrintWriter(err);
      Surroundings here =
          new Surroundings(
              new ByteArrayInputStream(new byte[0]),
              printer,
              printer,
              Path.of(""),
              Map.of(),
              false);
      Main.internalFault("a.csv", new IllegalStateException("two\nlines"), trace, here);
      printer.flush();
      List<String> lines = err.toString().lines().toList();
      String said = "a.csv: internal fault, IllegalStateException: two lines";
      assertEquals(trace ? said : said + "; --trace shows where", lines.get(0));
      assertEquals(trace, lines.size() > 1);
    }
  }

  private static void assertFits(CommandRun run) {
    for (String line : run.outLines()) {
      assertTrue(line.length() <= 80, line);
    }
  }
}
