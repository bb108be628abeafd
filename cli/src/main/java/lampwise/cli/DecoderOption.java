package lampwise.cli;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.util.Optional;
import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The option {@code --decoder CLASS}: any decoder of the class path, by the name of its class. */
final class DecoderOption {
  private static final String NAME = "--decoder";

  private DecoderOption() {}

  /** Adds the option to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.one(
        spec,
        NAME,
        "CLASS",
        "the decoder: a class of the class path that implements lampwise.decode.Decoder and has"
            + " a public constructor without arguments; Lampwise's own if not given");
  }

  /**
   * Makes the decoder.
   *
   * @throws UsageException if there is no such class, or it is no such decoder
   */
  static Decoder read(ParseResult parsed) throws UsageException {
    Optional<String> name = ReadingFlags.text(parsed, NAME);
    return name.isEmpty() ? new LampDecoder() : load(name.get());
  }

  private static Decoder load(String name) throws UsageException {
    try {
      Class<?> found = Class.forName(name, false, DecoderOption.class.getClassLoader());
      if (!Decoder.class.isAssignableFrom(found)) {
        throw fault(name, "does not implement lampwise.decode.Decoder");
      }
      if (Modifier.isAbstract(found.getModifiers()) || !Modifier.isPublic(found.getModifiers())) {
        throw fault(name, "is not a public class that can be made");
      }
      return (Decoder) found.getConstructor().newInstance();
    } catch (ClassNotFoundException e) {
      throw fault(name, "is not on the class path");
    } catch (NoSuchMethodException e) {
      throw fault(name, "has no public constructor without arguments");
    } catch (InvocationTargetException e) {
      throw fault(name, "cannot be made: " + e.getCause());
    } catch (ReflectiveOperationException | LinkageError e) {
      throw fault(name, "cannot be loaded: " + e);
    }
  }

  private static UsageException fault(String name, String what) {
    String said = name.isEmpty() ? "\"\"" : name;
    return new UsageException(Layout.clean(NAME + ": " + said + " " + what));
  }
}
