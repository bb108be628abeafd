package lampwise.file;

import java.math.BigDecimal;

/** What stands above the rows of a light file in a shape. */
final class LightShapeHeads {
  private LightShapeHeads() {}

  /**
   * The lines above the first row, each with its end.
   *
   * @param rate how many rows make a second, for a shape that says it
   */
  static String of(LightShape shape, double rate) {
    return switch (shape) {
      case SCIENTIFIC -> "\"Time (s)\",\"Illuminance (lx)\"\n";
      case DECIMAL_COMMA, THOUSANDS, APOSTROPHE -> "Time (s);Illuminance (lx)\n";
      case QUOTED_COMMA -> "\"time (s)\",\"lux\"\n";
      case TAB, UTF_16 -> "time_s\tlux\n";
      case COMMA_TAB -> "time_us,\tlight,\tother\n";
      case EPOCH_MS -> "timestamp_ms,light\n";
      case EPOCH_US -> "timestamp_us,light\n";
      case EPOCH_NS, BOOT_NS -> "timestamp_ns,light\n";
      case CLOCK -> "time;lux\n";
      case DATE_CLOCK -> "Date,Time,Lux\n";
      case TWELVE_HOURS -> "When,Lux\n";
      case SECOND_AND_MS -> "Timestamp,Milliseconds,Illuminance\n";
      case WIDE -> "t_s,accX,accY,light,pressure\n";
      case LONG -> "time_ms,sensor,value\n";
      case COMMENTS -> "# device: X1\n# started: 2030-01-01 08:00\ntime_s,lux\n";
      case WORDS_ABOVE -> "Recording 7, light sensor\n\nTime,Light\nms,lx\n";
      case SEPARATOR_LINE -> "sep=;\ntime (s);lux\n";
      case BARE, BLANK_LINES -> "";
      case COMMENT_UNIT -> "// time microseconds, LUX*100\n";
      case TRAILING -> "time_s,lux,\n";
      case LATIN_1 -> "Temps (s);\u00C9clairement (lx)\n";
      case UNITS_IN_CELLS -> "time,light\n";
      case FRAMES -> "frame,pts_ms,mean_luma\n";
      case FRAME_RATE ->
          "# fps=" + BigDecimal.valueOf(rate).toPlainString() + "\nframe,brightness\n";
      case MISSING, DOUBLED -> "time_ms,lux\n";
      case TUPLES -> "A times (s),B times (s)\n";
      case CR_ENDS -> "time_s,lux\r";
      case MINUTES, WHOLE_SECONDS, SPREADSHEET_DAYS, ISO, ISO_OFFSET, COLON_MS -> "time,lux\n";
      default -> "time_s,lux\n";
    };
  }
}
