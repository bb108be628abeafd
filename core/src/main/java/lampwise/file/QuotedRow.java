package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;

/**
 * A row of a text with quotes.
 *
 * @param cells the cells as they were split
 */
record QuotedRow(CSVRecord cells) implements Row {
  @Override
  public String cell(int column) {
    return column < cells.size() ? cells.get(column).strip() : "";
  }

  /** The cells, trimmed. */
  List<String> toList() {
    List<String> list = new ArrayList<>();
    for (String cell : cells) {
      list.add(cell.strip());
    }
    return list;
  }

  @Override
  public boolean isBlank() {
    for (String cell : cells) {
      if (!cell.isBlank()) {
        return false;
      }
    }
    return true;
  }
}
