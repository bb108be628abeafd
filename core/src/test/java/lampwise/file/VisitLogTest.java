package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import lampwise.Testdata;
import lampwise.service.Complaint;
import lampwise.service.Finding;
import lampwise.service.Outcome;
import lampwise.service.Visit;
import lampwise.sheet.FixtureKind;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VisitLogTest {
  @TempDir private Path folder;

  private Path log() {
    return folder.resolve("visits.csv");
  }

  private static Visit visit(String fixture, String note) {
    return new Visit(
        "2026-11-25T09:40",
        fixture,
        "Pier hall, east",
        Optional.of(FixtureKind.WATER_CLOSET),
        Optional.of(Complaint.WEAK),
        new Visit.Lamp(
            List.of("n07.log", "n07 hand.csv"), "cells-low", "power-low", OptionalDouble.of(0.997)),
        List.of(new Finding("bowl", "clear"), new Finding("override", "weak")),
        new Visit.Done(
            "diaphragm-worn",
            List.of("diaphragm-service"),
            List.of("diaphragm kit, 6 L"),
            OptionalDouble.of(25)),
        List.of("static 410 kPa", "volume 3.1 L"),
        List.of("volume 6.0 L"),
        Outcome.FIXED,
        "K. Orth",
        note);
  }

  @Test
  void whatIsAddedIsReadBackInOrder() throws Exception {
    VisitLog.Added first = VisitLog.append(log(), visit("n07", "quiet"));
    VisitLog.Added second = VisitLog.append(log(), visit("n08", "two\r\nlines, \"quoted\""));
    assertEquals(List.of(1, 2), List.of(first.row(), second.row()));
    assertEquals(Optional.empty(), second.setAside());
    assertEquals(
        List.of(visit("n07", "quiet"), visit("n08", "two\r\nlines, \"quoted\"")),
        VisitLog.read(log()).visits());
  }

  @Test
  void aCorrectionStandsForTheRowItNames() throws Exception {
    VisitLog.append(log(), visit("n07", "wrong"));
    VisitLog.append(log(), visit("n08", "right"));
    assertEquals(3, VisitLog.correct(log(), 1, visit("n07", "better")).row());
    assertEquals(4, VisitLog.correct(log(), 3, visit("n07", "best")).row());
    VisitRows read = VisitLog.read(log());
    assertEquals(List.of(visit("n07", "best"), visit("n08", "right")), read.visits());
    assertEquals(List.of(1, 2), List.copyOf(read.byRow().keySet()));
    assertTrue(Files.readString(log()).contains("wrong"), "a row was taken away");
    byte[] before = Files.readAllBytes(log());
    for (int row : new int[] {0, 5, -1}) {
      FileException e =
          assertThrows(FileException.class, () -> VisitLog.correct(log(), row, visit("n", "x")));
      assertEquals(log() + ": has no row " + row + " to correct", e.getMessage());
    }
    assertArrayEquals(before, Files.readAllBytes(log()));
  }

  @Test
  void anUnfinishedRowIsSetAsideWholeAndNeverJoined() throws Exception {
    VisitLog.append(log(), visit("n07", "first"));
    byte[] one = Files.readAllBytes(log());
    VisitLog.append(log(), visit("n08", "several\nlines"));
    byte[] two = Files.readAllBytes(log());
    for (int cut = one.length; cut < two.length; cut++) {
      Files.write(log(), Arrays.copyOf(two, cut));
      VisitRows read = VisitLog.read(log());
      assertEquals(List.of(visit("n07", "first")), read.visits());
      assertEquals(cut - one.length, read.tornBytes());
      VisitLog.Added added = VisitLog.append(log(), visit("n09", "next"));
      assertEquals(cut > one.length, added.setAside().isPresent());
      assertEquals(
          List.of(visit("n07", "first"), visit("n09", "next")), VisitLog.read(log()).visits());
      if (added.setAside().isPresent()) {
        assertArrayEquals(
            Arrays.copyOfRange(two, one.length, cut), Files.readAllBytes(added.setAside().get()));
      }
    }
    assertTrue(Files.exists(folder.resolve("visits.csv.torn-1")));
    assertTrue(Files.exists(folder.resolve("visits.csv.torn-2")));
  }

  @Test
  void aHeaderThatWasCutOffIsBegunAnew() throws Exception {
    VisitLog.append(log(), visit("n07", "first"));
    byte[] one = Files.readAllBytes(log());
    int header = new String(one, UTF_8).indexOf('\n') + 1 + 2;
    for (int cut = 0; cut < header; cut++) {
      Files.write(log(), Arrays.copyOf(one, cut));
      assertEquals(List.of(), VisitLog.read(log()).visits());
      VisitLog.append(log(), visit("n07", "first"));
      assertArrayEquals(one, Files.readAllBytes(log()));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "'=1", "''", "=", "-", "a=1"})
  void noCellStartsAFormula(String text) throws Exception {
    VisitLog.append(log(), visit(text.isBlank() ? "x" : text, text));
    assertEquals(visit(text, text), VisitLog.read(log()).visits().get(0));
    for (String cell : CsvRows.of(Files.readString(log()).substring(1)).rows().get(1).cells()) {
      assertTrue(cell.isEmpty() || "=+-@\t\r\n".indexOf(cell.charAt(0)) < 0, cell);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "6 L    | 1:1: is no visit log; its first line must be a header",
        "a,b\\n | 1:1: is no visit log, or its columns were changed",
        "lampwise-visits-2,x\\n | 1:1: is a visit log of a version that is not known here",
      })
  void whatIsNoVisitLogIsNotWrittenTo(String content, String message) throws Exception {
    Files.writeString(log(), content.replace("\\n", "\n"));
    FileException read = assertThrows(FileException.class, () -> VisitLog.read(log()));
    FileException written =
        assertThrows(FileException.class, () -> VisitLog.append(log(), visit("n", "")));
    assertEquals(read.getMessage(), written.getMessage());
    assertTrue(read.getMessage().contains(":" + message), read.getMessage());
    assertEquals(content.replace("\\n", "\n"), Files.readString(log()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "fixed,      | mended,       | 3:19: result must be one of fixed | reset, watch |",
        "0.997       | sure          | 3:11: probability must be a number; found \"sure\"",
        "T09:40      | T25:40        | 3: a visit's time must be like 2026-11-25T09:40",
        "n08         | ~~            | 3: a visit needs the fixture it was made at",
        "bowl=clear  | bowl          | 3:12: findings must be like override=runs",
        "weak,       | sad,          | 3:7: complaint must be one of dead | phantom",
        "2,,2026     | 7,,2026       | 3:1: rows must be counted: expected 2",
        "2,,2026     | 2,9,2026      | 3:2: there is no row 9 before this one",
        "2,,2026     | x,,2026       | 3:1: lampwise-visits-1 must be the number of a row",
        "K. Orth     | \"K. Orth     | 3: a quote is opened in this row and never closed",
        "K. Orth     | K.,Orth       | 3: a row must have 21 cells; found 22",
      })
  void aRowThatWasSpoiledIsNamedAndNothingIsAdded(String found, String spoiled, String message)
      throws Exception {
    VisitLog.append(log(), visit("n07", ""));
    VisitLog.append(log(), visit("n08", ""));
    String text = Files.readString(log());
    int second = text.lastIndexOf("\r\n2,");
    assertTrue(text.substring(second).contains(found), text);
    Files.writeString(
        log(), text.substring(0, second) + text.substring(second).replace(found, spoiled));
    byte[] before = Files.readAllBytes(log());
    FileException e =
        assertThrows(FileException.class, () -> VisitLog.append(log(), visit("n", "")));
    assertTrue(e.getMessage().startsWith(log() + ":" + message), e.getMessage());
    assertArrayEquals(before, Files.readAllBytes(log()));
  }

  @Test
  void aQuoteThatIsNotClosedSetsNoLaterRowAside() throws Exception {
    for (String fixture : List.of("n07", "n08", "n09")) {
      VisitLog.append(log(), visit(fixture, ""));
    }
    String text = Files.readString(log());
    int second = text.indexOf("\r\n2,");
    String hurt = text.substring(0, second) + text.substring(second).replaceFirst("K", "\"K");
    for (String end : List.of("", "4,,2026")) {
      Files.writeString(log(), hurt + end);
      FileException e =
          assertThrows(FileException.class, () -> VisitLog.append(log(), visit("n", "")));
      assertEquals(log() + ":3: a quote is opened in this row and never closed", e.getMessage());
      assertEquals(hurt + end, Files.readString(log()));
    }
  }

  @Test
  void aLineThatASpreadsheetPutIntoACellIsRead() throws Exception {
    VisitLog.append(log(), visit("n07", "one"));
    Files.writeString(log(), Files.readString(log()).replace("one", "\"one\ntwo\""));
    VisitLog.append(log(), visit("n08", "three"));
    assertEquals(
        List.of(visit("n07", "one\ntwo"), visit("n08", "three")), VisitLog.read(log()).visits());
  }

  @Test
  void aFaultIsOneLineWhateverItQuotes() throws Exception {
    VisitLog.append(log(), visit("n07", ""));
    Files.writeString(log(), Files.readString(log()).replace(",weak,", ",\"we\nak\","));
    FileException e = assertThrows(FileException.class, () -> VisitLog.read(log()));
    assertEquals(1, e.getMessage().lines().count(), e.getMessage());
    assertTrue(e.getMessage().endsWith("; found \"we ak\""), e.getMessage());
  }

  @Test
  void aFolderThatIsNotThereIsSaidInOneLine() {
    Path nowhere = folder.resolve("no/visits.csv");
    FileException e =
        assertThrows(FileException.class, () -> VisitLog.append(nowhere, visit("n", "")));
    assertEquals(
        nowhere + ": could not be written, nothing was added: there is no such file or folder",
        e.getMessage());
  }

  @Test
  void theFirstVersionIsReadForEver() throws Exception {
    assertEquals(
        List.of(visit("n07", "=quiet"), visit("n08", "")),
        VisitLog.read(Testdata.path("visits", "version-1.csv")).visits());
  }

  @Test
  void manyThreadsLoseNothing() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(4);
    List<Callable<Integer>> jobs = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Visit visit = visit("n" + i, "");
      jobs.add(() -> VisitLog.append(log(), visit).row());
    }
    List<Integer> rows = new ArrayList<>();
    for (Future<Integer> row : threads.invokeAll(jobs)) {
      rows.add(row.get());
    }
    threads.shutdown();
    assertEquals(IntStream.rangeClosed(1, 40).boxed().toList(), rows.stream().sorted().toList());
    assertEquals(40, VisitLog.read(log()).visits().size());
  }

  @Property(tries = 200)
  void anyVisitComesBackAsItWas(@ForAll("visits") Visit visit) throws Exception {
    Path file = Files.createTempFile("visits", ".csv");
    try {
      VisitLog.append(file, visit);
      VisitLog.append(file, visit);
      assertEquals(List.of(visit, visit), VisitLog.read(file).visits());
      assertFalse(Files.readString(file).contains("\u0000"));
    } finally {
      Files.delete(file);
    }
  }

  @Provide
  Arbitrary<Visit> visits() {
    Arbitrary<String> text =
        Arbitraries.strings().withChars("abc=+-@;,\\'\"\t\r\n| \u00e9\u4e8c\uFEFF").ofMaxLength(12);
    Arbitrary<List<String>> texts = text.list().ofMaxSize(3);
    return Combinators.combine(
            text,
            texts,
            texts,
            Arbitraries.of(Outcome.values()),
            Arbitraries.of(Complaint.values()).optional(),
            Arbitraries.integers().between(0, 1_000_000))
        .as(
            (one, some, others, outcome, complaint, number) ->
                new Visit(
                    "2024-02-29T23:59:07",
                    "f" + one,
                    one,
                    Optional.empty(),
                    complaint,
                    new Visit.Lamp(some, one, "", OptionalDouble.of(number / 1e6)),
                    List.of(new Finding("a", "b")),
                    new Visit.Done(one, others, some, OptionalDouble.of(number / 100.0)),
                    some,
                    others,
                    outcome,
                    one,
                    one));
  }
}
