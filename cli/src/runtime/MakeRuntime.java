import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * Makes the folder that a desk without Java needs: the jars, the part of this JDK that they use, and
 * two launchers; then tries it with an empty environment. Run by the profile {@code runtime}:
 *
 * <pre>java MakeRuntime.java TARGET LAUNCHERS LICENSE</pre>
 *
 * <p>TARGET holds {@code lampwise.jar} and {@code lib}, and gets {@code runtime/lampwise}.
 */
public final class MakeRuntime {
  private static final boolean WINDOWS =
      System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");

  /** Empty; but Windows itself starts nothing without its own folder's name. */
  private static final Map<String, String> ENVIRONMENT =
      WINDOWS ? Map.of("SystemRoot", System.getenv("SystemRoot")) : Map.of();

  private MakeRuntime() {}

  public static void main(String[] args) throws IOException, InterruptedException {
    if (args.length != 3) {
      throw new IllegalArgumentException("wanted: TARGET LAUNCHERS LICENSE");
    }
    Path target = Path.of(args[0]).toAbsolutePath();
    Path image = target.resolve("runtime").resolve("lampwise");
    delete(image);
    Files.createDirectories(image.resolve("app").resolve("lib"));

    Path jar = target.resolve("lampwise.jar");
    copy(jar, image.resolve("app"));
    List<String> lib = new ArrayList<>();
    try (Stream<Path> jars = Files.list(target.resolve("lib"))) {
      for (Path each : jars.sorted().toList()) {
        copy(each, image.resolve("app").resolve("lib"));
        lib.add(each.toString());
      }
    }
    for (String launcher : List.of("lampwise", "lampwise.cmd")) {
      copy(Path.of(args[1]).resolve(launcher), image);
    }
    copy(Path.of(args[2]), image);

    // The last line; warnings may stand before it.
    String modules =
        tool("jdeps", "--multi-release", "17", "--ignore-missing-deps", "--recursive",
                "--print-module-deps", "-cp", String.join(File.pathSeparator, lib), jar.toString())
            .lines()
            .reduce((first, last) -> last)
            .orElseThrow();
    Path java = image.resolve("java");
    tool("jlink", "--add-modules", modules, "--strip-java-debug-attributes", "--no-header-files",
        "--no-man-pages", "--output", java.toString());
    String started =
        java.resolve("bin").resolve(WINDOWS ? "java.exe" : "java").toString();
    // The classes as they lie in memory, first those of that Java, then ours, for a faster start.
    // Java 17 takes the second archive only where it was made.
    run("", 0, started, "-Xshare:dump");
    Path app = image.resolve("app");
    run("0.3 3.5 6.5 9.7 12.8\n", 0, started, "-XX:+UseSerialGC",
        "-XX:ArchiveClassesAtExit=" + app.resolve("lampwise.jsa"),
        "-cp", app.resolve("lampwise.jar").toString(), "lampwise.cli.Main",
        "decode", "--sheet", "demo", "--json");

    tryOut(image);
    System.out.printf(
        Locale.ROOT, "%s: %d MB, Java %s with %s%n",
        image, size(image) / 1_000_000, System.getProperty("java.version"), modules);
  }

  /** Fails unless the launcher works without PATH and JAVA_HOME. */
  private static void tryOut(Path image) throws IOException, InterruptedException {
    Path launcher = image.resolve(WINDOWS ? "lampwise.cmd" : "lampwise");
    String read =
        run("0.3 3.5 6.5 9.7 12.8 15.8 19.0 22.0\n", 0,
            launcher.toString(), "decode", "--sheet", "demo");
    if (!read.startsWith("cells-low ")) {
      throw new IllegalStateException("the runtime does not decode: " + read);
    }
    String round = run("", 1, launcher.toString(), "round", "--demo");
    if (!round.contains("1. pier-04")) {
      throw new IllegalStateException("the runtime makes no worklist: " + round);
    }
  }

  private static String tool(String name, String... args) {
    StringWriter said = new StringWriter();
    PrintWriter to = new PrintWriter(said);
    int status =
        ToolProvider.findFirst(name)
            .orElseThrow(() -> new IllegalStateException("this Java has no " + name + ": take a JDK"))
            .run(to, to, args);
    if (status != 0) {
      throw new IllegalStateException(name + " ends with status " + status + ": " + said);
    }
    return said.toString().strip();
  }

  private static String run(String input, int wanted, String... command)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().clear();
    builder.environment().putAll(ENVIRONMENT);
    Process process = builder.start();
    process.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int status = process.waitFor();
    if (status != wanted) {
      throw new IllegalStateException(
          String.join(" ", command) + " ends with status " + status + ": " + said);
    }
    return said;
  }

  private static void copy(Path file, Path folder) throws IOException {
    Files.copy(
        file, folder.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
  }

  private static long size(Path folder) throws IOException {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      all.filter(Files::isRegularFile).forEach(files::add);
    }
    long bytes = 0;
    for (Path file : files) {
      bytes += Files.size(file);
    }
    return bytes;
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path each, IOException fault)
              throws IOException {
            Files.delete(each);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
