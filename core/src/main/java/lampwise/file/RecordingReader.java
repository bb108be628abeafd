package lampwise.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lampwise.file.ReadOptions.Shape;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Targets;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;

/** Reads recordings from the bytes of a file or of pasted text. */
public final class RecordingReader {
  /** Files of so many bytes are long. */
  static final long LONG_BYTES = 4L * LongText.PART;

  private RecordingReader() {}

  /**
   * Reads the recordings of a file: pasted blink times, gaps or on/off pairs as a blink log, a
   * table of times and levels as a light curve. Pasted times in which lines name fixtures give a
   * recording for each. What was inferred stands in the notes of each recording's origin. An empty
   * text is a blink log without blinks.
   *
   * <p>A text whose first line is {@code lampwise-log: 1} is a {@linkplain LampwiseLog Lampwise
   * log}, one recording a part. Beside it the options for the window, targets, events and covered
   * stretches replace, in every part, what the log says of the same thing (of the window the end
   * that is given), and blinks outside the new window are left out with a note. The options that
   * say what a file holds (shape, columns, unit) are refused, since a log says that itself; which
   * way light is brighter has no meaning for it and is passed over.
   *
   * <p>A numeric time column whose first value is below 10,000 s keeps its own zero; in any other
   * writing the first row is at 0. With a window only what lies inside it is kept.
   *
   * @param name the file's name, for messages and as the recording's name
   * @param content its bytes
   * @param options what the user said about it
   * @return one recording or more
   * @throws FileException if the file cannot be read as a recording
   * @throws OptionException if an option cannot be understood or does not fit the file
   */
  public static List<Recording> read(String name, byte[] content, ReadOptions options)
      throws FileException, OptionException {
    SourceText source = SourceText.of(name, content);
    if (LampwiseLog.isLog(source)) {
      return LampwiseLog.read(source, options);
    }
    Shape shape = ShapeFinder.find(source, options);
    return shape == Shape.LEVELS
        ? List.of(LightFile.read(source, options))
        : PastedTimes.read(source, shape, options);
  }

  /**
   * Reads the recordings of a file. A long light file is read part by part, in memory for its
   * samples alone; otherwise as {@link #read(String, byte[], ReadOptions)} reads its bytes.
   *
   * @param name the file's name, for messages and as the recording's name
   * @param path where it lies
   * @param options what the user said about it
   * @return one recording or more
   * @throws FileException if the file cannot be read as a recording
   * @throws OptionException if an option cannot be understood or does not fit the file
   * @throws IOException if the file cannot be opened or read
   */
  public static List<Recording> read(String name, Path path, ReadOptions options)
      throws FileException, OptionException, IOException {
    if (Files.size(path) >= LONG_BYTES) {
      SourceText source = LongText.open(name, path);
      boolean log = LampwiseLog.isLog(source);
      if (!log && ShapeFinder.find(source, options) == Shape.LEVELS) {
        return List.of(LightFile.read(source, options));
      }
    }
    return read(name, Files.readAllBytes(path), options);
  }

  /**
   * Takes what a person says of a lamp.
   *
   * @param said a rhythm phrase, or {@value Description#NOTHING} if no light was seen
   * @param options what the user said besides; the window is how long they watched
   * @return the description
   * @throws OptionException if it is no phrase, with the column, or an option cannot be understood
   */
  public static Description described(String said, ReadOptions options) throws OptionException {
    String words = said.strip();
    try {
      if (!words.equals(Description.NOTHING)) {
        words = Phrase.print(Phrase.parse(words));
      }
    } catch (PhraseException e) {
      throw new OptionException("--saw: " + Numbers.quote(said) + ": " + e.getMessage());
    }
    Marks marks = MarkOptions.marks(options, RecordingClock.empty(), Targets.unknown());
    return new Description(Origin.named("what was said"), marks, words);
  }
}
