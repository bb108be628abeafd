package planted.light;

import java.io.InputStream;
import java.lang.invoke.MethodHandles;
import java.lang.reflect.Array;
import java.text.Normalizer;
import java.util.concurrent.ConcurrentHashMap;
import java.util.logging.Logger;
import java.util.regex.Pattern;

/** Uses a layer below its own, and more of the platform than plain Java. */
final class Faults {
  static Object arrow() {
    return new planted.rhythm.Thing();
  }

  static Object regex() {
    return Pattern.compile("a");
  }

  static Object threads() {
    return new ConcurrentHashMap<String, String>();
  }

  static int reflection(Object array) {
    return Array.getLength(array);
  }

  static String text(String words) {
    return Normalizer.normalize(words, Normalizer.Form.NFC);
  }

  static Object input() {
    return InputStream.nullInputStream();
  }

  static Object logging() {
    return Logger.getGlobal();
  }

  static Object invoke() {
    return MethodHandles.lookup();
  }

  static Object byName() throws ClassNotFoundException {
    return Class.forName("planted.light.Thing");
  }

  static String environment() {
    return System.getenv("HOME");
  }
}
