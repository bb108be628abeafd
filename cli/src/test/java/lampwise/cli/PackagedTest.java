package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;

/**
 * What the command line runs from: its jar, and the jars beside it that its manifest names. Runs
 * after they were made; the property {@code lampwise.packaged} says where.
 */
class PackagedTest {
  /** Packages of what is for tests alone. */
  private static final List<String> FOR_TESTS =
      List.of("net/jqwik/", "org/junit/", "junit/", "org/opentest4j/", "org/apiguardian/");

  private static Path folder() {
    return Path.of(
        Objects.requireNonNull(
            System.getProperty("lampwise.packaged"), "run this test as the pom does"));
  }

  private static Path jar() {
    return folder().resolve("lampwise.jar");
  }

  /** The jars that the manifest names, as paths from the jar's folder. */
  private static List<String> classPath() throws IOException {
    try (JarFile jar = new JarFile(jar().toFile())) {
      String named = jar.getManifest().getMainAttributes().getValue(Attributes.Name.CLASS_PATH);
      assertNotNull(named, "the manifest names no class path");
      return List.of(named.split(" "));
    }
  }

  private static List<String> entries(Path path) throws IOException {
    try (JarFile jar = new JarFile(path.toFile())) {
      return jar.stream().map(ZipEntry::getName).toList();
    }
  }

  @Test
  void theClassPathIsWholeAndHoldsTheSimulator() throws IOException {
    List<String> all = new ArrayList<>(entries(jar()));
    for (String name : classPath()) {
      all.addAll(entries(folder().resolve(name)));
    }
    for (String needed :
        List.of(
            "lampwise/cli/Main.class",
            "lampwise/decode/LampDecoder.class",
            "lampwise/sim/Simulator.class",
            "picocli/CommandLine.class")) {
      assertTrue(all.contains(needed), needed + " is missing");
    }
  }

  @Test
  void nothingOfATestLibraryIsShipped() throws IOException {
    List<Path> shipped = new ArrayList<>(List.of(jar()));
    try (Stream<Path> lib = Files.list(folder().resolve("lib"))) {
      lib.forEach(shipped::add);
    }
    for (String name : classPath()) {
      shipped.add(folder().resolve(name));
    }
    List<String> found = new ArrayList<>();
    for (Path path : shipped.stream().distinct().sorted().toList()) {
      entries(path).stream()
          .filter(entry -> FOR_TESTS.stream().anyMatch(entry::startsWith))
          .findFirst()
          .ifPresent(entry -> found.add(path.getFileName() + " holds " + entry));
    }
    assertEquals(List.of(), found);
  }
}
