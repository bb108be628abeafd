package planted.cli;

import java.io.ByteArrayOutputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Names locale and charset, prints and reads the clock, which this layer may. */
final class Allowed {
  static void all() {
    System.out.println(System.nanoTime());
    new PrintWriter(new StringWriter()).printf(Locale.ROOT, "%f", 0.5);
    System.out.println(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    System.out.println(new ByteArrayOutputStream().toString(StandardCharsets.UTF_8));
    System.out.println(new String(new byte[1], StandardCharsets.UTF_8));
  }
}
