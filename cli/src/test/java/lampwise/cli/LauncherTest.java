package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The script {@code lampwise} in a small tree of its own, with stand-ins for Java and Maven that
 * say how they were called.
 */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
  private static final String BUILDING_FIRST =
      "lampwise: building (first use, about a minute) ...\n";
  private static final String BUILDING_AGAIN = "lampwise: building (the source has changed) ...\n";

  @TempDir private Path temp;
  private Path tree;
  private Path script;
  private Path jar;
  private Path builds;

  private record Result(int status, String out, String err) {}

  @BeforeEach
  void plantTree() throws IOException {
    tree = temp.toRealPath().resolve("a tree");
    for (String module : List.of("core", "sim", "cli")) {
      write(tree.resolve(module).resolve("src/main/java/Some.java"), "");
      write(tree.resolve(module).resolve("pom.xml"), "");
    }
    write(tree.resolve("pom.xml"), "");
    makeOld(tree);
    script = tree.resolve("cli/lampwise");
    Files.copy(Path.of("lampwise"), script);
    makeExecutable(script);
    jar = tree.resolve("cli/target/lampwise.jar");
    builds = temp.resolve("builds");
    plantJava("17.0.9");
    plantProgram(
        temp.resolve("bin/mvn"),
        "echo \"$PWD $*\" >>'" + builds + "'",
        "[ -z \"${FAIL_BUILD:-}\" ] || { echo 'no such symbol'; exit 1; }",
        "sleep \"${BUILD_SECONDS:-0}\"",
        "mkdir -p cli/target && echo jar >cli/target/lampwise.jar");
  }

  @Test
  void firstUseBuildsOnceAndPassesEveryWordOn() throws Exception {
    Result first = run(Map.of(), "decode", "--saw", "3 blinks  every 8 s", "");
    assertEquals(BUILDING_FIRST, first.err());
    assertEquals(0, first.status());
    String words = "<lampwise.cli.Main><decode><--saw><3 blinks  every 8 s><>\n";
    assertTrue(first.out().endsWith("<-cp><" + jar + ">" + words), first.out());
    assertEquals(
        List.of(tree + " -q -B -ntp -Dmaven.test.skip package"), Files.readAllLines(builds));

    Result second = run(Map.of(), "decode", "--saw", "3 blinks  every 8 s", "");
    assertEquals(new Result(0, first.out(), ""), second);
    assertEquals(1, Files.readAllLines(builds).size());
  }

  @Test
  void anyChangedSourceBuildsAgain() throws Exception {
    run(Map.of());
    for (String source :
        List.of(
            "pom.xml",
            "core/pom.xml",
            "sim/pom.xml",
            "cli/pom.xml",
            "core/src/main/java/Some.java",
            "sim/src/main/java/Some.java",
            "cli/src/main/java/New.java")) {
      Files.setLastModifiedTime(jar, FileTime.from(Instant.now().minusSeconds(60)));
      write(tree.resolve(source), "changed");
      assertEquals(BUILDING_AGAIN, run(Map.of()).err(), source);
      makeOld(tree);
    }
    Files.setLastModifiedTime(jar, FileTime.from(Instant.now().minusSeconds(60)));
    Files.delete(tree.resolve("core/src/main/java/Some.java"));
    assertEquals(BUILDING_AGAIN, run(Map.of()).err(), "deleted");
    makeOld(tree);
    write(tree.resolve("cli/src/test/java/SomeTest.java"), "changed");
    write(tree.resolve("README.md"), "changed");
    assertEquals("", run(Map.of()).err());
  }

  @Test
  void failedBuildShowsWhatMavenSaid() throws Exception {
    Result result = run(Map.of("FAIL_BUILD", "1"));
    String said = "no such symbol\nlampwise: could not be built: see above\n";
    assertEquals(new Result(3, "", BUILDING_FIRST + said), result);
    assertFalse(Files.exists(tree.resolve("cli/.building")), "the lock is left behind");
  }

  @Test
  void twoAtOnceBuildOnce() throws Exception {
    Process first = start(script, Map.of("BUILD_SECONDS", "1"), temp, List.of());
    while (!Files.exists(builds)) {
      assertTrue(first.isAlive());
      Thread.sleep(20);
    }
    Result second = run(Map.of());
    assertEquals("lampwise: waiting for another build ...\n", second.err());
    assertEquals(0, second.status());
    assertEquals(0, finish(first).status());
    assertEquals(1, Files.readAllLines(builds).size());
  }

  @Test
  void lockOfADeadProcessCountsForNothing() throws Exception {
    Process gone = new ProcessBuilder("true").start();
    gone.waitFor();
    write(tree.resolve("cli/.building/pid"), gone.pid() + "\n");
    Result result = run(Map.of());
    assertEquals(0, result.status());
    assertEquals(BUILDING_FIRST, result.err());
    assertFalse(Files.exists(tree.resolve("cli/.building")), "the lock is left behind");
  }

  @Test
  void runsThroughLinksFromAnyFolder() throws Exception {
    Path link = Files.createSymbolicLink(temp.resolve("link one"), Path.of("a tree/cli/lampwise"));
    Path second = Files.createSymbolicLink(temp.resolve("bin/lampwise"), link);
    Path elsewhere = Files.createDirectories(temp.resolve("else where"));
    Result byPath = finish(start(second, Map.of(), elsewhere, List.of()));
    assertEquals(BUILDING_FIRST, byPath.err());
    assertTrue(Files.exists(jar));
    Result again = new Result(0, byPath.out(), "");
    assertEquals(again, finish(start(Path.of("lampwise"), Map.of(), elsewhere, List.of())));
    Path folder = tree.resolve("cli");
    assertEquals(again, finish(start(Path.of("./lampwise"), Map.of(), folder, List.of())));
  }

  @Test
  void statusIsTheCommandsOwn() throws Exception {
    assertEquals(2, run(Map.of("JAVA_STATUS", "2")).status());
  }

  @Test
  void optionsOfTheUserComeAfterItsOwn() throws Exception {
    Result result = run(Map.of("LAMPWISE_JAVA_OPTS", "-Xmx99m  -Da=b"));
    assertTrue(result.out().contains("><-Xmx99m><-Da=b><-cp>"), result.out());
  }

  @Test
  void oldJavaIsRefusedInOneLine() throws Exception {
    for (String version : List.of("1.8.0_392", "11.0.2", "16")) {
      plantJava(version);
      assertEquals(new Result(3, "", tooOld(version)), run(Map.of()));
    }
    assertFalse(Files.exists(builds));
  }

  @Test
  void javaWithoutReleaseFileIsAsked() throws Exception {
    Files.delete(temp.resolve("java home/release"));
    assertEquals(0, run(Map.of("SAYS_VERSION", "21.0.1")).status());
    assertEquals(new Result(3, "", tooOld("1.8.0")), run(Map.of("SAYS_VERSION", "1.8.0")));
  }

  @Test
  void missingJavaAndMavenAreSaidInOneLine() throws Exception {
    assertEquals(
        new Result(3, "", "lampwise: there is no bin/java in JAVA_HOME (/no/such)\n"),
        run(Map.of("JAVA_HOME", "/no/such")));
    Path tools = Files.createDirectories(temp.resolve("tools"));
    for (String tool : List.of("readlink", "find", "mkdir", "rm", "sleep", "cat", "mv")) {
      plantProgram(tools.resolve(tool), "exec " + whereIs(tool) + " \"$@\"");
    }
    assertEquals(
        new Result(3, "", "lampwise: no java found: install Java 17 or newer, or set JAVA_HOME\n"),
        run(Map.of("JAVA_HOME", "", "PATH", tools.toString())));
    assertEquals(
        new Result(3, "", "lampwise: cannot build: no mvn found: install Apache Maven\n"),
        run(Map.of("PATH", tools.toString())));
  }

  @Test
  void archiveIsTriedAfterABuildAndUsedIfItWasMade() throws Exception {
    Path archive = tree.resolve("cli/target/lampwise-17.0.9.jsa");
    Result without = run(Map.of());
    assertEquals(new Result(0, without.out(), BUILDING_FIRST), without);
    assertFalse(without.out().contains("SharedArchiveFile"), without.out());
    assertEquals(0, Files.size(archive));

    Files.delete(archive);
    Result with = run(Map.of("MAKE_ARCHIVE", "1"));
    assertEquals(new Result(0, with.out(), ""), with);
    assertTrue(with.out().contains("<-XX:SharedArchiveFile=" + archive + ">"), with.out());
  }

  private String tooOld(String version) {
    return "lampwise: Java 17 or newer is needed, and "
        + temp.resolve("java home/bin/java")
        + " is "
        + version
        + "\n";
  }

  private void plantJava(String version) throws IOException {
    write(
        temp.resolve("java home/release"),
        "IMPLEMENTOR=\"Nobody\"\nJAVA_VERSION=\"" + version + "\"\n");
    plantProgram(
        temp.resolve("java home/bin/java"),
        "[ \"$1\" != -version ] || { echo \"openjdk version \\\"$SAYS_VERSION\\\"\" >&2; exit; }",
        "for word; do",
        "  case $word in -XX:SharedArchiveFile=*.new)",
        "    [ -z \"${MAKE_ARCHIVE:-}\" ] || echo archive >\"${word#*=}\" ;;",
        "  esac",
        "  printf '<%s>' \"$word\"",
        "done",
        "echo",
        "exit \"${JAVA_STATUS:-0}\"");
  }

  private static void plantProgram(Path path, String... lines) throws IOException {
    write(path, "#!/bin/sh\n" + String.join("\n", lines) + "\n");
    makeExecutable(path);
  }

  private static void write(Path path, String text) throws IOException {
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private static void makeExecutable(Path path) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** Makes everything below the folder an hour old, but for what was built. */
  private static void makeOld(Path folder) throws IOException {
    FileTime old = FileTime.from(Instant.now().minusSeconds(3600));
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.filter(path -> !path.toString().contains("/target")).toList()) {
        Files.setLastModifiedTime(path, old);
      }
    }
  }

  private static Path whereIs(String tool) {
    return Stream.of("/usr/bin", "/bin")
        .map(folder -> Path.of(folder, tool))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow();
  }

  private Result run(Map<String, String> settings, String... words) throws Exception {
    return finish(start(script, settings, temp, List.of(words)));
  }

  private Process start(Path command, Map<String, String> settings, Path folder, List<String> words)
      throws IOException {
    // Through a shell, so that a bare name is looked for on the PATH given here.
    List<String> line = new ArrayList<>(List.of("/bin/sh", "-c", "exec \"$0\" \"$@\""));
    line.add(command.toString());
    line.addAll(words);
    ProcessBuilder builder = new ProcessBuilder(line).directory(folder.toFile());
    Map<String, String> environment = builder.environment();
    environment.put("PATH", temp.resolve("bin") + ":/usr/bin:/bin");
    environment.put("JAVA_HOME", temp.resolve("java home").toString());
    environment.put("SAYS_VERSION", "17");
    environment.remove("LAMPWISE_JAVA_OPTS");
    environment.putAll(settings);
    return builder.start();
  }

  private static Result finish(Process process) throws Exception {
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), err);
    return new Result(process.exitValue(), out, err);
  }
}
