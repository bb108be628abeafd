package lampwise.file;

import java.util.List;
import lampwise.light.Recording;
import lampwise.light.RecordingException;

/**
 * The Lampwise log: plain text that holds blink logs and descriptions of one fixture or several.
 * Its grammar is in {@code core/docs/lampwise-log.md}.
 */
public final class LampwiseLog {
  /** The version of the format that is written, and the only one so far. */
  public static final int VERSION = 1;

  /** The key of the first line. */
  static final String KEY = "lampwise-log";

  private LampwiseLog() {}

  /**
   * Reads the recordings of a log, as {@link RecordingReader} does where nothing else is said.
   * Every recording has the file's name; a part's {@code fixture:} line gives its fixture.
   *
   * @param name the file's name, for messages and as the recordings' name
   * @param content its bytes
   * @return one recording a part, in the order of the file; at least one
   * @throws FileException if the file is no log of this version; carries every fault of the file
   */
  public static List<Recording> read(String name, byte[] content) throws FileException {
    return new LogReader(SourceText.of(name, content))
        .read().stream().map(LogPart::recording).toList();
  }

  /**
   * Writes recordings as a log, one part each in the order given. Times are rounded to the
   * millisecond and written without trailing zeros; a blink whose end then falls on its start is
   * written without its end, and a target that lasts less than that is left out. Reading gives the
   * same blinks, words, marks and fixtures, if the times are whole milliseconds; the recordings'
   * names and notes are not written.
   *
   * @param recordings one or more
   * @return the text, its lines ended by LF
   * @throws RecordingException if there is no recording, or one cannot be written: a light curve, a
   *     blink that starts outside the marked window or while another is on, words that are no
   *     rhythm, a fixture's name that does not fit on a line, a time beyond 10<sup>12</sup> s
   */
  public static String write(List<? extends Recording> recordings) {
    return LogWriter.write(recordings);
  }

  /** Whether a text is meant as a log: its first line that holds something starts with the key. */
  static boolean isLog(SourceText source) {
    Lines lines = Lines.content(source.text());
    if (!lines.next()) {
      return false;
    }
    int at = lines.start();
    while (at < lines.end() && Lines.isBlank(source.text().charAt(at))) {
      at++;
    }
    return source.text().regionMatches(true, at, KEY, 0, KEY.length());
  }

  /**
   * Reads a log and obeys the options beside it.
   *
   * @throws FileException if it is no log of this version
   * @throws OptionException if an option cannot be understood or has no meaning for a log
   */
  static List<Recording> read(SourceText source, ReadOptions options)
      throws FileException, OptionException {
    return LogOptions.apply(options, new LogReader(source).read());
  }
}
