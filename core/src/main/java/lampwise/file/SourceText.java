package lampwise.file;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;

/**
 * The text of a file, without its byte-order mark.
 *
 * @param name the file's name, for messages
 * @param text what it holds
 * @param notes how it was read, where that was not plain UTF-8
 */
record SourceText(String name, String text, List<String> notes) {
  /** The head of a text is no longer. */
  private static final int HEAD = 1 << 16;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /** So many bytes show whether every other one is zero. */
  private static final int LOOKED_AT = 4096;

  /** The share of zeros among every other byte of UTF-16 that holds numbers. */
  private static final double WIDE_SHARE = 0.8;

  private static final char REPLACED = '\uFFFD';

  /** Text has no more control characters than this share of its bytes. */
  private static final double CONTROL_SHARE = 0.02;

  /**
   * Turns bytes into text.
   *
   * @throws FileException if they are no text, or text of an encoding that is not read
   */
  static SourceText of(String name, byte[] content) throws FileException {
    Optional<Charset> wide = wideCharset(content);
    if (wide.isPresent()) {
      String text = new String(content, wide.get());
      boolean marked = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK;
      return new SourceText(
          name, marked ? text.substring(1) : text, List.of("the file was read as UTF-16"));
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

  /** The start of the text, where a file says what it holds. */
  String head() {
    return text.substring(0, Math.min(text.length(), HEAD));
  }

  /** A fault at a place of this file; line and column from 1, or 0 for none. */
  FileException fault(int line, int column, String message) {
    return new FileException(name, line, column, message);
  }

  /** UTF-16, if it starts with its mark or every other byte is zero. */
  private static Optional<Charset> wideCharset(byte[] content) {
    if (startsWith(content, 0xFF, 0xFE)) {
      return Optional.of(UTF_16LE);
    }
    if (startsWith(content, 0xFE, 0xFF)) {
      return Optional.of(UTF_16BE);
    }
    int[] zeros = new int[2];
    int looked = Math.min(content.length, LOOKED_AT);
    for (int i = 0; i < looked; i++) {
      zeros[i % 2] += content[i] == 0 ? 1 : 0;
    }
    double most = looked / 2 * WIDE_SHARE;
    if (looked < 4 || Math.min(zeros[0], zeros[1]) > 0) {
      return Optional.empty();
    }
    if (zeros[1] > most) {
      return Optional.of(UTF_16LE);
    }
    return zeros[0] > most ? Optional.of(UTF_16BE) : Optional.empty();
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
      throw new FileException(
          name, 0, 0, "is a binary file; expected text: blink times or timed light levels");
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
