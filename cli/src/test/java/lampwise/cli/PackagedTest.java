package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
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

  /** The licence of each library that is shipped, as its own papers give it; none is GPL. */
  private static final Map<String, String> LICENCES =
      Map.ofEntries(
          Map.entry("batik-awt-util", "Apache-2.0"),
          Map.entry("batik-constants", "Apache-2.0"),
          Map.entry("batik-i18n", "Apache-2.0"),
          Map.entry("batik-svggen", "Apache-2.0"),
          Map.entry("batik-util", "Apache-2.0"),
          Map.entry("commons-codec", "Apache-2.0"),
          Map.entry("commons-csv", "Apache-2.0"),
          Map.entry("commons-io", "Apache-2.0"),
          Map.entry("jackson-core", "Apache-2.0"),
          Map.entry("jfreechart", "LGPL-2.1-or-later"),
          Map.entry("lampwise-core", "Apache-2.0"),
          Map.entry("lampwise-sim", "Apache-2.0"),
          Map.entry("picocli", "Apache-2.0"),
          Map.entry("snakeyaml-engine", "Apache-2.0"));

  /** What names the GPL, but not the LGPL. */
  private static final Pattern GPL =
      Pattern.compile("GNU\\s+(AFFERO\\s+)?GENERAL\\s+PUBLIC|\\bA?GPL", Pattern.CASE_INSENSITIVE);

  private static final Pattern PAPER =
      Pattern.compile(
          "(^|/)(MANIFEST[.]MF|pom[.]xml|[^/]*(LICEN[CS]E|COPYING)[^/]*)$",
          Pattern.CASE_INSENSITIVE);

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
    shipped.addAll(library());
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

  @Test
  void everyLibraryIsOfAKnownLicence() throws IOException {
    Set<String> shipped = new TreeSet<>();
    for (Path path : library()) {
      shipped.add(path.getFileName().toString().replaceFirst("-[0-9].*", ""));
    }
    assertEquals(new TreeSet<>(LICENCES.keySet()), shipped, "look up its licence, and say it here");
    List<String> gpl = LICENCES.values().stream().filter(l -> GPL.matcher(l).find()).toList();
    assertEquals(List.of(), gpl);
  }

  /** What lies in a jar about its licence: {@code LICENSE} and the like, its pom, its manifest. */
  @Test
  void noLibrarySaysThatItIsGpl() throws IOException {
    List<String> found = new ArrayList<>();
    for (Path path : library()) {
      try (JarFile jar = new JarFile(path.toFile())) {
        for (ZipEntry entry : jar.stream().toList()) {
          if (PAPER.matcher(entry.getName()).find()) {
            try (InputStream in = jar.getInputStream(entry)) {
              String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
              if (GPL.matcher(text).find()) {
                found.add(path.getFileName() + ": " + entry.getName());
              }
            }
          }
        }
      }
    }
    assertEquals(List.of(), found);
  }

  private static List<Path> library() throws IOException {
    try (Stream<Path> lib = Files.list(folder().resolve("lib"))) {
      return lib.sorted().toList();
    }
  }
}
