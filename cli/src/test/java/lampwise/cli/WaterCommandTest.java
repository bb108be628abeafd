package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterCommandTest {
  @TempDir private Path folder;

  private CommandRun water(String... words) {
    List<String> args = new ArrayList<>(List.of("water"));
    args.addAll(List.of(words));
    CommandRun run = CommandRun.Setting.in(folder).run("", args.toArray(String[]::new));
    run.outLines().forEach(line -> assertTrue(line.startsWith("{") || line.length() <= 80, line));
    return run;
  }

  @Test
  void theMeterOfTheExampleFailsItsMarking() {
    CommandRun run =
        water(
            "--kind",
            "water-closet",
            "--static",
            "65 psi",
            "--flowing",
            "38 psi",
            "--meter",
            "1234.5..1247.6 gal",
            "--flushes",
            "10",
            "--resolution",
            "0.1 gal",
            "--fixture-rated",
            "1.28 gal");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().startsWith("Volume: 1.31 gal a flush, give or take 0.0241 (k = 2)"));
    assertTrue(
        run.out().contains("  fail         1.31 gal, at most 1.28 gal: marking on the fixture"),
        run.out());
    assertTrue(run.out().contains("at least 45 psi (blowout bowl): IPC table 604.3, seen"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--loss=50 mL/min --price=4.5 EUR per 1000 L | lost in a year: 26280 L (118.26 EUR)",
        "--loss=0.5 gpm | lost in a year: 262800 gal",
        "--hole=3 mm --static=4 bar | through the hole: 7.44 L/min (sharp hole, Cd = 0.62)",
        "--flow=25 gpm --flowing=35 psi --at=15 psi | flow at that pressure: 16.4 gpm (",
        "--wsfu=96 | demand: 251 L/min (",
        "--static=60 psi --flow=25 gpm --pipe=1.265 in --length=60 ft --height=30 ft"
            + "| residual pressure: 43.5 psi (",
        "--list --kind=faucet | flow at most 0.5 gpm: IPC table 604.4, public, seen"
      })
  void whatIsComputed(String options, String expected) {
    CommandRun run = water(options.strip().split(" (?=--)"));
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().replaceAll(" +", " ").contains(expected), run.out());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--json | nothing to check or to compute; give --kind and what was measured",
        "--kind=bath | --kind takes water-closet, urinal, faucet, not bath",
        "--kind=urinal --static=65 | --static takes a number and one of kPa, psi, bar, not 65",
        "--kind=urinal --static=65 L | --static takes a number and one of kPa, psi, bar, not 65 L",
        "--kind=urinal --basis=nobody | --basis: there is no nobody; known: UPC 608.2; ",
        "--kind=urinal --bowl=round | --bowl takes siphonic or blowout, not round",
        "--kind=urinal --meter=1..2 L | --meter needs --flushes",
        "--kind=urinal --meter=2..1 L --flushes=1 --resolution=1 L | the meter's readings must rise",
        "--kind=urinal --meter=1..2 L --flushes=0 --resolution=1 L | a volume needs a flush or more",
        "--kind=urinal --meter=1..2 L --flushes=2 | --meter needs --resolution",
        "--kind=urinal --meter=much | --meter takes two readings and a unit, such as",
        "--kind=urinal --volume=1 L --timed=3 s | a volume is measured by one of",
        "--kind=urinal --timed=3 s | --timed needs --flow",
        "--loss=1 L/min --hole=1 mm | a loss is given by one of --loss, --hole",
        "--loss=1 L/min --price=cheap | --price takes an amount, a currency and a volume",
        "--wsfu=3 | the demand table runs from 5 to 2000 fixture units, not 3.0",
        "--hole=1 mm | --hole needs --static",
        "--pipe=1 in --flow=2 gpm | --pipe needs --length",
        "--flow=1 gpm --flowing=0 psi --at=3 psi | a flow can be carried over from a pressure over 0"
      })
  void whatIsWrongIsSaidInOneLine(String options, String message) {
    CommandRun run = water(options.strip().split(" (?=--)"));
    assertEquals(2, run.status());
    assertEquals(1, run.errLines().size(), run.err());
    assertTrue(run.err().startsWith(message), run.err());
    assertEquals("", run.out());
  }

  @Test
  void aSiteHasItsOwnLimitsUnitsAndPrice() throws Exception {
    Files.writeString(
        folder.resolve("site.yaml"),
        """
        lampwise-site: 1
        title: Ferry terminal
        water: {price: 5, currency: EUR, per: 1000 L}
        units: {pressure: bar, volume: L, flow: L/min}
        limits:
          - {of: static-pressure, at-most: 5 bar, basis: harbour rules}
        """);
    CommandRun run =
        water("--kind", "urinal", "--static", "6 bar", "--loss", "1 L/min", "--site", "site.yaml");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("fail         6 bar, at most 5 bar: harbour rules, site"));
    assertFalse(run.out().contains("UPC"), run.out());
    assertTrue(run.out().contains("(2628 EUR)"), run.out());
  }

  @Test
  void jsonHoldsToItsSchema() {
    CommandRun run =
        water(
            "--kind",
            "urinal",
            "--volume",
            "1.8 L",
            "--volume",
            "2.0 L",
            "--loss",
            "1 L/min",
            "--json");
    assertEquals(0, run.status(), run.err());
    assertEquals("", JsonSchema.WATER.faults(run.out()), run.out());
    assertTrue(run.out().contains("\"verdict\":\"not decided\""), run.out());
    CommandRun loss = water("--loss", "1 L/min", "--json");
    assertEquals("", JsonSchema.WATER.faults(loss.out()), loss.out());
    assertFalse(JsonSchema.WATER.faults(loss.out().replace("\"computed\"", "\"c\"")).isEmpty());
  }
}
