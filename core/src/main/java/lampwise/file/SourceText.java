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
 * @param whole the whole text, if {@code text} is only the start of it
 */
record SourceText(String name, String text, List<String> notes, Optional<LongText> whole) {
  /** How text of two bytes a character was read. */
  static final String UTF_16_NOTE = "the file was read as UTF-16";

  /** How other text was read. */
  static final String LATIN_1_NOTE = "the file is not UTF-8; it was read as Latin-1";

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

  /** A text that is held as a whole. */
  SourceText(String name, String text, List<String> notes) {
    this(name, text, notes, Optional.empty());
  }

  /**
   * Hands over the whole text, or a long one part by part; each part ends where a line does.
   *
   * @throws FileException if it cannot be read, or the taker refuses
   */
  void forEachPart(LongText.Taker taker) throws FileException {
    if (whole.isPresent()) {
      whole.get().forEachPart(name, LongText.PART, taker);
    } else {
      taker.take(text);
    }
  }

  /** Whether a quote stands behind the text that is held. */
  boolean isQuotedBehind() {
    return whole.isPresent() && whole.get().quoted();
  }

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
      return new SourceText(name, marked ? text.substring(1) : text, List.of(UTF_16_NOTE));
    }
    refuseBinary(name, content);
    int skip = startsWith(content, 0xEF, 0xBB, 0xBF) ? 3 : 0;
    String text = new String(content, skip, content.length - skip, UTF_8);
    if (text.indexOf(REPLACED) < 0) {
      return new SourceText(name, text, List.of());
    }
    return new SourceText(
        name, new String(content, skip, content.length - skip, ISO_8859_1), List.of(LATIN_1_NOTE));
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
  static Optional<Charset> wideCharset(byte[] content) {
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
    double most = looked / 2.0 * WIDE_SHARE;
    if (looked < 4 || Math.min(zeros[0], zeros[1]) > 0) {
      return Optional.empty();
    }
    if (zeros[1] > most) {
      return Optional.of(UTF_16LE);
    }
    return zeros[0] > most ? Optional.of(UTF_16BE) : Optional.empty();
  }

  private static void refuseBinary(String name, byte[] content) throws FileException {
    long zeros = 0;
    long controls = 0;
    for (byte b : content) {
      zeros += b == 0 ? 1 : 0;
      controls += ByteScan.isControl(b) ? 1 : 0;
    }
    refuseBinary(name, zeros, controls, content.length);
  }

  /** Refuses what has bytes that no text has. */
  static void refuseBinary(String name, long zeros, long controls, long bytes)
      throws FileException {
    if (zeros > 0) {
      throw new FileException(
          name, 0, 0, "is a binary file; expected text: blink times or timed light levels");
    }
    if (controls > 1 && controls > bytes * CONTROL_SHARE) {
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
