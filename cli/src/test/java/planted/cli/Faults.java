package planted.cli;

import com.fasterxml.jackson.core.JsonFactory;
import java.io.ByteArrayOutputStream;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.text.NumberFormat;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Uses the property kit and the libraries of files, and takes default locale and charset. */
final class Faults {
  static Object arrow() {
    return new planted.sim.check.Thing();
  }

  static String lowerCase(String word) {
    return word.toLowerCase();
  }

  static Stream<String> upperCaseByReference(Stream<String> words) {
    return words.map(String::toUpperCase);
  }

  static String format() {
    return String.format("%f", 0.5);
  }

  static String formatted() {
    return "%f".formatted(0.5);
  }

  static void printf(PrintStream out) {
    out.printf("%f", 0.5);
  }

  static Object number() {
    return NumberFormat.getInstance();
  }

  static byte[] bytes(String word) {
    return word.getBytes();
  }

  static String text(byte[] bytes) {
    return new String(bytes);
  }

  static Object reader() {
    return new InputStreamReader(System.in);
  }

  static Object writer() {
    return new OutputStreamWriter(new ByteArrayOutputStream());
  }

  static Object printWriter() {
    return new PrintWriter(new ByteArrayOutputStream());
  }

  static Object csv() {
    return CSVFormat.DEFAULT;
  }

  static Object yaml() {
    return LoadSettings.builder().build();
  }

  static Object json() {
    return new JsonFactory();
  }
}
