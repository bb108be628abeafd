package lampwise.file;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;

/**
 * The text of a file, without its byte-order mark.
 *
 * @param name the file's name, for messages
 * @param text what it holds
 * @param notes how it was read, where that was not plain UTF-8
 */
record SourceText(String name, String text, List<String> notes) {
  private static final char REPLACED = '\uFFFD';

  /** Text has no more control characters than this share of its bytes. */
  private static final double CONTROL_SHARE = 0.02;

  /**
   * Turns bytes into text.
   *
   * @throws FileException if they are no text, or text of an encoding that is not read
   */
  static SourceText of(String name, byte[] content) throws FileException {
    if (startsWith(content, 0xFF, 0xFE) || startsWith(content, 0xFE, 0xFF)) {
      throw new FileException(
          name, 0, 0, "starts with the mark of UTF-16; save it as plain text or CSV in UTF-8");
    }
    refuseBinary(name, content);
    int skip = startsWith(content, 0xEF, 0xBB, 0xBF) ? 3 : 0;
    String text = new String(content, skip, content.length - skip, UTF_8);
    if (text.indexOf(REPLACED) < 0) {
      return new SourceText(name, text, List.of());
    }
    return new SourceText(
        name,
        new String(content, skip, content.length - skip, ISO_8859_1),
        List.of("the file is not UTF-8; it was read as Latin-1"));
  }

  /** A fault at a place of this file; line and column from 1, or 0 for none. */
  FileException fault(int line, int column, String message) {
    return new FileException(name, line, column, message);
  }

  private static void refuseBinary(String name, byte[] content) throws FileException {
    int zeros = 0;
    int controls = 0;
    for (byte b : content) {
      if (b == 0) {
        zeros++;
      } else if ((b > 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f')
          || b == 0x7F) {
        controls++;
      }
    }
    if (zeros > 0) {
      boolean wide = zeros > content.length / 3 && zeros <= (content.length + 1) / 2;
      throw new FileException(
          name,
          0,
          0,
          wide
              ? "looks like UTF-16 without its mark; save it as plain text or CSV in UTF-8"
              : "is a binary file; expected text: blink times or timed light levels");
    }
    if (controls > 1 && controls > content.length * CONTROL_SHARE) {
      throw new FileException(
          name,
          0,
          0,
          "is full of control characters; expected text: blink times or timed light levels");
    }
  }

  private static boolean startsWith(byte[] content, int... mark) {
    if (content.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((content[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }
}
