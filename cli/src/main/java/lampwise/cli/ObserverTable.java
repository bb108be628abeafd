package lampwise.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwise.sim.Observer;
import lampwise.sim.Person;
import lampwise.sim.Presets;

/** The presets of the observers with all their settings, as tables. */
final class ObserverTable {
  private static final int DECIMALS = 6;

  /** What the end of a setting's name says of its unit. */
  private static final Map<String, String> UNITS = units();

  private ObserverTable() {}

  private static Map<String, String> units() {
    Map<String, String> units = new LinkedHashMap<>();
    units.put("-per-minute", "/min");
    units.put("-per-s", "/s");
    units.put("-s", "s");
    units.put("-lux", "lux");
    units.put("-hz", "Hz");
    units.put("shadows", "/90s");
    units.put("hands", "/90s");
    return units;
  }

  /** The lines, none wider than 80 columns. */
  static List<String> lines() {
    Map<String, Observer> people = new LinkedHashMap<>();
    Map<String, Observer> sensors = new LinkedHashMap<>();
    for (String name : Presets.names()) {
      Observer observer = Presets.named(name);
      (observer instanceof Person ? people : sensors).put(name, observer);
    }
    List<String> lines = new ArrayList<>(table("People", people));
    lines.add("");
    lines.addAll(table("Light sensors", sensors));
    lines.add("");
    lines.add("Without a unit: a fraction or a chance, 0 to 1; on-change is 0 or 1.");
    return lines;
  }

  private static List<String> table(String title, Map<String, Observer> observers) {
    List<List<String>> rows = new ArrayList<>();
    List<String> head = new ArrayList<>(List.of(title, "unit"));
    head.addAll(observers.keySet());
    rows.add(head);
    observers.values().stream()
        .flatMap(observer -> observer.settings().keySet().stream())
        .distinct()
        .forEach(setting -> rows.add(row(setting, observers)));
    return aligned(rows);
  }

  private static List<String> row(String setting, Map<String, Observer> observers) {
    List<String> row = new ArrayList<>(List.of(setting, unit(setting)));
    for (Observer observer : observers.values()) {
      Double value = observer.settings().get(setting);
      row.add(value == null ? "" : number(value));
    }
    return row;
  }

  private static String unit(String setting) {
    return UNITS.entrySet().stream()
        .filter(entry -> setting.endsWith(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("");
  }

  private static String number(double value) {
    return Math.abs(value) <= Double.MAX_VALUE ? Fixed.of(value, DECIMALS, 0) : "none";
  }

  /** Names and units to the left, numbers to the right. */
  private static List<String> aligned(List<List<String>> rows) {
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < row.size(); i++) {
        int column = i;
        int width = rows.stream().mapToInt(other -> other.get(column).length()).max().orElse(0);
        String cell = Layout.padded(row.get(i), width);
        String blanks = cell.substring(row.get(i).length());
        line.append(i == 0 ? "" : "  ").append(i < 2 ? cell : blanks + row.get(i));
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }
}
