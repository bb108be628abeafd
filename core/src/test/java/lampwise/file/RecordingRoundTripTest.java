package lampwise.file;

import static lampwise.file.Readings.curve;
import static lampwise.file.Readings.ends;
import static lampwise.file.Readings.levels;
import static lampwise.file.Readings.log;
import static lampwise.file.Readings.said;
import static lampwise.file.Readings.seconds;
import static lampwise.file.Readings.starts;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.LongFunction;
import lampwise.file.ReadOptions.Shape;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Times that are written in any notation are read as the same times. */
class RecordingRoundTripTest {
  private static final double NANOSECOND = 1e-9;

  @Property
  void plainSeconds(@ForAll("rising") List<Long> millis, @ForAll("separators") String separator)
      throws Exception {
    String text = write(millis, separator, RecordingRoundTripTest::plain);
    assertArrayEquals(toSeconds(millis, 0), starts(log(text)));
  }

  @Property
  void numberedLists(@ForAll("rising") List<Long> millis, @ForAll("separators") String separator)
      throws Exception {
    List<String> items = new ArrayList<>();
    for (int i = 0; i < millis.size(); i++) {
      items.add((i + 1) + ") " + plain(millis.get(i)));
    }
    assertArrayEquals(toSeconds(millis, 0), starts(log(String.join(separator, items))));
  }

  @Property
  void minutesAndHours(@ForAll("rising") List<Long> millis, @ForAll("separators") String separator)
      throws Exception {
    double[] expected = toSeconds(millis, millis.get(0));
    String minutes = write(millis, separator, RecordingRoundTripTest::minutes);
    assertArrayEquals(expected, starts(log(minutes)), NANOSECOND);
    String hours = write(millis, separator, m -> hours(m, 11));
    assertArrayEquals(expected, starts(log(hours)), NANOSECOND);
  }

  @Property
  void clockTimesOverMidnight(@ForAll("rising") List<Long> millis) throws Exception {
    long middle = millis.get(millis.size() / 2);
    String text = write(millis, ", ", m -> clock(m - middle));
    assertArrayEquals(toSeconds(millis, millis.get(0)), starts(log(text)), NANOSECOND);
  }

  @Property
  void gapsAfterAStart(@ForAll("rising") List<Long> millis) throws Exception {
    StringBuilder text = new StringBuilder(plain(millis.get(0)));
    for (int i = 1; i < millis.size(); i++) {
      text.append(" +").append(plain(millis.get(i) - millis.get(i - 1)));
    }
    assertArrayEquals(toSeconds(millis, 0), starts(log(text.toString())), NANOSECOND);
  }

  @Property
  void listsFromLastToFirst(@ForAll("rising") List<Long> millis) throws Exception {
    List<Long> backwards = new ArrayList<>(millis);
    Collections.reverse(backwards);
    String text = write(backwards, "\n", RecordingRoundTripTest::plain);
    assertArrayEquals(toSeconds(millis, 0), starts(log(text)));
  }

  @Property
  void pairsOfOnAndOff(@ForAll("rising") List<Long> millis, @ForAll("separators") String separator)
      throws Exception {
    StringBuilder words = new StringBuilder();
    StringBuilder columns = new StringBuilder();
    for (int i = 0; i < millis.size(); i++) {
      boolean on = i % 2 == 0;
      words.append(on ? "on " : " off ").append(plain(millis.get(i))).append(on ? "" : separator);
      columns.append(plain(millis.get(i))).append(on ? " " : "\n");
    }
    BlinkLog log = log(words.toString());
    for (int i = 0; i < log.blinks().size(); i++) {
      assertEquals(millis.get(2 * i) / 1e3, log.blinks().get(i).onSeconds());
    }
    assertEquals((millis.size() + 1) / 2, log.blinks().size());
    assertEquals(millis.size() / 2, log.blinks().stream().filter(Blink::hasOff).count());
    BlinkLog bare = log(columns.toString(), said().as(Shape.SPANS));
    assertArrayEquals(starts(log), starts(bare));
    assertArrayEquals(ends(log), ends(bare));
  }

  @Property
  void lightFiles(@ForAll("rising") List<Long> millis, @ForAll("delimiters") String delimiter)
      throws Exception {
    StringBuilder seconds = new StringBuilder("time_s" + delimiter + "lux\n");
    StringBuilder whole = new StringBuilder("\"lux\"" + delimiter + "\"Time (ms)\"\r\n");
    double[] expected = new double[millis.size()];
    for (int i = 0; i < expected.length; i++) {
      expected[i] = 40 + i % 7;
      seconds.append(plain(millis.get(i))).append(delimiter).append(expected[i]).append('\n');
      whole.append(expected[i]).append(delimiter).append(millis.get(i)).append("\r\n");
    }
    assertArrayEquals(toSeconds(millis, 0), seconds(curve(seconds.toString())));
    assertArrayEquals(expected, levels(curve(seconds.toString())));
    String quoted =
        whole.toString().replace("Time (ms)", delimiter.equals(" ") ? "t_ms" : "Time (ms)");
    assertArrayEquals(toSeconds(millis, 0), seconds(curve(quoted)));
    assertArrayEquals(expected, levels(curve(quoted)));
  }

  @Provide
  Arbitrary<List<Long>> rising() {
    return Arbitraries.longs()
        .between(1, 59_999)
        .list()
        .ofMinSize(3)
        .ofMaxSize(40)
        .map(
            gaps -> {
              List<Long> times = new ArrayList<>();
              long at = 0;
              for (long gap : gaps) {
                at += gap;
                times.add(at);
              }
              return times;
            });
  }

  @Provide
  Arbitrary<String> separators() {
    return Arbitraries.of(" ", ", ", "; ", "\t", "\n", "\r\n", ",\n", "   ");
  }

  @Provide
  Arbitrary<String> delimiters() {
    return Arbitraries.of(",", ";", "\t", " ", ", ", ",\t");
  }

  private static String write(List<Long> millis, String separator, LongFunction<String> writing) {
    return String.join(separator, millis.stream().map(writing::apply).toList());
  }

  private static double[] toSeconds(List<Long> millis, long zero) {
    return millis.stream().mapToDouble(m -> (m - zero) / 1e3).toArray();
  }

  private static String plain(long millis) {
    return String.format(Locale.ROOT, "%d.%03d", millis / 1000, millis % 1000);
  }

  private static String minutes(long millis) {
    return String.format(
        Locale.ROOT, "%d:%02d.%03d", millis / 60_000, millis / 1000 % 60, millis % 1000);
  }

  private static String hours(long millis, int from) {
    return String.format(
        Locale.ROOT,
        "%d:%02d:%02d.%03d",
        from + millis / 3_600_000,
        millis / 60_000 % 60,
        millis / 1000 % 60,
        millis % 1000);
  }

  private static String clock(long millis) {
    return hours(Math.floorMod(millis, 86_400_000L), 0);
  }
}
