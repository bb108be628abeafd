package lampwise.file;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lampwise.light.LightCurve;
import lampwise.light.RecordingException;

/** Writes the rows of a light file in a shape. */
final class LightShapeRows {
  /** How far a sample may lie from its even place. */
  private static final double EVEN_SECONDS = 5e-4;

  /** 2030-01-01 in seconds since 1970, and in days of a spreadsheet. */
  private static final long EPOCH = 1_893_456_000L;

  private static final int SERIAL_DAY = 47_484;

  /** An invented time since a device started, in nanoseconds. */
  private static final long BOOT = 86_412_345_678_901L;

  private static final long MICROS = 1_000_000;

  /** Some shapes reach no further than this from their first row: 70 years. */
  private static final double MOST_SECONDS = 2.2e9;

  /** A late row comes so many rows after its place. */
  private static final int LATE = 7;

  /** What a logger writes where it has no level. */
  private static final String[] MISSES = {"NaN", "null", "-", "Infinity", ""};

  private final LightShape shape;
  private final LightCurve curve;
  private final int decimals;
  private final double first;

  private LightShapeRows(LightShape shape, LightCurve curve, int decimals) {
    this.shape = shape;
    this.curve = curve;
    this.decimals = decimals;
    this.first = curve.seconds(0);
  }

  static byte[] write(LightShape shape, LightCurve curve, int decimals) {
    String plain = LightCsv.write(curve, decimals);
    if (shape == LightShape.PLAIN) {
      return plain.getBytes(UTF_8);
    }
    double length = curve.seconds(curve.size() - 1) - curve.seconds(0);
    if (!(length <= MOST_SECONDS && Math.abs(curve.seconds(0)) <= MOST_SECONDS)) {
      throw new RecordingException(
          "the times of a light file in the shape " + shape.word() + " span at most 70 years");
    }
    LightShapeRows rows = new LightShapeRows(shape, curve, decimals);
    rows.check();
    String mark = shape == LightShape.BYTE_ORDER_MARK || shape == LightShape.UTF_16 ? "\uFEFF" : "";
    return (mark + rows.text()).getBytes(charset(shape));
  }

  /** The rate of even samples. */
  static double rate(LightCurve curve) {
    double length = curve.size() == 0 ? 0 : curve.seconds(curve.size() - 1) - curve.seconds(0);
    return length > 0 ? Math.rint((curve.size() - 1) / length * 1e9) / 1e9 : 1;
  }

  private static Charset charset(LightShape shape) {
    return switch (shape) {
      case UTF_16 -> UTF_16LE;
      case LATIN_1 -> ISO_8859_1;
      default -> UTF_8;
    };
  }

  private void check() {
    double step = shape == LightShape.WHOLE_SECONDS ? 0 : shape.resolutionSeconds();
    if (shape == LightShape.WHOLE_SECONDS && millis(curve.size() - 1) < 1000 && curve.size() > 1) {
      throw new RecordingException(
          "the samples lie within one second, which the shape whole-seconds cannot tell apart");
    }
    double rate = rate(curve);
    for (int i = 0; i < curve.size(); i++) {
      if (shape.isEven() && !(Math.abs(since(i) - i / rate) <= EVEN_SECONDS)) {
        throw new RecordingException(
            "the shape "
                + shape.word()
                + " needs samples that lie evenly: sample "
                + (i + 1)
                + " does not");
      }
      if (i > 0 && Math.round(since(i) / step) == Math.round(since(i - 1) / step) && step > 0) {
        throw new RecordingException(
            "the times of sample " + i + " and the next are one in the shape " + shape.word());
      }
    }
  }

  private String text() {
    if (shape == LightShape.ONE_LINE) {
      List<String> levels = new ArrayList<>();
      for (int i = 0; i < curve.size(); i++) {
        levels.add(Double.isNaN(curve.level(i)) ? "NaN" : level(i));
      }
      return String.join(", ", levels) + "\n";
    }
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      rows.add(row(i));
    }
    if (shape == LightShape.DOUBLED) {
      doubleAndDelay(rows);
    }
    String end = shape == LightShape.CR_ENDS ? "\r" : "\n";
    StringBuilder text = new StringBuilder(LightShapeHeads.of(shape, rate(curve)));
    for (String row : rows) {
      text.append(row).append(end);
    }
    if (shape == LightShape.CR_ENDS) {
      text.setLength(text.length() - 1);
    }
    return shape == LightShape.TRAILING ? text.append("\n\n").toString() : text.toString();
  }

  private static void doubleAndDelay(List<String> rows) {
    for (int i = rows.size() - 1; i >= 0; i -= 3 * LATE) {
      rows.add(i, rows.get(i));
      if (i > LATE) {
        Collections.swap(rows, i - 2, i - 3);
      }
    }
  }

  private String row(int i) {
    String level = Double.isNaN(curve.level(i)) ? "" : level(i);
    String comma = level.replace('.', ',');
    String own = number(curve.seconds(i), 6, 3);
    String ownComma = number(curve.seconds(i), 4, 4).replace('.', ',');
    return switch (shape) {
      case SCIENTIFIC -> scientific(curve.seconds(i)) + "," + (level.isEmpty() ? "" : level + "E0");
      case DECIMAL_COMMA, SEPARATOR_LINE, LATIN_1 -> ownComma + ";" + comma;
      case QUOTED_COMMA -> "\"" + ownComma + "\",\"" + comma + "\"";
      case TAB, UTF_16 -> own + "\t" + level;
      case COMMA_TAB -> (MICROS + micros(i)) + ",\t" + level + ",\t0";
      case EPOCH_MS -> EPOCH * 1000 + millis(i) + "," + level;
      case EPOCH_US -> EPOCH * MICROS + micros(i) + "," + level;
      case EPOCH_NS -> (EPOCH * MICROS + micros(i)) * 1000 + "," + level;
      case BOOT_NS -> BOOT + micros(i) * 1000 + "," + level;
      case ISO -> stamp(millis(i), "T", ".") + "Z," + level;
      case ISO_OFFSET -> {
        long micros = micros(i);
        yield stamp(micros / 1000, " ", ".") + digits(micros % 1000, 3) + "+01:00," + level;
      }
      case COLON_MS -> stamp(millis(i) + 86_399_900, " ", ":") + "," + level;
      case CLOCK -> clock((millis(i) + 86_399_900) % 86_400_000, ".") + ";" + level;
      case DATE_CLOCK ->
          dayFirst(millis(i)) + "," + clock(millis(i) % 86_400_000, ".") + "," + level;
      case TWELVE_HOURS ->
          dayFirst(millis(i)) + " " + halfDay(millis(i) % 86_400_000) + "," + level;
      case MINUTES -> minutes(millis(i)) + "," + level;
      case SECOND_AND_MS ->
          stamp(millis(i), " ", ".").substring(0, 19) + "," + (millis(i) + 2) + "," + level;
      case WHOLE_SECONDS -> clock(millis(i) % 86_400_000, ".").substring(0, 8) + "," + level;
      case SPREADSHEET_DAYS -> number(SERIAL_DAY + since(i) / RecordingClock.DAY, 9) + "," + level;
      case WIDE -> own + ",0.1,9.7," + level + ",1013.1";
      case LONG -> millis(i) + ",light," + level + "\n" + millis(i) + ",pressure,1013." + i % 10;
      case WORDS_ABOVE, FRAMES ->
          (shape == LightShape.FRAMES ? i + "," : "") + millis(i) + "," + level;
      case COMMENT_UNIT -> micros(i) + "," + level;
      case BLANK_LINES -> own + "," + level + "\n";
      case TRAILING -> own + "," + level + ",";
      case THOUSANDS -> ownComma + ";" + grouped(comma, "\u00A0");
      case APOSTROPHE -> ownComma + ";" + grouped(comma, "'");
      case UNITS_IN_CELLS -> own + " s," + (level.isEmpty() ? "" : level + " lx");
      case FRAME_RATE -> i + "," + level;
      case MISSING -> millis(i) + "," + level + "\n" + millis(i) + "," + MISSES[i % MISSES.length];
      case DOUBLED -> millis(i) + "," + level;
      case TUPLES -> "\"(" + own + ", " + level + ")\",\"(" + own + ", " + i % 3 + ")\"";
      default -> own + "," + level;
    };
  }

  private double since(int i) {
    return curve.seconds(i) - first;
  }

  private long millis(int i) {
    return Math.round(since(i) * 1000);
  }

  private long micros(int i) {
    return Math.round(since(i) * MICROS);
  }

  private String level(int i) {
    return number(curve.level(i), decimals, decimals);
  }

  private static String number(double value, int most, int least) {
    return JsonNumber.of(value, most, least);
  }

  /** A number with nine decimals, which {@link JsonNumber} does not have. */
  private static String number(double value, int decimals) {
    return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  private static String scientific(double seconds) {
    return Math.round(seconds * MICROS) + "E-6";
  }

  private static String grouped(String number, String gap) {
    int end = number.indexOf(',') < 0 ? number.length() : number.indexOf(',');
    StringBuilder text = new StringBuilder(number);
    for (int at = end - 3; at > (number.startsWith("-") ? 1 : 0); at -= 3) {
      text.insert(at, gap);
    }
    return text.toString();
  }

  private static String stamp(long millis, String between, String point) {
    return LocalDate.ofEpochDay(EPOCH / 86_400 + millis / 86_400_000)
        + between
        + clock(millis % 86_400_000, point);
  }

  private static String dayFirst(long millis) {
    LocalDate date = LocalDate.ofEpochDay(EPOCH / 86_400 + 12 + millis / 86_400_000);
    return date.getDayOfMonth() + "/" + date.getMonthValue() + "/" + date.getYear();
  }

  private static String clock(long millis, String point) {
    return digits(millis / 3_600_000, 2)
        + ":"
        + digits(millis / 60_000 % 60, 2)
        + ":"
        + digits(millis / 1000 % 60, 2)
        + point
        + digits(millis % 1000, 3);
  }

  private static String halfDay(long millis) {
    long hour = millis / 3_600_000;
    return (hour % 12 == 0 ? 12 : hour % 12)
        + clock(millis, ".").substring(2)
        + (hour < 12 ? " AM" : " PM");
  }

  private static String minutes(long millis) {
    return digits(millis / 60_000, 2)
        + ":"
        + digits(millis / 1000 % 60, 2)
        + "."
        + digits(millis % 1000, 3);
  }

  private static String digits(long value, int least) {
    StringBuilder text = new StringBuilder(Long.toString(value));
    while (text.length() < least) {
      text.insert(0, '0');
    }
    return text.toString();
  }
}
