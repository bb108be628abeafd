package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Window;
import lampwise.service.Complaint;
import lampwise.service.Finding;
import lampwise.service.Fixture;
import lampwise.service.Outcome;
import lampwise.service.Visit;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cells of lists and logs, there and back, and what a person says. */
class FileCellsTest {
  private static Fixture fixture(String id, String place, boolean only) {
    return new Fixture(
        id,
        place,
        FixtureKind.URINAL,
        only ? Optional.of(Power.CELLS) : Optional.empty(),
        only ? "4 x LR6" : "",
        "",
        "",
        "",
        only,
        only ? "2026-01-02" : "",
        "",
        only ? Optional.of(Complaint.DEAD) : Optional.empty());
  }

  @Test
  void aListOfFixturesComesBackAsItWasWritten() throws FileException {
    List<Fixture> fixtures =
        List.of(
            fixture("=1", "Hall, left", true),
            fixture("'x", "\"North\"", false),
            fixture("-a", "'", false),
            fixture("'", "@b", false));
    String text = FixtureList.write(fixtures);
    assertEquals(fixtures, FixtureList.read("f.csv", text.getBytes(UTF_8)));
    String row = text.lines().skip(1).findFirst().orElse("");
    assertEquals("'=1,\"Hall, left\",urinal,cells,4 x LR6,,,,yes,2026-01-02,,dead", row);
    String typed = text.replace("''x", "'x");
    assertEquals("'x", FixtureList.read("f.csv", typed.getBytes(UTF_8)).get(1).id());
  }

  @Test
  void textsComeBackFromTheirCell() {
    List<String> texts = List.of("a;b", "c\\", "d\ne", "=f", "'g", "h, i", "\\n");
    assertEquals(texts, CellText.texts(CellText.cell(texts)));
    for (String text : texts) {
      assertEquals(text, CellText.text(CellText.cell(text)));
      assertEquals(List.of(text), CellText.texts(CellText.cell(List.of(text))));
    }
    assertEquals("a;b", CellText.cell("a;b"));
    assertEquals("a\\;b; \\\\", CellText.cell(List.of("a;b", "\\")));
    assertEquals("\\r\\n", CellText.cell("\r\n"));
    assertEquals("'+1", CellText.cell("+1"));
    assertEquals("", CellText.cell(""));
    assertEquals("\\x", CellText.text("\\x"));
    assertEquals("\\", CellText.text("\\"));
    assertEquals(List.of("a", "b"), CellText.texts(" a ;; b;"));
  }

  private static Visit visit() {
    return new Visit(
        "2026-11-25T09:40",
        "north-07",
        "Hall",
        Optional.of(FixtureKind.URINAL),
        Optional.of(Complaint.DEAD),
        new Visit.Lamp(List.of("a.csv", "b.log"), "low", "power-low", OptionalDouble.of(0.97)),
        List.of(new Finding("bowl", "clear")),
        new Visit.Done("empty", List.of("renew"), List.of("cell set"), OptionalDouble.of(12.5)),
        List.of("60 psi"),
        List.of("58 psi"),
        Outcome.RESET_WATCH,
        "NN",
        "a note");
  }

  @Test
  void aVisitComesBackFromItsRow() throws VisitColumns.Fault {
    List<String> cells = VisitColumns.cells(7, 3, visit());
    assertEquals(visit(), VisitColumns.visit(cells));
    assertEquals(VisitColumns.NAMES.size(), cells.size());
    assertEquals(7, VisitColumns.row(cells, 0));
    List<String> unsaid = new ArrayList<>(cells);
    unsaid.set(VisitColumns.NAMES.indexOf("minutes"), "");
    unsaid.set(VisitColumns.NAMES.indexOf("probability"), "");
    assertEquals(OptionalDouble.empty(), VisitColumns.visit(unsaid).done().minutes());
    assertEquals(OptionalDouble.empty(), VisitColumns.visit(unsaid).lamp().probability());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "result | '' | result must be one of fixed @ reset, watch @ made safe @ handed over; found"
            + " \"\"",
        "result | done | result must be one of fixed @ reset, watch @ made safe @ handed over;"
            + " found \"done\"",
        "minutes | soon | minutes must be a number; found \"soon\"",
        "probability | 1.5 | a probability must be 0 to 1: OptionalDouble[1.5]",
        "findings | bowl | findings must be like override=runs; bowl=clear; found \"bowl\"",
        "findings | =clear | findings must be like override=runs; bowl=clear; found \"=clear\"",
        "findings | bowl= | findings must be like override=runs; bowl=clear; found \"bowl=\"",
      })
  void aSpoiledCellIsNamed(String column, String value, String message) {
    List<String> cells = new ArrayList<>(VisitColumns.cells(7, 0, visit()));
    cells.set(VisitColumns.NAMES.indexOf(column), value);
    VisitColumns.Fault fault =
        assertThrows(VisitColumns.Fault.class, () -> VisitColumns.visit(cells));
    assertEquals(message.replace('@', '|'), fault.getMessage());
  }

  @Test
  void whatWasSaidIsADescription() throws OptionException {
    ReadOptions watched = Readings.said().to("40").options();
    Description said = RecordingReader.described(" 3 blinks  every 7 to 9 s ", watched);
    assertEquals("3 blinks every 7 to 9 s", said.said());
    assertEquals(Optional.of(new Window(0, 40)), said.marks().window());
    assertEquals("what was said", said.origin().name());
    assertEquals("nothing", RecordingReader.described("nothing", watched).said());
    OptionException refused =
        assertThrows(OptionException.class, () -> RecordingReader.described("3 blnks", watched));
    assertEquals(
        "--saw: \"3 blnks\": column 3: \"blnks\" where \"blink\" or \"blinks\" was expected; try"
            + " \"3 blinks repeating\"",
        refused.getMessage());
  }

  @Test
  void aFileIsReadWhereItLies(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("taps.txt");
    Files.writeString(file, "0.3 3.5 6.5\n");
    BlinkLog log = (BlinkLog) RecordingReader.read("t", file, ReadOptions.none()).get(0);
    assertEquals("t", log.origin().name());
    assertEquals(3, log.blinks().size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"(1, 2)", "( 1 ,2 )"})
  void aPairInBracketsIsTwoCells(String cell) {
    assertEquals(List.of("1", "2"), Tuple.values(List.of(cell)));
    assertEquals(List.of("time of a", "a"), Tuple.names(List.of("a")));
    assertEquals(List.of("", ""), Tuple.values(List.of("")));
    assertEquals(List.of("x", ""), Tuple.values(List.of("x")));
    Row row =
        new Row() {
          @Override
          public String cell(int column) {
            return column == 1 ? cell : "";
          }

          @Override
          public boolean isBlank() {
            return cell.isEmpty();
          }
        };
    Tuple.Cells cells = new Tuple.Cells(row);
    assertEquals(
        List.of("", "", "1", "2"),
        List.of(cells.cell(0), cells.cell(1), cells.cell(2), cells.cell(3)));
    assertFalse(cells.isBlank());
  }

  @Test
  void limitsAreAList() throws FileException {
    String text = "lampwise-site: 1\ntitle: A\nlimits: 5\n";
    FileException fault =
        assertThrows(
            FileException.class,
            () -> SiteReader.read("s", text.getBytes(UTF_8), GuideText.read(GuideText.SMALL)));
    assertEquals(
        "s:3:9: limits must be a list of tables with of, at-most or at-least, and basis; found"
            + " \"5\"",
        fault.getMessage());
  }
}
