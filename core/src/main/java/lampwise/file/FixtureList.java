package lampwise.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lampwise.service.Complaint;
import lampwise.service.Fixture;
import lampwise.service.GuideException;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * Reads and writes the fixtures of a site: comma-separated values (RFC 4180) in UTF-8, with a
 * header. The columns may stand in any order; {@code id} and {@code kind} must be there. A cell
 * that would start a formula in a spreadsheet has an apostrophe before it.
 */
public final class FixtureList {
  /** The columns, in the order in which they are written. */
  public static final List<String> COLUMNS =
      List.of(
          "id",
          "place",
          "kind",
          "power",
          "cells",
          "sheet",
          "valve-rating",
          "fixture-rating",
          "only-accessible",
          "last-cells",
          "riser-valve",
          "complaint");

  private static final List<String> NEEDED = List.of("id", "kind");
  private static final List<String> RATED_IN = List.of("L", "mL", "gal", "L/min", "L/s", "gpm");
  private static final String GUARDED = "=+-@\t'";

  private FixtureList() {}

  /**
   * Reads a list.
   *
   * @param name the file's name, for faults
   * @param content its bytes
   * @return the fixtures in the file's order, one or more
   * @throws FileException with every fault: its line, and as its column the number of the cell
   */
  public static List<Fixture> read(String name, byte[] content) throws FileException {
    String text = new String(content, StandardCharsets.UTF_8);
    String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
    CsvRows split = CsvRows.of(bare.endsWith("\n") ? bare : bare + "\n");
    if (split.open() > 0) {
      throw new FileException(
          name, split.open(), 0, "a quote is opened in this row and never closed");
    }
    if (split.rows().isEmpty()) {
      throw new FileException(name, 1, 0, "is empty; expected a header such as " + header());
    }
    Reader reader = new Reader(name);
    reader.takeHeader(split.rows().get(0));
    for (CsvRows.Line row : split.rows().subList(1, split.rows().size())) {
      reader.take(row);
    }
    if (reader.faults.isEmpty() && reader.fixtures.isEmpty()) {
      throw new FileException(name, 1, 0, "names no fixture; expected a row for each");
    }
    if (!reader.faults.isEmpty()) {
      throw new FileException(reader.faults);
    }
    return List.copyOf(reader.fixtures);
  }

  private static String header() {
    return String.join(",", COLUMNS);
  }

  /**
   * Writes a list.
   *
   * @param fixtures the fixtures
   * @return the file's text; reading it gives the same fixtures
   */
  public static String write(List<Fixture> fixtures) {
    StringBuilder text = new StringBuilder(CsvRows.text(COLUMNS));
    for (Fixture fixture : fixtures) {
      List<String> cells =
          List.of(
              fixture.id(),
              fixture.place(),
              fixture.kind().word(),
              fixture.power().map(Power::word).orElse(""),
              fixture.cells(),
              fixture.sheet(),
              fixture.valveRating(),
              fixture.fixtureRating(),
              fixture.onlyAccessible() ? "yes" : "no",
              fixture.lastCells(),
              fixture.riserValve(),
              fixture.complaint().map(Complaint::word).orElse(""));
      text.append(CsvRows.text(cells.stream().map(FixtureList::guarded).toList()));
    }
    return text.toString();
  }

  private static String guarded(String text) {
    return !text.isEmpty() && GUARDED.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }

  private static String bare(String cell) {
    boolean guard =
        cell.length() > 1 && cell.charAt(0) == '\'' && GUARDED.indexOf(cell.charAt(1)) >= 0;
    return guard ? cell.substring(1) : cell;
  }

  /** Reads row after row and keeps the faults. */
  private static final class Reader {
    private final String name;
    private final List<FileFault> faults = new ArrayList<>();
    private final List<Fixture> fixtures = new ArrayList<>();
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final Map<String, Integer> lines = new HashMap<>();
    private int width;
    private CsvRows.Line row = new CsvRows.Line(1, List.of());

    Reader(String name) {
      this.name = name;
    }

    private void fault(String column, String message) {
      int cell = columns.getOrDefault(column, -1) + 1;
      faults.add(new FileFault(name, row.line(), cell, message));
    }

    void takeHeader(CsvRows.Line head) throws FileException {
      width = head.cells().size();
      for (int i = 0; i < width; i++) {
        String column = head.cells().get(i).strip();
        if (!COLUMNS.contains(column)) {
          faults.add(
              new FileFault(
                  name,
                  head.line(),
                  i + 1,
                  "unknown column \""
                      + column
                      + "\"; expected some of "
                      + header()
                      + ", parted by commas"));
        } else if (columns.putIfAbsent(column, i) != null) {
          faults.add(new FileFault(name, head.line(), i + 1, "the column " + column + " doubles"));
        }
      }
      for (String needed : NEEDED) {
        if (!columns.containsKey(needed)) {
          faults.add(new FileFault(name, head.line(), 0, "the column " + needed + " is missing"));
        }
      }
      if (!faults.isEmpty()) {
        throw new FileException(faults);
      }
    }

    private String cell(String column) {
      Integer at = columns.get(column);
      return at == null ? "" : bare(row.cells().get(at)).strip();
    }

    private <T> Optional<T> word(String column, T[] values, Function<T, String> word) {
      String cell = cell(column);
      Optional<T> value =
          Arrays.stream(values).filter(one -> word.apply(one).equals(cell)).findFirst();
      if (value.isEmpty() && !cell.isEmpty()) {
        String known = String.join(", ", Arrays.stream(values).map(word).toList());
        fault(column, column + " must be one of " + known + ", not \"" + cell + "\"");
      }
      return value;
    }

    void take(CsvRows.Line next) {
      row = next;
      int before = faults.size();
      if (row.cells().size() != width) {
        String found =
            row.cells().isEmpty() ? "its quotes are wrong" : "found " + row.cells().size();
        fault("", "a row must have " + width + " cells as the header has; " + found);
        return;
      }
      String id = cell("id");
      if (id.isEmpty()) {
        fault("id", "a fixture needs an id");
      }
      Optional<FixtureKind> kind = word("kind", FixtureKind.values(), FixtureKind::word);
      if (kind.isEmpty() && cell("kind").isEmpty()) {
        fault("kind", "a fixture needs a kind: water-closet, urinal or faucet");
      }
      Optional<Power> power = word("power", Power.values(), Power::word);
      Optional<Complaint> complaint = word("complaint", Complaint.values(), Complaint::word);
      rating("valve-rating");
      rating("fixture-rating");
      String only = cell("only-accessible");
      if (!List.of("", "yes", "no").contains(only)) {
        fault("only-accessible", "only-accessible must be yes or no, not \"" + only + "\"");
      }
      String lastCells = cell("last-cells");
      if (!lastCells.isEmpty() && !Fixture.isDay(lastCells)) {
        fault("last-cells", "last-cells must be a day like 2026-03-09, not \"" + lastCells + "\"");
      }
      for (String column : columns.keySet()) {
        if (cell(column).chars().anyMatch(Character::isISOControl)) {
          fault(column, column + " must be on one line, without control characters");
        }
      }
      if (faults.size() == before && kind.isPresent()) {
        add(kind.get(), power, complaint);
      }
    }

    private void add(FixtureKind kind, Optional<Power> power, Optional<Complaint> complaint) {
      try {
        Fixture fixture =
            new Fixture(
                cell("id"),
                cell("place"),
                kind,
                power,
                cell("cells"),
                cell("sheet"),
                cell("valve-rating"),
                cell("fixture-rating"),
                cell("only-accessible").equals("yes"),
                cell("last-cells"),
                cell("riser-valve"),
                complaint);
        Integer earlier = lines.putIfAbsent(fixture.key(), row.line());
        if (earlier != null) {
          fault("id", "the id " + fixture.id() + " stands in line " + earlier + " already");
        }
        fixtures.add(fixture);
      } catch (GuideException e) {
        fault("", String.valueOf(e.getMessage()));
      }
    }

    private void rating(String column) {
      String cell = cell(column);
      int blank = cell.lastIndexOf(' ');
      boolean right =
          blank > 0
              && RATED_IN.contains(cell.substring(blank + 1))
              && Quantities.number(cell.substring(0, blank).strip()).isPresent();
      if (!cell.isEmpty() && !right) {
        fault(
            column,
            column
                + " must be a number and one of "
                + String.join(", ", RATED_IN)
                + ", such as 4.8 L, not \""
                + cell
                + "\"");
      }
    }
  }
}
