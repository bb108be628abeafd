package lampwise.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.PackageMatcher;
import java.io.Writer;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** What of the Java platform counts as plain, and which of its members are out of bounds. */
final class Platform {
  private static final Set<String> PLAIN_PACKAGES =
      Set.of("java.lang", "java.util", "java.util.function", "java.util.stream", "java.math");

  /** Types of the plain packages that reach outside the program, start something or keep time. */
  private static final Set<String> NOT_PLAIN =
      Set.of(
          "java.lang.ClassLoader",
          "java.lang.InheritableThreadLocal",
          "java.lang.Module",
          "java.lang.ModuleLayer",
          "java.lang.Package",
          "java.lang.Process",
          "java.lang.ProcessBuilder",
          "java.lang.ProcessHandle",
          "java.lang.Runtime",
          "java.lang.StackWalker",
          "java.lang.Thread",
          "java.lang.ThreadGroup",
          "java.lang.ThreadLocal",
          "java.util.Calendar",
          "java.util.Currency",
          "java.util.Date",
          "java.util.Formatter",
          "java.util.GregorianCalendar",
          "java.util.Properties",
          "java.util.ResourceBundle",
          "java.util.Scanner",
          "java.util.ServiceLoader",
          "java.util.TimeZone",
          "java.util.Timer",
          "java.util.TimerTask",
          "java.util.UUID");

  /** Of {@link Class} what the compiler itself calls, and names for messages. */
  private static final Set<String> PLAIN_OF_CLASS =
      Set.of("cast", "desiredAssertionStatus", "getName", "getSimpleName", "isInstance");

  private static final Set<String> PLAIN_OF_SYSTEM = Set.of("arraycopy");

  private static final Set<String> LOCALE_SENSITIVE =
      Set.of(
          "java.io.PrintStream.format",
          "java.io.PrintStream.printf",
          "java.io.PrintWriter.format",
          "java.io.PrintWriter.printf",
          "java.lang.String.format",
          "java.lang.String.formatted",
          "java.lang.String.toLowerCase",
          "java.lang.String.toUpperCase",
          "java.text.Collator.getInstance",
          "java.text.DateFormat.getDateInstance",
          "java.text.DateFormat.getDateTimeInstance",
          "java.text.DateFormat.getInstance",
          "java.text.DateFormat.getTimeInstance",
          "java.text.DecimalFormat.<init>",
          "java.text.DecimalFormatSymbols.<init>",
          "java.text.DecimalFormatSymbols.getInstance",
          "java.text.MessageFormat.<init>",
          "java.text.MessageFormat.format",
          "java.text.NumberFormat.getInstance",
          "java.text.NumberFormat.getIntegerInstance",
          "java.text.NumberFormat.getNumberInstance",
          "java.text.NumberFormat.getPercentInstance",
          "java.text.SimpleDateFormat.<init>",
          "java.time.format.DateTimeFormatter.ofPattern",
          "java.time.format.DateTimeFormatterBuilder.toFormatter",
          "java.util.Formatter.<init>",
          "java.util.Locale.getDefault",
          "java.util.Scanner.<init>");

  private static final Set<String> CHARSET_SENSITIVE =
      Set.of(
          "java.io.ByteArrayOutputStream.toString",
          "java.io.FileReader.<init>",
          "java.io.FileWriter.<init>",
          "java.io.InputStreamReader.<init>",
          "java.io.OutputStreamWriter.<init>",
          "java.io.PrintStream.<init>",
          "java.lang.String.getBytes",
          "java.nio.charset.Charset.defaultCharset",
          "java.util.Scanner.<init>");

  private Platform() {}

  /** Types of plain Java, and those of our own packages, whose arrows are another rule's. */
  static DescribedPredicate<JavaClass> plainTypesAnd(String ownPackages) {
    PackageMatcher own = PackageMatcher.of(ownPackages);
    return describe(
        "are plain Java (" + String.join(", ", PLAIN_PACKAGES.stream().sorted().toList()) + ")",
        type -> {
          JavaClass base = type.getBaseComponentType();
          return base.isPrimitive()
              || own.matches(base.getPackageName())
              || (PLAIN_PACKAGES.contains(base.getPackageName())
                  && !NOT_PLAIN.contains(base.getName()));
        });
  }

  /** Reflection by {@link Class}, and all of {@link System} but copying of arrays. */
  static DescribedPredicate<JavaAccess<?>> reflectsOrAsksTheMachine() {
    return describe(
        "it reflects or asks the machine",
        access ->
            (isOf(access, "java.lang.Class") && !PLAIN_OF_CLASS.contains(access.getName()))
                || (isOf(access, "java.lang.System")
                    && !PLAIN_OF_SYSTEM.contains(access.getName())));
  }

  /** The standard streams and stack traces. */
  static DescribedPredicate<JavaAccess<?>> prints() {
    return describe(
        "it prints or reads the standard streams",
        access ->
            (isOf(access, "java.lang.System")
                    && Set.of("in", "out", "err", "console").contains(access.getName()))
                || access.getName().equals("printStackTrace"));
  }

  /** The time of day, elapsed time and the machine's time zone. */
  static DescribedPredicate<JavaAccess<?>> readsTheClock() {
    return describe(
        "it reads the clock or the time zone",
        access ->
            (isOf(access, "java.lang.System")
                    && Set.of("currentTimeMillis", "nanoTime").contains(access.getName()))
                || (ownerName(access).startsWith("java.time.") && access.getName().equals("now"))
                || isOf(access, "java.time.Clock")
                || (isOf(access, "java.time.ZoneId") && access.getName().equals("systemDefault"))
                || (isOf(access, "java.util.TimeZone") && access.getName().equals("getDefault"))
                || (isOf(access, "java.util.Calendar") && access.getName().equals("getInstance"))
                || isConstructor(access, "java.util.GregorianCalendar")
                || (isConstructor(access, "java.util.Date") && parameters(access).isEmpty()));
  }

  /** Random numbers that no seed can bring back. */
  static DescribedPredicate<JavaAccess<?>> drawsWithoutSeed() {
    return describe(
        "it draws without a seed",
        access ->
            (isConstructor(access, "java.util.Random") && parameters(access).isEmpty())
                || (isConstructor(access, "java.util.SplittableRandom")
                    && parameters(access).isEmpty())
                || (isOf(access, "java.lang.Math") && access.getName().equals("random"))
                || (isOf(access, "java.lang.StrictMath") && access.getName().equals("random"))
                || (isOf(access, "java.util.UUID") && access.getName().equals("randomUUID"))
                || (isOf(access, "java.util.Collections")
                    && access.getName().equals("shuffle")
                    && parameters(access).size() == 1)
                || isOf(access, "java.util.concurrent.ThreadLocalRandom")
                || isOf(access, "java.security.SecureRandom"));
  }

  /** Calls that would have taken a locale and were given none. */
  static DescribedPredicate<JavaAccess<?>> takesTheDefaultLocale() {
    return describe(
        "it takes the default locale",
        access -> LOCALE_SENSITIVE.contains(fullName(access)) && !takes(access, Locale.class));
  }

  /** Calls that would have taken a character set and were given none. */
  static DescribedPredicate<JavaAccess<?>> takesTheDefaultCharset() {
    return describe(
        "it takes the default charset",
        access ->
            (CHARSET_SENSITIVE.contains(fullName(access)) && !namesCharset(access))
                || (isConstructor(access, "java.lang.String")
                    && takes(access, byte[].class)
                    && !namesCharset(access))
                || (isConstructor(access, "java.io.PrintWriter")
                    && !takes(access, Writer.class)
                    && !namesCharset(access)));
  }

  /** A character set, or its name as the last parameter. */
  private static boolean namesCharset(JavaAccess<?> access) {
    List<JavaClass> parameters = parameters(access);
    return takes(access, Charset.class)
        || (parameters.size() > 1
            && parameters.get(parameters.size() - 1).isEquivalentTo(String.class));
  }

  private static boolean takes(JavaAccess<?> access, Class<?> type) {
    return parameters(access).stream().anyMatch(parameter -> parameter.isEquivalentTo(type));
  }

  private static List<JavaClass> parameters(JavaAccess<?> access) {
    return access.getTarget() instanceof CodeUnitAccessTarget target
        ? target.getRawParameterTypes()
        : List.of();
  }

  private static boolean isOf(JavaAccess<?> access, String owner) {
    return ownerName(access).equals(owner);
  }

  private static boolean isConstructor(JavaAccess<?> access, String owner) {
    return isOf(access, owner) && access.getName().equals("<init>");
  }

  private static String fullName(JavaAccess<?> access) {
    return ownerName(access) + "." + access.getName();
  }

  private static String ownerName(JavaAccess<?> access) {
    return access.getTargetOwner().getName();
  }
}
