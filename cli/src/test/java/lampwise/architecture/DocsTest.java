package lampwise.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** Holds that all that is public is documented, and shows with planted gaps that it would tell. */
class DocsTest {
  @Test
  void allThatIsPublicIsDocumented() throws IOException {
    try (StandardJavaFileManager files =
        ToolProvider.getSystemJavaCompiler()
            .getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
      assertEquals("", String.join("\n", Docs.gaps(files.getJavaFileObjectsFromPaths(sources()))));
    }
  }

  private static List<Path> sources() throws IOException {
    Path root = Path.of("").toAbsolutePath().getParent();
    try (Stream<Path> modules = Files.list(root);
        Stream<Path> paths =
            modules
                .map(module -> module.resolve("src/main/java"))
                .filter(Files::isDirectory)
                .flatMap(DocsTest::below)) {
      List<Path> sources = paths.filter(path -> path.toString().endsWith(".java")).toList();
      assertFalse(sources.isEmpty(), "no sources below " + root);
      return sources;
    }
  }

  private static Stream<Path> below(Path folder) {
    try {
      return Files.walk(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void gapsOfTypes() {
    assertEquals(List.of("A.java:1: A: no comment"), gaps("public class A {}"));
    assertEquals(List.of("A.java:1: A: no comment"), gaps("public interface A {}"));
    assertEquals(
        List.of("A.java:2: A: no @param for <T>"), gaps("/** A. */\npublic class A<T> {}"));
    assertEquals(
        List.of("A.java:2: A: no @param for y"),
        gaps("/** A.\n @param x it */ public record A(int x, int y) {}"));
    assertEquals(List.of("A.java:2: A: no description"), gaps("/** @since 1 */\npublic enum A {}"));
    assertEquals(
        List.of("A.java:3: B: no comment"),
        gaps("/** A. */\npublic class A {\n" + "protected static class B {} }"));
    assertEquals(
        List.of("A.java:3: B: no comment"),
        gaps("/** A. */\npublic interface A {\n" + "enum B {} }"));
  }

  @Test
  void gapsOfMembers() {
    assertEquals(List.of("A.java:2: m(): no comment"), member("public void m() {}"));
    assertEquals(List.of("A.java:2: m(): no comment"), member("protected void m() {}"));
    assertEquals(List.of("A.java:2: A(): no comment"), member("public A() {}"));
    assertEquals(List.of("A.java:2: F: no comment"), member("public static final int F = 1;"));
    assertEquals(
        List.of("A.java:2: m(): no @param for x"), member("/** M. */ public void m(int x) {}"));
    assertEquals(
        List.of("A.java:2: m(): no @param for <T>"), member("/** M. */ public <T> void m() {}"));
    assertEquals(
        List.of("A.java:2: m(): no @return"), member("/** M. */ public int m() { return 1; }"));
    assertEquals(
        List.of("A.java:1: m(): no @return"),
        gaps("/** A. */ public interface A { /** M. */ int m(); }"));
    assertEquals(List.of("A.java:1: X: no comment"), gaps("/** A. */ public enum A { X }"));
    assertEquals(
        List.of("A.java:2: A(): no comment"),
        gaps("/** A.\n @param x it */ public record A(int x) { public A {} }"));
    assertEquals(
        List.of("A.java:2: A(): no @param for x"),
        gaps(
            "/** A.\n @param x it */ public record A(int x) {"
                + " /** M. */ public A(int x) { this.x = x; } }"));
  }

  @Test
  void noGaps() {
    assertEquals(List.of(), gaps("class A { public void m() {} }"));
    assertEquals(List.of(), member("void m() {} private int x; int y;"));
    assertEquals(List.of(), member("@Override public String toString() { return \"\"; }"));
    assertEquals(List.of(), member("/** {@return the one} */ public int m() { return 1; }"));
    assertEquals(
        List.of(), member("/** M.\n@param <T> t\n@return r */ public <T> T m() { return null; }"));
    assertEquals(List.of(), gaps("/** A.\n @param x it */ public record A(int x) {}"));
    assertEquals(
        List.of(),
        gaps("/** A.\n @param x it */ public record A(int x) { /** Checks. */ public A {} }"));
  }

  private static List<String> member(String member) {
    return gaps("/** A. */ public class A {\n" + member + "}");
  }

  private static List<String> gaps(String source) {
    JavaFileObject file =
        new SimpleJavaFileObject(URI.create("string:///A.java"), JavaFileObject.Kind.SOURCE) {
          @Override
          public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return source;
          }
        };
    return Docs.gaps(List.of(file));
  }
}
