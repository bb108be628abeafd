package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The four files that start Lampwise: for the shell and for Windows, with and without a Java. */
class LauncherFilesTest {
  private static final List<String> SHELL = List.of("cli/lampwise", "cli/src/runtime/lampwise");
  private static final List<String> WINDOWS =
      List.of("cli/lampwise.cmd", "cli/src/runtime/lampwise.cmd");

  private static final String QUICK = "(-XX:Tiered[A-Za-z]*=[^\\s\"']+)";

  private static String text(String launcher) throws IOException {
    Path file = CommandRun.root().resolve(launcher);
    return Files.readString(file, StandardCharsets.US_ASCII);
  }

  private static String found(String pattern, String launcher) throws IOException {
    Matcher matcher = Pattern.compile(pattern).matcher(text(launcher));
    assertTrue(matcher.find(), launcher + " has nothing like " + pattern);
    return matcher.group(1).strip();
  }

  @Test
  void allGiveJavaTheSameOptions() throws IOException {
    String wanted = found("\\noptions='([^']*)'", SHELL.get(0));
    assertEquals(wanted, found("\\noptions='([^']*)'", SHELL.get(1)));
    for (String launcher : WINDOWS) {
      assertEquals(wanted, found("set \"options=([^\"]*)\"", launcher), launcher);
    }
  }

  @Test
  void allKeepTheSecondCompilerForTheSameCommands() throws IOException {
    String wanted = found("\\n  ([a-z |]+)\\) ;;", SHELL.get(0));
    assertEquals(wanted, found("\\n  ([a-z |]+)\\) ;;", SHELL.get(1)));
    for (String launcher : WINDOWS) {
      String named = found("for %%c in \\(([a-z ]+)\\)", launcher);
      assertEquals(wanted, named.replace(" ", " | "), launcher);
    }
    List<String> all = Stream.concat(SHELL.stream(), WINDOWS.stream()).toList();
    String quick = found(QUICK, all.get(0));
    for (String launcher : all) {
      assertEquals(quick, found(QUICK, launcher), launcher);
    }
  }

  @Test
  void linesEndAsTheirShellWants() throws IOException {
    for (String launcher : SHELL) {
      assertTrue(text(launcher).startsWith("#!/bin/sh\n"), launcher);
      assertTrue(text(launcher).indexOf('\r') < 0, launcher);
    }
    for (String launcher : WINDOWS) {
      assertTrue(text(launcher).startsWith("@echo off\r\n"), launcher);
      assertEquals("", text(launcher).replaceAll("[^\\r\\n]*\\r\\n", ""), launcher);
    }
  }
}
