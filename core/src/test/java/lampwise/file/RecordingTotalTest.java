package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static lampwise.file.Readings.said;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import lampwise.Testdata;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever the bytes and the options: recordings or a typed error, in linear time. */
class RecordingTotalTest {
  private static final List<String> WORDS =
      List.of(
          "0.3",
          "3.5",
          "6.5",
          "12",
          "-1",
          "+0.8",
          "1e9",
          "NaN",
          "inf",
          "on",
          "off",
          "1)",
          "2.",
          "#1",
          "#",
          "//",
          "0:03.5",
          "12:00:01",
          "23:59:59",
          "00:00:01",
          "s",
          "time",
          "lux",
          "\"",
          "0,3",
          "1,234",
          "é",
          ":",
          "1:",
          "-",
          "..",
          "1e308",
          "189345600000",
          "lampwise-log: 1\n",
          "fixture:",
          "fixture north-07",
          "north-07:",
          "North wall",
          "window: 0 to 60 s",
          "target: none",
          "target: 3 to 4 s",
          "event: door at 3 s",
          "covered: 1 to 2 s",
          "saw: fast blinks",
          "saw: 0 blinks",
          "to",
          "on 3.10 off 3.22",
          "blink",
          "blink at",
          "flash 3",
          "lap 1",
          "laps",
          "lamp",
          "nr;time",
          "1m02.5s",
          "350ms",
          "min",
          "1'02\"5",
          "12:01",
          "12:02",
          "pm",
          "12:59:59",
          "1:00:01",
          "0:03,5",
          "00:03.20 00:03.20",
          "00:03.10 00:06.30",
          "-0.3",
          "1/2/2030",
          "2030-01-01T08:00:00Z",
          "1/2/2030 1:05:06 PM",
          "13/2/2030 08:00:00.5",
          "(0.1, 2)",
          "\"(0.1, 2)\"",
          "1 234,5",
          "1,234",
          "1'250.0",
          "12.4 lx",
          "sep=;",
          "time,lux",
          "fps=30",
          "# rate: 30 Hz",
          "frame",
          "sensor",
          "light",
          "1893456000000000000",
          "9999999999999999999",
          "47484.333",
          "-1",
          "\u2022",
          "\u2212",
          "\u2009",
          "\uFF11\uFF12",
          "\uD83D\uDCA1");
  private static final List<String> SIGNS =
      List.of(" ", ",", ";", "\t", "\n", "\r\n", "\r", ", ", "", "\n\n", ",\t");

  @Property(tries = 2000)
  void anyWordsAndOptionsGiveARecordingOrATypedError(
      @ForAll("texts") String text, @ForAll("options") ReadOptions options) {
    assertTotal(text.getBytes(UTF_8), options);
  }

  @Property
  void anyBytesGiveARecordingOrATypedError(
      @ForAll byte[] content, @ForAll("options") ReadOptions options) {
    assertTotal(content, options);
  }

  @Property(tries = 1000)
  void anyHurtFileGivesARecordingOrATypedError(
      @ForAll("hurtFiles") byte[] content, @ForAll("options") ReadOptions options) {
    assertTotal(content, options);
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.3 ",
        "1. ",
        "1) ",
        "#1 ",
        "1, ",
        "1,2 ",
        "on 1 ",
        "+1 ",
        "\"",
        "\"\" ",
        "\"1\",",
        ":",
        ",",
        ";",
        " ",
        "\t",
        "\n",
        "\r",
        "#",
        "1\n",
        "1,2\n",
        "9 8\n",
        "\"1\",2\n",
        "on\n",
        "a_",
        "# time s\n",
        "blink ",
        "lap 1 ",
        "blink 3 4 ",
        "1m02s ",
        "1'02\"5 ",
        "- ",
        "1 min ",
        "1 pm ",
        "x:\n",
        "north-07: 1 ",
        "North\n",
        "North\n1 2\n",
        "a: 1 2\n",
        "3.2 3.2\n",
        "12:01\n",
        "0:03,5 ",
        "lampwise-log: 1\n",
        "\u2022 1\n",
        "\u2212",
        "-1\n",
        "laps 2 1 ",
        "1;2,5\n",
        "12:00:01\n",
        "23:59:59 00:00:01 ",
        "1:2:3,4\n"
      })
  void longTextsTakeLinearTime(String part) {
    assertLinear(part.repeat(1_000_000 / part.length()));
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "x\n",
        "on 1\n",
        "on 1 off 2\n",
        "fixture:\n",
        "fixture: a\non 1\n",
        "window: 1\n",
        "target: 1 to 2 s\n",
        "saw: fast blinks\n",
        "fixture: b\nsaw: 1 blink every 3 s\n",
        "on ",
        "\n",
        "#\n",
        ": ",
        "window: 0 to 3 s\non 5\nfixture:\n"
      })
  void longLogsTakeLinearTime(String part) {
    assertLinear("lampwise-log: 1\n" + part.repeat(1_000_000 / part.length()));
  }

  private static void assertLinear(String text) {
    // A quadratic walk over a million characters takes minutes.
    byte[] content = text.getBytes(UTF_8);
    for (ReadOptions options :
        List.of(
            said().options(),
            said().as(ReadOptions.Shape.LEVELS).options(),
            said().as(ReadOptions.Shape.GAPS).options())) {
      assertTimeoutPreemptively(Duration.ofSeconds(60), () -> assertTotal(content, options));
    }
  }

  private static void assertTotal(byte[] content, ReadOptions options) {
    assertDoesNotThrow(
        () -> {
          try {
            List<Recording> recordings = RecordingReader.read("x", content, options);
            assertFalse(recordings.isEmpty());
          } catch (FileException e) {
            for (FileFault fault : e.faults()) {
              assertFalse(fault.message().contains("\n"), fault::message);
              assertTrue(fault.line() >= 0 && fault.column() >= 0, fault::toString);
            }
          } catch (OptionException e) {
            assertFalse(e.getMessage().contains("\n"), e::getMessage);
          }
        });
  }

  @Property(tries = 1000)
  void anyWordsBelowTheHeadOfALogGiveARecordingOrATypedError(
      @ForAll("texts") String text, @ForAll("options") ReadOptions options) {
    assertTotal(("lampwise-log: 1\n" + text).getBytes(UTF_8), options);
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> piece =
        Combinators.combine(Arbitraries.of(WORDS), Arbitraries.of(SIGNS))
            .as((word, sign) -> word + sign);
    return piece.list().ofMaxSize(30).map(pieces -> String.join("", pieces));
  }

  @Provide
  Arbitrary<byte[]> hurtFiles() {
    Arbitrary<byte[]> files =
        Arbitraries.of(
                "recordings/cells-low-taps.txt",
                "recordings/cells-low-clock.txt",
                "recordings/cells-low-on-off.txt",
                "recordings/window-covered-gaps.txt",
                "recordings/cells-low-meter-ms.csv",
                "logs/format-1.log",
                "pastes/laps-and-splits.txt",
                "pastes/laps-alone-newest-first.txt",
                "pastes/fixtures-under-a-title.txt",
                "pastes/minutes-curly-primes.txt",
                "pastes/clock-am-pm.txt",
                "pastes/words-flash-number.txt")
            .map(file -> Testdata.bytes("", file));
    Arbitrary<List<Integer>> places = Arbitraries.integers().between(0, 9999).list().ofMaxSize(6);
    Arbitrary<List<Byte>> values =
        Arbitraries.bytes().between((byte) 9, (byte) 126).list().ofSize(6);
    Arbitrary<Integer> lengths = Arbitraries.integers().between(0, 100);
    return Combinators.combine(files, places, values, lengths)
        .as(
            (file, at, value, percent) -> {
              byte[] hurt = java.util.Arrays.copyOf(file, file.length * percent / 100);
              for (int i = 0; i < at.size() && hurt.length > 0; i++) {
                hurt[at.get(i) % hurt.length] = value.get(i);
              }
              return hurt;
            });
  }

  @Provide
  Arbitrary<ReadOptions> options() {
    Arbitrary<Optional<String>> time =
        Arbitraries.of("0", "3", "60", "-1", "12:00:02", "0:03", "soon", "NaN", "1e300", "")
            .optional(0.2);
    Arbitrary<Optional<String>> column =
        Arbitraries.of("1", "2", "time", "lux", "0", "99", "", "1e99").optional(0.15);
    Arbitrary<List<String>> ranges =
        Arbitraries.of("none", "all", "0..3", "1..", "..", "5..1", "12:00:01..12:00:05", "x")
            .list()
            .ofMaxSize(1);
    Arbitrary<List<String>> events =
        Arbitraries.of("flush@3", "flush", "@", "door@", "door@12:00:05", "x@1")
            .list()
            .ofMaxSize(1);
    return Combinators.combine(
            Arbitraries.of(ReadOptions.Shape.class).optional(0.4),
            Combinators.combine(column, column).as(List::of),
            Arbitraries.of(ReadOptions.Unit.class).optional(0.3),
            Combinators.combine(time, time).as(List::of),
            ranges,
            events,
            ranges,
            Combinators.combine(
                    Arbitraries.of(Double.NaN, Double.NaN, 5.0, 50.0),
                    Arbitraries.of(ReadOptions.Dates.class).optional(0.3),
                    Arbitraries.of(ReadOptions.Decimal.class).optional(0.3))
                .as(ReadOptions.Writing::new))
        .as(
            (shape, columns, unit, window, targets, marks, covered, writing) ->
                new ReadOptions(
                    shape,
                    columns.get(0),
                    columns.get(1),
                    unit,
                    LightCurve.Lit.DARKER,
                    window.get(0),
                    window.get(1),
                    targets,
                    marks,
                    covered,
                    writing));
  }
}
