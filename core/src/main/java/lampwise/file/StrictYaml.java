package lampwise.file;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * Reads the YAML 1.2 files of this project: one document in UTF-8 of texts, lists and tables.
 * Anchors, aliases, tags and further documents are faults. Doubled keys are left to {@link
 * YamlTable}.
 */
final class StrictYaml {
  /** The longest file that is read, in bytes. No sheet or guide comes near it. */
  static final int MOST_BYTES = 1 << 20;

  private static final int BYTE_ORDER_MARK = 0xFEFF;

  private StrictYaml() {}

  /**
   * Reads a file.
   *
   * @param content its bytes
   * @param expected what the file should hold, for the message about an empty one
   * @param faults takes what is wrong
   * @return the root; empty if the file could not be read to its end, which then is among the
   *     faults
   */
  static Optional<YamlNode> read(byte[] content, String expected, FaultList faults) {
    if (content.length > MOST_BYTES) {
      faults.add(
          0,
          0,
          String.format(
              Locale.ROOT,
              "the file has %d bytes; expected %s of at most %d",
              content.length,
              expected,
              MOST_BYTES));
      return Optional.empty();
    }
    return decode(content, faults).flatMap(text -> new YamlComposer(faults).read(text, expected));
  }

  /** The text of the bytes, without a byte order mark; empty after a fault. */
  private static Optional<String> decode(byte[] content, FaultList faults) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer bytes = ByteBuffer.wrap(content);
    CharBuffer chars = CharBuffer.allocate(content.length + 1);
    CoderResult result = decoder.decode(bytes, chars, true);
    String text = chars.flip().toString();
    if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
      text = text.substring(1);
    }
    if (result.isError()) {
      addAtEnd(
          text,
          String.format(
              Locale.ROOT,
              "the byte 0x%02X is not UTF-8; save the file as UTF-8",
              content[bytes.position()] & 0xFF),
          faults);
      return Optional.empty();
    }
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      if (!StreamReader.isPrintable(text.codePointAt(i))) {
        addAtEnd(
            text.substring(0, i),
            String.format(Locale.ROOT, "the character U+%04X is not text", text.codePointAt(i)),
            faults);
        return Optional.empty();
      }
    }
    return Optional.of(text);
  }

  /** Adds a fault at the place where the text before it ends. */
  private static void addAtEnd(String before, String message, FaultList faults) {
    int line = 1;
    int column = 1;
    for (int i = 0; i < before.length(); i += Character.charCount(before.codePointAt(i))) {
      char c = before.charAt(i);
      boolean half = c == '\r' && i + 1 < before.length() && before.charAt(i + 1) == '\n';
      if (c == '\n' || (c == '\r' && !half)) {
        line++;
        column = 1;
      } else if (!half) {
        column++;
      }
    }
    faults.add(line, column, message);
  }
}
