package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Complaint;
import lampwise.service.Fixture;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixtureListTest {
  private static List<Fixture> read(String text) throws FileException {
    return FixtureList.read("f.csv", text.getBytes(UTF_8));
  }

  private static String faults(String text) {
    return assertThrows(FileException.class, () -> read(text)).getMessage();
  }

  @Test
  void readsEveryColumnInAnyOrder() throws FileException {
    String text =
        "\uFEFFkind,id,place,power,cells,sheet,valve-rating,fixture-rating,only-accessible,"
            + "last-cells,riser-valve,complaint\r\n"
            + "urinal,n-07,\"Hall, \"\"east\"\"\",cells,4 x LR6,a/u.sheet.yaml,1.9 L,0.5 gal,yes,"
            + "2026-03-09,shaft,phantom\r\n";
    assertEquals(
        List.of(
            new Fixture(
                "n-07",
                "Hall, \"east\"",
                FixtureKind.URINAL,
                Optional.of(Power.CELLS),
                "4 x LR6",
                "a/u.sheet.yaml",
                "1.9 L",
                "0.5 gal",
                true,
                "2026-03-09",
                "shaft",
                Optional.of(Complaint.PHANTOM))),
        read(text));
  }

  @Test
  void idAndKindAreEnough() throws FileException {
    Fixture fixture = read("id,kind\nA 1,faucet").get(0);
    assertEquals("A 1", fixture.id());
    assertEquals("a 1", fixture.key());
    assertEquals(Optional.empty(), fixture.power());
    assertEquals("", fixture.lastCells());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "id,kind\\nx,sink | f.csv:2:2: kind must be one of water-closet, urinal, faucet, not \"sink\"",
        "id,kind\\n,urinal | f.csv:2:1: a fixture needs an id",
        "id,kind\\nx, | f.csv:2:2: a fixture needs a kind: water-closet, urinal or faucet",
        "id,kind\\nx | f.csv:2: a row must have 2 cells as the header has; found 1",
        "id,kind\\nx,urinal\\n\\nX,urinal | f.csv:4:1: the id X stands in line 2 already",
        "kind,id,last-cells\\nurinal,x,2026-02-30 | f.csv:2:3: last-cells must be a day like"
            + " 2026-03-09, not \"2026-02-30\"",
        "id,kind,only-accessible\\nx,urinal,maybe | f.csv:2:3: only-accessible must be yes or no,"
            + " not \"maybe\"",
        "id,kind,valve-rating\\nx,urinal,4.8 | f.csv:2:3: valve-rating must be a number and one of"
            + " L, mL, gal, L/min, L/s, gpm, such as 4.8 L, not \"4.8\"",
        "id,kind,id\\nx,urinal,y | f.csv:1:3: the column id doubles",
        "id\\nx | f.csv:1: the column kind is missing",
        "id,kind\\n | f.csv:1: names no fixture; expected a row for each",
        "id,kind\\nx,\"urinal\\n | f.csv:2: a quote is opened in this row and never closed",
      })
  void sayWhereAFaultIs(String text, String fault) {
    assertEquals(fault, faults(text.replace("\\n", "\n")));
  }

  @Test
  void allFaultsAreToldInOneGo() {
    String[] lines = faults("id,kind,power\nx,sink,coal\n,urinal,cells\n").split("\n");
    assertEquals(3, lines.length, String.join("\n", lines));
  }

  @Test
  void semicolonsAreNamed() {
    String fault = faults("id;kind\nx;urinal\n");
    assertEquals(true, fault.contains("parted by commas"), fault);
  }

  @Provide
  Arbitrary<Fixture> fixtures() {
    Arbitrary<String> text =
        Arbitraries.strings()
            .withChars("abzAZ09 ,;\"'=+-@<>&\\/äß\u20ac")
            .ofMaxLength(12)
            .map(String::strip);
    Arbitrary<String> ratings = Arbitraries.of("", "4.8 L", "1.28 gal", "0.5 gpm", "6 L/min");
    Arbitrary<String> days = Arbitraries.of("", "2024-02-29", "2026-12-31");
    return Combinators.combine(
            Combinators.combine(text.filter(id -> !id.isEmpty()), text, text)
                .as((id, place, riser) -> List.of(id, place, riser)),
            Arbitraries.of(FixtureKind.values()),
            Arbitraries.of(Power.values()).optional(),
            text,
            ratings,
            days,
            Arbitraries.of(true, false),
            Arbitraries.of(Complaint.values()).optional())
        .as(
            (texts, kind, power, cells, rating, day, only, complaint) ->
                new Fixture(
                    texts.get(0),
                    texts.get(1),
                    kind,
                    power,
                    cells,
                    texts.get(1),
                    rating,
                    rating,
                    only,
                    day,
                    texts.get(2),
                    complaint));
  }

  @Property(tries = 300)
  void whatWasWrittenIsReadAgain(@ForAll("several") List<Fixture> fixtures) throws FileException {
    String text = FixtureList.write(fixtures);
    assertEquals(fixtures, read(text), text);
  }

  @Provide
  Arbitrary<List<Fixture>> several() {
    return fixtures()
        .list()
        .ofMinSize(1)
        .ofMaxSize(4)
        .map(
            list -> {
              Map<String, Fixture> unlike = new LinkedHashMap<>();
              list.forEach(fixture -> unlike.putIfAbsent(fixture.key(), fixture));
              return List.copyOf(unlike.values());
            });
  }
}
