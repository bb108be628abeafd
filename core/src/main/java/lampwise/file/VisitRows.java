package lampwise.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lampwise.service.Visit;

/** What a visit log holds. */
public final class VisitRows {
  private static final byte[] MARK = "\uFEFF".getBytes(StandardCharsets.UTF_8);
  private static final String KIND = VisitColumns.NAMES.get(0).replaceAll("[0-9]+$", "");

  private final SortedMap<Integer, Visit> visits = new TreeMap<>();
  private final SortedMap<Integer, Integer> standsFor = new TreeMap<>();
  private final int wholeBytes;
  private final int tornBytes;
  private final boolean header;

  private VisitRows(int wholeBytes, int tornBytes, boolean header) {
    this.wholeBytes = wholeBytes;
    this.tornBytes = tornBytes;
    this.header = header;
  }

  /** Reads the bytes of a log. */
  static VisitRows of(String name, byte[] content) throws FileException {
    // In UTF-8 neither quotes nor line ends are part of another sign, so Latin-1 finds them too.
    CsvRows split = CsvRows.of(new String(content, StandardCharsets.ISO_8859_1));
    String whole = new String(content, 0, split.end(), StandardCharsets.UTF_8);
    List<CsvRows.Line> rows =
        CsvRows.of(whole.startsWith("\uFEFF") ? whole.substring(1) : whole).rows();
    if (rows.isEmpty()) {
      if (!begins(content)) {
        throw new FileException(name, 1, 1, "is no visit log; its first line must be a header");
      }
      return new VisitRows(split.end(), content.length - split.end(), false);
    }
    header(name, rows.get(0));
    if (split.open() > 0) {
      throw new FileException(
          name, split.open(), 0, "a quote is opened in this row and never closed");
    }
    VisitRows log = new VisitRows(split.end(), content.length - split.end(), true);
    List<FileFault> faults = new ArrayList<>();
    for (CsvRows.Line row : rows.subList(1, rows.size())) {
      try {
        log.take(row.cells());
      } catch (VisitColumns.Fault e) {
        faults.add(new FileFault(name, row.line(), e.column(), String.valueOf(e.getMessage())));
      }
    }
    if (!faults.isEmpty()) {
      throw new FileException(faults);
    }
    return log;
  }

  /** Whether the bytes are the beginning of a new log, so that its header was cut off. */
  private static boolean begins(byte[] content) {
    byte[] full = ("\uFEFF" + CsvRows.text(VisitColumns.NAMES)).getBytes(StandardCharsets.UTF_8);
    int from = content.length > 0 && content[0] != MARK[0] ? MARK.length : 0;
    for (int i = 0; i < content.length; i++) {
      if (from + i >= full.length || content[i] != full[from + i]) {
        return false;
      }
    }
    return true;
  }

  private static void header(String name, CsvRows.Line row) throws FileException {
    List<String> cells = row.cells();
    String first = cells.isEmpty() ? "" : cells.get(0);
    if (first.startsWith(KIND) && !first.equals(VisitColumns.NAMES.get(0))) {
      throw new FileException(
          name, 1, 1, "is a visit log of a version that is not known here: " + first);
    }
    if (!cells.equals(VisitColumns.NAMES)) {
      throw new FileException(
          name,
          1,
          1,
          "is no visit log, or its columns were changed; its first line must be "
              + String.join(",", VisitColumns.NAMES));
    }
  }

  private void take(List<String> cells) throws VisitColumns.Fault {
    if (cells.size() != VisitColumns.NAMES.size()) {
      throw new VisitColumns.Fault(
          0,
          "a row must have "
              + VisitColumns.NAMES.size()
              + " cells; "
              + (cells.isEmpty() ? "its quotes are wrong" : "found " + cells.size()));
    }
    int row = VisitColumns.row(cells, 0);
    int corrects = VisitColumns.row(cells, 1);
    if (row != last() + 1) {
      throw new VisitColumns.Fault(1, "rows must be counted: expected " + (last() + 1));
    }
    if (corrects > 0 && !has(corrects)) {
      throw new VisitColumns.Fault(2, "there is no row " + corrects + " before this one");
    }
    Visit visit = VisitColumns.visit(cells);
    int stands = corrects == 0 ? row : standsFor.getOrDefault(corrects, corrects);
    standsFor.put(row, stands);
    visits.put(stands, visit);
  }

  /** Whether there is a row of that number. */
  boolean has(int row) {
    return standsFor.containsKey(row);
  }

  /** The number of the last row; 0 if there is none. */
  int last() {
    return standsFor.isEmpty() ? 0 : standsFor.lastKey();
  }

  int wholeBytes() {
    return wholeBytes;
  }

  boolean hasHeader() {
    return header;
  }

  /**
   * The visits, each as its latest correction has it.
   *
   * @return the visits in the order in which they were first written
   */
  public List<Visit> visits() {
    return List.copyOf(visits.values());
  }

  /**
   * The visits with the numbers of their rows.
   *
   * @return the first row's number of each visit, and the visit as its latest correction has it
   */
  public SortedMap<Integer, Visit> byRow() {
    return Collections.unmodifiableSortedMap(visits);
  }

  /**
   * How much a writer that was cut off has left behind the last whole row.
   *
   * @return bytes, 0 or more; they are set aside when the next row is added
   */
  public int tornBytes() {
    return tornBytes;
  }
}
