package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import lampwise.service.Complaint;
import lampwise.service.Finding;
import lampwise.service.GuideException;
import lampwise.service.Outcome;
import lampwise.service.Visit;
import lampwise.sheet.FixtureKind;

/** The columns of the visit log: a visit as the cells of a row, and back. */
final class VisitColumns {
  /** The header. Its first name carries the version of the format; the column holds row numbers. */
  static final List<String> NAMES =
      List.of(
          "lampwise-visits-1",
          "corrects",
          "when",
          "fixture",
          "place",
          "kind",
          "complaint",
          "recordings",
          "lamp",
          "condition",
          "probability",
          "findings",
          "cause",
          "remedies",
          "parts",
          "minutes",
          "before",
          "after",
          "result",
          "who",
          "note");

  private VisitColumns() {}

  /** A cell cannot be understood. */
  static final class Fault extends Exception {
    private static final long serialVersionUID = 1L;

    private final int column;

    Fault(int column, String message) {
      super(message);
      this.column = column;
    }

    /** Its number, from 1; 0 for the row as a whole. */
    int column() {
      return column;
    }
  }

  /**
   * The cells of a row.
   *
   * @param row its number, from 1
   * @param corrects the number of the row that it stands for; 0 for none
   * @param visit the visit
   */
  static List<String> cells(int row, int corrects, Visit visit) {
    Visit.Lamp lamp = visit.lamp();
    Visit.Done done = visit.done();
    return List.of(
        Integer.toString(row),
        corrects == 0 ? "" : Integer.toString(corrects),
        CellText.cell(visit.when()),
        CellText.cell(visit.fixture()),
        CellText.cell(visit.place()),
        visit.kind().map(FixtureKind::word).orElse(""),
        visit.complaint().map(Complaint::word).orElse(""),
        CellText.cell(lamp.recordings()),
        CellText.cell(lamp.state()),
        CellText.cell(lamp.condition()),
        number(lamp.probability()),
        CellText.cell(visit.findings().stream().map(f -> f.check() + "=" + f.answer()).toList()),
        CellText.cell(done.cause()),
        CellText.cell(done.remedies()),
        CellText.cell(done.parts()),
        number(done.minutes()),
        CellText.cell(visit.before()),
        CellText.cell(visit.after()),
        visit.outcome().word(),
        CellText.cell(visit.who()),
        CellText.cell(visit.note()));
  }

  private static String number(OptionalDouble value) {
    return value.isEmpty() ? "" : JsonNumber.of(value.getAsDouble(), 6, 0);
  }

  /**
   * The number of a row, or of the row that it stands for.
   *
   * @param column 0 or 1
   * @return 0 where the cell is empty
   */
  static int row(List<String> cells, int column) throws Fault {
    String cell = cells.get(column);
    try {
      int number = cell.isEmpty() ? 0 : Integer.parseInt(cell);
      if (number >= 0) {
        return number;
      }
    } catch (NumberFormatException e) {
      throw bad(column, cell, "the number of a row");
    }
    throw bad(column, cell, "the number of a row");
  }

  /** The visit of a row. */
  static Visit visit(List<String> cells) throws Fault {
    Cells of = new Cells(cells);
    try {
      return new Visit(
          of.text("when"),
          of.text("fixture"),
          of.text("place"),
          of.word("kind", FixtureKind.values(), FixtureKind::word),
          of.word("complaint", Complaint.values(), Complaint::word),
          new Visit.Lamp(
              of.texts("recordings"),
              of.text("lamp"),
              of.text("condition"),
              of.number("probability")),
          of.findings(),
          new Visit.Done(
              of.text("cause"), of.texts("remedies"), of.texts("parts"), of.number("minutes")),
          of.texts("before"),
          of.texts("after"),
          of.word("result", Outcome.values(), Outcome::word)
              .orElseThrow(() -> bad(NAMES.indexOf("result"), "", words(Outcome.values()))),
          of.text("who"),
          of.text("note"));
    } catch (GuideException e) {
      throw new Fault(0, String.valueOf(e.getMessage()));
    }
  }

  private static String words(Outcome[] outcomes) {
    return "one of " + String.join(" | ", Arrays.stream(outcomes).map(Outcome::word).toList());
  }

  private static Fault bad(int column, String found, String expected) {
    return new Fault(
        column + 1,
        String.format(
            Locale.ROOT, "%s must be %s; found \"%s\"", NAMES.get(column), expected, found));
  }

  /** The cells of one row by their names. */
  private record Cells(List<String> cells) {
    String cell(String name) {
      return cells.get(NAMES.indexOf(name));
    }

    String text(String name) {
      return CellText.text(cell(name));
    }

    List<String> texts(String name) {
      return CellText.texts(cell(name));
    }

    <T> Optional<T> word(String name, T[] values, Function<T, String> word) throws Fault {
      String text = text(name);
      if (text.isEmpty()) {
        return Optional.empty();
      }
      for (T value : values) {
        if (word.apply(value).equals(text)) {
          return Optional.of(value);
        }
      }
      throw bad(
          NAMES.indexOf(name),
          text,
          "one of " + String.join(" | ", Arrays.stream(values).map(word).toList()));
    }

    OptionalDouble number(String name) throws Fault {
      String text = text(name);
      if (text.isEmpty()) {
        return OptionalDouble.empty();
      }
      OptionalDouble number = Quantities.number(text);
      if (number.isEmpty()) {
        throw bad(NAMES.indexOf(name), text, "a number");
      }
      return number;
    }

    List<Finding> findings() throws Fault {
      List<Finding> findings = new ArrayList<>();
      for (String text : texts("findings")) {
        int sign = text.indexOf('=');
        if (sign < 1 || sign == text.length() - 1) {
          throw bad(NAMES.indexOf("findings"), text, "like override=runs; bowl=clear");
        }
        findings.add(new Finding(text.substring(0, sign), text.substring(sign + 1)));
      }
      return findings;
    }
  }
}
