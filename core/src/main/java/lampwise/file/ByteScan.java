package lampwise.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What all bytes of a file show.
 *
 * @param bytes how many there are
 * @param zeros how many are zero
 * @param controls how many are control characters other than those that texts have
 * @param high whether any is beyond ASCII
 * @param lastQuote where the last quote stands, from 0; -1 if there is none
 */
record ByteScan(long bytes, long zeros, long controls, boolean high, long lastQuote) {
  /** Looks at a file. */
  static ByteScan of(Path path) throws IOException {
    byte[] buffer = new byte[1 << 16];
    long bytes = 0;
    long zeros = 0;
    long controls = 0;
    boolean high = false;
    long lastQuote = -1;
    try (InputStream in = Files.newInputStream(path)) {
      int count = in.read(buffer);
      while (count >= 0) {
        for (int i = 0; i < count; i++) {
          byte b = buffer[i];
          high |= b < 0;
          zeros += b == 0 ? 1 : 0;
          controls += isControl(b) ? 1 : 0;
          lastQuote = b == '"' ? bytes + i : lastQuote;
        }
        bytes += count;
        count = in.read(buffer);
      }
    }
    return new ByteScan(bytes, zeros, controls, high, lastQuote);
  }

  /** Whether a byte is a control character that no text has. */
  static boolean isControl(byte b) {
    return (b > 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') || b == 0x7F;
  }
}
