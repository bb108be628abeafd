package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static lampwise.file.Readings.said;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

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
          "189345600000");
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

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.3 ", "1. ", "1) ", "#1 ", "1, ", "1,2 ", "on 1 ", "+1 ", "\"", "\"\" ", "\"1\",", ":",
            ",",
        ";", " ", "\t", "\n", "\r", "#", "1\n", "1,2\n", "9 8\n", "\"1\",2\n", "on\n", "a_",
            "# time s\n",
        "1;2,5\n", "12:00:01\n", "23:59:59 00:00:01 ", "1:2:3,4\n"
      })
  void longTextsTakeLinearTime(String part) {
    // A quadratic walk over a million characters takes minutes.
    byte[] content = part.repeat(1_000_000 / part.length()).getBytes(UTF_8);
    for (ReadOptions options :
        List.of(
            said().options(),
            said().as(ReadOptions.Shape.LEVELS).options(),
            said().as(ReadOptions.Shape.GAPS).options())) {
      assertTimeoutPreemptively(Duration.ofSeconds(10), () -> assertTotal(content, options));
    }
  }

  private static void assertTotal(byte[] content, ReadOptions options) {
    assertDoesNotThrow(
        () -> {
          try {
            List<Recording> recordings = RecordingReader.read("x", content, options);
            assertFalse(recordings.isEmpty());
          } catch (FileException e) {
            assertFalse(e.getMessage().contains("\n"), e::getMessage);
          } catch (OptionException e) {
            assertFalse(e.getMessage().contains("\n"), e::getMessage);
          }
        });
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
                "cells-low-taps.txt",
                "cells-low-clock.txt",
                "cells-low-on-off.txt",
                "window-covered-gaps.txt",
                "cells-low-meter-ms.csv")
            .map(file -> Testdata.bytes("recordings", file));
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
            ranges)
        .as(
            (shape, columns, unit, window, targets, marks, covered) ->
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
                    covered));
  }
}
