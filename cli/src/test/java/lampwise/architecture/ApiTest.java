package lampwise.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Holds what others may call to the lists in {@code core/docs/api.txt} and {@code
 * sim/docs/api.txt}. A list is never overwritten: the new one is written to the module's {@code
 * target/api.txt.new}, and whoever means the change copies it over.
 */
class ApiTest {
  private static final int PLAIN =
      Modifier.STATIC | Modifier.ABSTRACT | Modifier.FINAL | Modifier.PROTECTED | Modifier.PUBLIC;

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(location -> !location.contains("/test-classes/"))
          .importPackages("lampwise");

  @ParameterizedTest
  @CsvSource({"core, lampwise.light.Recording", "sim, lampwise.sim.Simulator"})
  void publicTypesAndMembersAreThoseOfTheList(String module, String known) throws IOException {
    boolean core = module.equals("core");
    Set<String> found = new TreeSet<>();
    for (JavaClass type : CLASSES) {
      String name = type.getPackageName();
      boolean ofSim = name.equals("lampwise.sim") || name.startsWith("lampwise.sim.");
      if (!name.startsWith("lampwise.cli") && ofSim != core) {
        found.addAll(lines(type.reflect()));
      }
    }
    assertTrue(found.stream().anyMatch(line -> line.contains(" " + known + " ")), known);

    Path list = Path.of("..", module, "docs", "api.txt");
    Set<String> meant =
        Files.exists(list) ? new TreeSet<>(Files.readAllLines(list)) : new TreeSet<>();
    if (!found.equals(meant)) {
      Path fresh = Path.of("..", module, "target", "api.txt.new");
      Files.createDirectories(fresh.getParent());
      Files.write(fresh, found);
      assertEquals("", difference(meant, found), "If it is meant, copy " + fresh + " to " + list);
    }
  }

  @Test
  void aDifferenceSaysWhatWentAndWhatCame() {
    assertEquals("- b\n+ c\n", difference(Set.of("a", "b"), Set.of("a", "c")));
  }

  @Test
  void whatIsNotPublicIsNotListed() {
    assertEquals(List.of(), lines(ApiTest.class));
  }

  private static String difference(Set<String> meant, Set<String> found) {
    StringBuilder text = new StringBuilder();
    for (String line : new TreeSet<>(meant)) {
      if (!found.contains(line)) {
        text.append("- ").append(line).append('\n');
      }
    }
    for (String line : new TreeSet<>(found)) {
      if (!meant.contains(line)) {
        text.append("+ ").append(line).append('\n');
      }
    }
    return text.toString();
  }

  private static List<String> lines(Class<?> type) {
    if (!seen(type)) {
      return List.of();
    }
    Set<String> lines = new TreeSet<>();
    lines.add(
        Modifier.toString(type.getModifiers() & PLAIN)
            + (type.isInterface() ? " interface " : type.isRecord() ? " record " : " class ")
            + type.getName()
            + " "
            + (type.getGenericSuperclass() == null ? "" : type.getGenericSuperclass().getTypeName())
            + Arrays.stream(type.getGenericInterfaces())
                .map(parent -> ", " + parent.getTypeName())
                .sorted()
                .toList());
    for (Field field : type.getDeclaredFields()) {
      if (open(field)) {
        lines.add(type.getName() + ": " + field.toGenericString());
      }
    }
    for (Constructor<?> constructor : type.getDeclaredConstructors()) {
      if (open(constructor)) {
        lines.add(type.getName() + ": " + constructor.toGenericString());
      }
    }
    for (Method method : type.getDeclaredMethods()) {
      if (open(method)) {
        lines.add(type.getName() + ": " + method.toGenericString());
      }
    }
    return List.copyOf(lines);
  }

  private static boolean seen(Class<?> type) {
    return (type.getModifiers() & (Modifier.PUBLIC | Modifier.PROTECTED)) != 0
        && (type.getDeclaringClass() == null || seen(type.getDeclaringClass()));
  }

  private static boolean open(Member member) {
    return !member.isSynthetic()
        && (member.getModifiers() & (Modifier.PUBLIC | Modifier.PROTECTED)) != 0;
  }
}
