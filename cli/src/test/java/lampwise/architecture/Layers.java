package lampwise.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.syntax.elements.GivenClassesConjunction;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The rules of who may use what, for the packages below one root. The root is {@code lampwise} for
 * the real code, and another one for planted faults.
 */
final class Layers {
  /** Each layer, top first, with the layers it may use besides itself. */
  static final Map<String, Set<String>> MAY_USE = mayUse();

  private static final List<String> PLAIN =
      List.of("light", "rhythm", "sheet", "decode", "service");
  private static final List<String> CORE = with(PLAIN, "file");
  private static final List<String> PURE = with(CORE, "sim", "sim.score", "sim.check");

  private static final String[] FILE_LIBRARIES = {
    "org.apache.commons..", "org.snakeyaml..", "com.fasterxml.."
  };
  private static final String[] CLI_LIBRARIES = {
    "picocli..",
    "org.jfree..",
    "org.apache.batik..",
    "java.awt..",
    "javax.swing..",
    "javax.imageio.."
  };

  private final String root;

  Layers(String root) {
    this.root = root;
  }

  /** All rules by a short name; none of them minds a package that is still empty. */
  Map<String, ArchRule> rules() {
    Map<String, ArchRule> rules = new LinkedHashMap<>();
    MAY_USE.keySet().forEach(layer -> rules.put("arrows of " + layer, arrows(layer)));
    rules.put("known packages", knownPackages());
    rules.put("plain Java", plainJava());
    rules.put("plain Java members", plainJavaMembers());
    rules.put("no printing", noPrinting());
    rules.put("no clock", noClock());
    rules.put("no chance", noChance());
    rules.put("no default locale", noDefaultLocale());
    rules.put("no default charset", noDefaultCharset());
    rules.put("no state", noState());
    rules.put("jqwik", onlyIn("sim.check", "net.jqwik..", "org.junit.."));
    rules.put("file libraries", onlyIn("file", FILE_LIBRARIES));
    rules.put("command line libraries", onlyIn("cli", CLI_LIBRARIES));
    rules.replaceAll((name, rule) -> rule.as(name).allowEmptyShould(true));
    return rules;
  }

  private static Map<String, Set<String>> mayUse() {
    Map<String, Set<String>> all = new LinkedHashMap<>();
    all.put("light", Set.of());
    all.put("rhythm", Set.of("light"));
    all.put("sheet", Set.of("light", "rhythm"));
    all.put("decode", Set.of("light", "rhythm", "sheet"));
    // Conditions and readings, nothing deeper.
    all.put("service", Set.of("sheet", "decode"));
    all.put("file", Set.of("light", "rhythm", "sheet", "decode", "service"));
    // What is made to try a decoder owes nothing to one.
    all.put("sim", Set.of("light", "rhythm", "sheet"));
    all.put("sim.score", allOf(all));
    all.put("sim.check", allOf(all));
    // The property kit would bring jqwik into the command line's jars.
    Set<String> cli = allOf(all);
    cli.remove("sim.check");
    all.put("cli", cli);
    return all;
  }

  private static Set<String> allOf(Map<String, Set<String>> layers) {
    return new LinkedHashSet<>(layers.keySet());
  }

  private static List<String> with(List<String> layers, String... more) {
    List<String> all = new ArrayList<>(layers);
    all.addAll(List.of(more));
    return List.copyOf(all);
  }

  private ArchRule arrows(String layer) {
    List<String> others = new ArrayList<>(MAY_USE.keySet());
    others.remove(layer);
    others.removeAll(MAY_USE.get(layer));
    return noClasses()
        .that()
        .resideInAPackage(packageOf(layer))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(packagesOf(others));
  }

  private ArchRule knownPackages() {
    return classes().should().resideInAnyPackage(packagesOf(MAY_USE.keySet()));
  }

  private ArchRule plainJava() {
    return classes()
        .that()
        .resideInAnyPackage(packagesOf(PLAIN))
        .should()
        .onlyDependOnClassesThat(Platform.plainTypesAnd(root + ".."));
  }

  private ArchRule plainJavaMembers() {
    return noClasses()
        .that()
        .resideInAnyPackage(packagesOf(PLAIN))
        .should()
        .accessTargetWhere(Platform.reflectsOrAsksTheMachine());
  }

  private ArchRule noPrinting() {
    return pure().should().accessTargetWhere(Platform.prints());
  }

  private ArchRule noClock() {
    return pure().should().accessTargetWhere(Platform.readsTheClock());
  }

  private ArchRule noChance() {
    return pure().should().accessTargetWhere(Platform.drawsWithoutSeed());
  }

  private ArchRule noDefaultLocale() {
    return noClasses().should().accessTargetWhere(Platform.takesTheDefaultLocale());
  }

  private ArchRule noDefaultCharset() {
    return noClasses().should().accessTargetWhere(Platform.takesTheDefaultCharset());
  }

  private ArchRule noState() {
    return fields()
        .that()
        .areDeclaredInClassesThat()
        .resideInAnyPackage(packagesOf(PURE))
        .and()
        .areStatic()
        .should()
        .beFinal();
  }

  private ArchRule onlyIn(String layer, String... libraries) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(packageOf(layer))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(libraries);
  }

  private GivenClassesConjunction pure() {
    return noClasses().that().resideInAnyPackage(packagesOf(PURE));
  }

  /** The package of a layer with all below it; of {@code sim} only the package itself. */
  private String packageOf(String layer) {
    return root + "." + layer + (layer.equals("sim") ? "" : "..");
  }

  private String[] packagesOf(Iterable<String> layers) {
    List<String> packages = new ArrayList<>();
    layers.forEach(layer -> packages.add(packageOf(layer)));
    return packages.toArray(String[]::new);
  }
}
