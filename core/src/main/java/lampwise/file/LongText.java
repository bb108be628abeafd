package lampwise.file;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The text of a file that is too long to be held as a whole. It is read part by part, as often as
 * it is needed; each part ends where a line does.
 *
 * @param path the file
 * @param charset how its text is coded
 * @param quoted whether there are quotes behind its head
 */
record LongText(Path path, Charset charset, boolean quoted) {
  /** A part has about so many characters. */
  static final int PART = 1 << 20;

  /** No line is longer. */
  private static final int LONGEST_LINE = 1 << 24;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /** Takes the parts of a text one after another. */
  interface Taker {
    /** Takes a part; whether more are wanted. */
    boolean take(String part) throws FileException;
  }

  /**
   * Opens a file: looks at all its bytes once, and holds its first part.
   *
   * @throws FileException if it is no text
   * @throws IOException if it cannot be read
   */
  static SourceText open(String name, Path path) throws FileException, IOException {
    byte[] start;
    try (InputStream in = Files.newInputStream(path)) {
      start = in.readNBytes(PART);
    }
    Optional<Charset> wide = SourceText.wideCharset(start);
    ByteScan scan = ByteScan.of(path);
    List<String> notes = List.of();
    Charset charset = UTF_8;
    if (wide.isPresent()) {
      charset = wide.get();
      notes = List.of(SourceText.UTF_16_NOTE);
    } else {
      SourceText.refuseBinary(name, scan.zeros(), scan.controls(), scan.bytes());
      if (scan.high() && !isUtf8(path)) {
        charset = ISO_8859_1;
        notes = List.of(SourceText.LATIN_1_NOTE);
      }
    }
    boolean quoted = wide.isPresent() || scan.lastQuote() >= PART;
    LongText text = new LongText(path, charset, quoted);
    String[] head = {""};
    text.forEachPart(
        name,
        PART,
        part -> {
          head[0] = part;
          return false;
        });
    return new SourceText(name, head[0], notes, Optional.of(text));
  }

  /**
   * Hands over part after part until no more is wanted.
   *
   * @param name the file's name, for messages
   * @param size about how many characters a part has
   * @throws FileException if the file cannot be read, a line is too long, or the taker refuses
   */
  void forEachPart(String name, int size, Taker taker) throws FileException {
    char[] buffer = new char[size];
    int filled = 0;
    boolean first = true;
    try (Reader reader = new InputStreamReader(Files.newInputStream(path), charset)) {
      while (true) {
        int count = reader.read(buffer, filled, buffer.length - filled);
        filled += Math.max(count, 0);
        if (count >= 0 && filled < buffer.length) {
          continue;
        }
        int end = count < 0 ? filled : lineEnd(buffer, filled);
        if (end == 0 && count >= 0) {
          if (buffer.length >= LONGEST_LINE) {
            throw new FileException(
                name, 0, 0, "has a line of more than 16 million characters; expected rows");
          }
          buffer = Arrays.copyOf(buffer, buffer.length * 2);
          continue;
        }
        int start = first && filled > 0 && buffer[0] == BYTE_ORDER_MARK ? 1 : 0;
        first = false;
        boolean more = taker.take(new String(buffer, start, end - start));
        if (count < 0 || !more) {
          return;
        }
        System.arraycopy(buffer, end, buffer, 0, filled - end);
        filled -= end;
      }
    } catch (IOException e) {
      throw new FileException(name, 0, 0, "cannot be read (" + e.getMessage() + ")");
    }
  }

  /** Behind the last line end, but not between a CR and its LF; 0 if there is none. */
  private static int lineEnd(char[] buffer, int filled) {
    for (int i = filled - 1; i >= 0; i--) {
      if (buffer[i] == '\n' || (buffer[i] == '\r' && i < filled - 1 && buffer[i + 1] != '\n')) {
        return i + 1;
      }
    }
    return 0;
  }

  private static boolean isUtf8(Path path) throws IOException {
    CharsetDecoder decoder =
        UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer bytes = ByteBuffer.allocate(1 << 16);
    CharBuffer chars = CharBuffer.allocate(1 << 16);
    try (InputStream in = Files.newInputStream(path)) {
      boolean ended = false;
      while (!ended) {
        int count = in.read(bytes.array(), bytes.position(), bytes.remaining());
        ended = count < 0;
        bytes.position(bytes.position() + Math.max(count, 0));
        bytes.flip();
        CoderResult result = decoder.decode(bytes, chars, ended);
        if (result.isError()) {
          return false;
        }
        bytes.compact();
        chars.clear();
      }
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }
}
