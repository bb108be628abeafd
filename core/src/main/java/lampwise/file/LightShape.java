package lampwise.file;

import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.RecordingException;

/**
 * The shapes that light files come in. Each can be written, and {@link RecordingReader} reads back
 * what was written: the same levels, and times from the first row that are off by no more than the
 * shape's resolution. The same curve gives the same bytes on every machine.
 */
public enum LightShape {
  /** Comma, header, seconds. */
  PLAIN("plain", "comma, header, seconds", 1e-6),
  /** Quoted names with units, scientific numbers. */
  SCIENTIFIC("scientific", "quoted names with units, scientific numbers", 1e-6),
  /** Semicolon and decimal comma. */
  DECIMAL_COMMA("decimal-comma", "semicolon, decimal comma", 1e-4),
  /** Decimal comma and comma, quoted. */
  QUOTED_COMMA("quoted-comma", "decimal comma in quotes between commas", 1e-4),
  /** Tab. */
  TAB("tab", "tab between columns", 1e-6),
  /** Comma and tab. */
  COMMA_TAB("comma-tab", "comma and tab between columns, microseconds", 1e-6),
  /** UTF-8 with a byte-order mark. */
  BYTE_ORDER_MARK("byte-order-mark", "UTF-8 with a byte-order mark", 1e-6),
  /** UTF-16 with tabs. */
  UTF_16("utf-16", "UTF-16, tab", 1e-6),
  /** Milliseconds since 1970. */
  EPOCH_MS("epoch-ms", "milliseconds since 1970", 1e-3),
  /** Microseconds since 1970. */
  EPOCH_US("epoch-us", "microseconds since 1970", 1e-6),
  /** Nanoseconds since 1970. */
  EPOCH_NS("epoch-ns", "nanoseconds since 1970", 1e-6),
  /** Nanoseconds since the device started. */
  BOOT_NS("boot-ns", "nanoseconds since the device started", 1e-6),
  /** Date and time of zone zero. */
  ISO("iso", "date and time with a T and a Z", 1e-3),
  /** Date and time with an offset. */
  ISO_OFFSET("iso-offset", "date and time with an offset, microseconds", 1e-6),
  /** A colon before the milliseconds. */
  COLON_MS("colon-ms", "date and time, a colon before milliseconds", 1e-3),
  /** Time of day over midnight. */
  CLOCK("clock", "time of day over midnight", 1e-3),
  /** Date and time of day in columns of their own. */
  DATE_CLOCK("date-clock", "date and time of day in two columns", 1e-3),
  /** A 12-hour clock. */
  TWELVE_HOURS("twelve-hours", "date and 12-hour clock", 1e-3),
  /** Minutes and seconds. */
  MINUTES("minutes", "minutes and seconds", 1e-3),
  /** Whole seconds beside running milliseconds. */
  SECOND_AND_MS("second-and-ms", "whole seconds beside milliseconds", 1e-3),
  /** Whole seconds. */
  WHOLE_SECONDS("whole-seconds", "time of day in whole seconds", 1),
  /** Days of a spreadsheet. */
  SPREADSHEET_DAYS("spreadsheet-days", "days of a spreadsheet", 1e-3),
  /** Many sensors side by side. */
  WIDE("wide", "many sensors side by side, empty cells", 1e-6),
  /** Many sensors one below the other. */
  LONG("long", "many sensors one below the other", 1e-3),
  /** Comments above. */
  COMMENTS("comments", "comments above the header", 1e-6),
  /** Words above. */
  WORDS_ABOVE("words-above", "words, a blank line and units around the header", 1e-3),
  /** A line that names the delimiter. */
  SEPARATOR_LINE("separator-line", "a first line that names the delimiter", 1e-4),
  /** No header. */
  BARE("bare", "no header", 1e-6),
  /** The unit in a comment. */
  COMMENT_UNIT("comment-unit", "the unit of time in a comment, no header", 1e-6),
  /** Blank lines between. */
  BLANK_LINES("blank-lines", "a blank line after every row", 1e-6),
  /** A delimiter at the end. */
  TRAILING("trailing", "a delimiter at the end of every row", 1e-6),
  /** Thousands parted by a no-break space. */
  THOUSANDS("thousands", "thousands parted by a no-break space", 1e-4),
  /** Thousands parted by an apostrophe. */
  APOSTROPHE("apostrophe", "thousands parted by an apostrophe", 1e-4),
  /** Names in another language, Latin-1. */
  LATIN_1("latin-1", "names of another language in Latin-1", 1e-4),
  /** Units in the cells. */
  UNITS_IN_CELLS("units-in-cells", "a unit behind every number", 1e-6),
  /** Frames of a film. */
  FRAMES("frames", "frames of a film with their times", 1e-3),
  /** Frames and a rate. */
  FRAME_RATE("frame-rate", "frames, and their rate in a comment", 1e-3),
  /** Levels that are missing. */
  MISSING("missing", "rows without a level between the others", 1e-3),
  /** Doubled and late rows. */
  DOUBLED("doubled", "doubled rows, and rows that come late", 1e-3),
  /** Tuples. */
  TUPLES("tuples", "time and level in brackets in one cell", 1e-6),
  /** One line. */
  ONE_LINE("one-line", "levels alone, in one line", 1e-3),
  /** Lines that end in CR. */
  CR_ENDS("cr-ends", "lines that end in CR, the last without an end", 1e-6);

  private final String word;
  private final String what;
  private final double resolutionSeconds;

  LightShape(String word, String what, double resolutionSeconds) {
    this.word = word;
    this.what = what;
    this.resolutionSeconds = resolutionSeconds;
  }

  /**
   * The shape of a name.
   *
   * @param word the name
   * @return empty if there is no such shape
   */
  public static Optional<LightShape> of(String word) {
    for (LightShape shape : values()) {
      if (shape.word.equals(word)) {
        return Optional.of(shape);
      }
    }
    return Optional.empty();
  }

  /**
   * Its name.
   *
   * @return small letters, digits and dashes
   */
  public String word() {
    return word;
  }

  /**
   * What is particular about it.
   *
   * @return a few words
   */
  public String what() {
    return what;
  }

  /**
   * How far times may be off after writing and reading.
   *
   * @return seconds, more than 0
   */
  public double resolutionSeconds() {
    return resolutionSeconds;
  }

  /**
   * Whether it can carry only samples that lie evenly.
   *
   * @return whether the times are left out
   */
  public boolean isEven() {
    return this == FRAME_RATE || this == ONE_LINE;
  }

  /**
   * What a reader must be told to read a curve in this shape.
   *
   * @param curve the curve that was written
   * @return the rate where the file does not hold it
   */
  public ReadOptions.Writing needs(LightCurve curve) {
    double rate = this == ONE_LINE ? LightShapeRows.rate(curve) : Double.NaN;
    return new ReadOptions.Writing(rate, Optional.empty(), Optional.empty());
  }

  /**
   * Writes a curve in this shape. Levels are rounded to the decimals; a sample without a level is a
   * row without one.
   *
   * @param curve the curve, at least one sample
   * @param decimals the decimals of a level, 0 to {@value LightCsv#MOST_DECIMALS}
   * @return the bytes of the file
   * @throws RecordingException if there is no sample, the decimals are out of range, two times
   *     become one when they are rounded, a number is too large, the shape needs even samples and
   *     they are not, or a shape from 1970 would have to reach beyond the year 2100
   */
  public byte[] write(LightCurve curve, int decimals) {
    return LightShapeRows.write(this, curve, decimals);
  }
}
