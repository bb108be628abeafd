package lampwise.sim.score;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Labelled;
import lampwise.sim.Person;

/**
 * Lampwise beside a general-purpose alternative, the SciPy script {@code templates.py}, on the
 * recordings of a run of {@code score}: {@code TemplateStudy readings.csv [seed]}, where the file
 * is what {@code score --reference --out} wrote for people and the seed that of the run. Where the
 * best template leaves over more than a share of a log's blinks and pulses the script's answer is
 * "unlisted"; of all shares that one is taken with which it is right most often on these logs.
 * {@code TemplateStudy store 20 > templates.txt} makes what {@link TemplatesTest} reads.
 */
final class TemplateStudy {
  private static final double CLEAR = 99;

  /** A log and what was made of it; the reference's answer is empty where none was asked. */
  private record Row(Cell cell, int number, String truth, String top, String reference) {}

  /** The script's best template, and what it leaves over. */
  record Answer(String template, double left) {
    static Answer of(String line) {
      String[] cells = line.split(";");
      return new Answer(cells[0], Double.parseDouble(cells[1]));
    }

    String state(double most) {
      return left <= most ? template : CodeSheet.UNLISTED;
    }
  }

  private TemplateStudy() {}

  /** The bench's sheet as the script reads it. */
  static List<String> templates() {
    CodeSheet sheet = Bench.sheet();
    Candidates candidates = new Candidates(Bench.mix(sheet), 1);
    List<String> lines = new ArrayList<>();
    for (LampState state : sheet.states()) {
      List<Fold> folds = candidates.shows(state.rhythm()).folds();
      lines.add(folds.isEmpty() ? "dark;" + state.name() : template(state.name(), folds.get(0)));
    }
    return lines;
  }

  private static String template(String name, Fold fold) {
    List<String> starts = new ArrayList<>();
    for (int blink = 0; blink < fold.blinks(); blink++) {
      starts.add(String.format(Locale.ROOT, "%.6f", fold.on(blink) / fold.cycle()));
    }
    return String.format(
        Locale.ROOT,
        "template;%s;%.6f;%.6f;%s",
        name,
        fold.cycle() * fold.stretch().least(),
        fold.cycle() * fold.stretch().most(),
        String.join(" ", starts));
  }

  /** A log as the script reads it. */
  static String log(BlinkLog log) {
    Window window = log.window().orElseThrow();
    return String.format(
        Locale.ROOT,
        "log;%.3f;%.3f;%s",
        window.fromSeconds(),
        window.toSeconds(),
        log.blinks().stream()
            .mapToDouble(Blink::onSeconds)
            .mapToObj(start -> String.format(Locale.ROOT, "%.3f", start))
            .collect(Collectors.joining(" ")));
  }

  /** What the script writes: a line that names its tools, then an answer for each log. */
  static List<String> written(List<String> lines) throws IOException {
    Path script = Files.createTempFile("templates", ".py");
    Path input = Files.createTempFile("templates", ".txt");
    try {
      try (InputStream in = TemplateStudy.class.getResourceAsStream("templates.py")) {
        Files.write(script, Objects.requireNonNull(in, "templates.py").readAllBytes());
      }
      Files.write(input, lines, StandardCharsets.UTF_8);
      Process process =
          new ProcessBuilder("/usr/bin/python3", script.toString())
              .redirectInput(input.toFile())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (InputStream out = process.getInputStream()) {
        return new String(out.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      }
    } finally {
      Files.delete(script);
      Files.delete(input);
    }
  }

  private static List<Row> rows(Path readings) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (String line : Files.readAllLines(readings).stream().skip(1).toList()) {
      String[] cells = line.split(",", -1);
      Cell cell =
          Bench.cells(cells[0]).stream()
              .filter(c -> c.seconds() == Double.parseDouble(cells[1]))
              .findFirst()
              .orElseThrow();
      if (cell.watching() instanceof Person) {
        rows.add(new Row(cell, Integer.parseInt(cells[2]), cells[3], cells[4], cells[12]));
      }
    }
    return rows;
  }

  /** The share with which the script is right most often. */
  private static double best(List<Row> rows, List<Answer> answers) {
    double best = 0;
    long most = -1;
    for (double share = 0.05; share < 2; share += 0.05) {
      long right = 0;
      for (int i = 0; i < rows.size(); i++) {
        right += answers.get(i).state(share).equals(rows.get(i).truth()) ? 1 : 0;
      }
      if (right > most) {
        most = right;
        best = share;
      }
    }
    return best;
  }

  /** Right answers of a cell. */
  private static final class Count {
    private int all;
    private int reference;
    private int own;
    private int script;

    void add(Row row, String state) {
      all++;
      reference += row.reference().equals(row.truth()) ? 1 : 0;
      own += row.top().equals(row.truth()) ? 1 : 0;
      script += state.equals(row.truth()) ? 1 : 0;
    }

    double percent(int right) {
      return 100.0 * right / all;
    }
  }

  /** The first recordings of each of people's cells, by observer, window and number. */
  static List<Labelled> first(int count) {
    Score score = new Score(Bench.mix(Bench.sheet()), Bench.SEED);
    List<Labelled> all = new ArrayList<>();
    for (String observer : List.of("exact", "careful", "hurried", "careless")) {
      for (Cell cell : Bench.cells(observer)) {
        for (int number = 0; number < count; number++) {
          all.add(score.recording(cell, number));
        }
      }
    }
    return all;
  }

  /** Prints what the script makes of the first recordings of each cell. */
  private static void store(int count) throws IOException {
    List<String> lines = new ArrayList<>(templates());
    first(count).forEach(labelled -> lines.add(log((BlinkLog) labelled.recording())));
    written(lines).forEach(System.out::println);
  }

  /** Counts, cell by cell. */
  public static void main(String[] args) throws IOException {
    if (args[0].equals("store")) {
      store(Integer.parseInt(args[1]));
      return;
    }
    List<Row> rows = rows(Path.of(args[0]));
    long seed = args.length > 1 ? Long.parseLong(args[1]) : Bench.SEED;
    Score score = new Score(Bench.mix(Bench.sheet()), seed);
    List<String> lines = new ArrayList<>(templates());
    for (Row row : rows) {
      lines.add(log((BlinkLog) score.recording(row.cell(), row.number()).recording()));
    }
    List<String> written = written(lines);
    List<Answer> answers = written.stream().skip(1).map(Answer::of).toList();
    double share = best(rows, answers);
    System.out.printf(Locale.ROOT, "%s, unlisted above %.2f%n", written.get(0), share);
    Map<String, Count> cells = new LinkedHashMap<>();
    for (int i = 0; i < rows.size(); i++) {
      Cell cell = rows.get(i).cell();
      String name = cell.observer() + " " + Math.round(cell.seconds()) + " s";
      cells.computeIfAbsent(name, n -> new Count()).add(rows.get(i), answers.get(i).state(share));
    }
    print(cells);
  }

  private static void print(Map<String, Count> cells) {
    System.out.println("| cell | recordings | reference | Lampwise | script | Lampwise more |");
    double sum = 0;
    int hard = 0;
    for (Map.Entry<String, Count> entry : cells.entrySet()) {
      Count count = entry.getValue();
      double reference = count.percent(count.reference);
      double more = count.percent(count.own) - count.percent(count.script);
      hard += reference < CLEAR ? 1 : 0;
      sum += reference < CLEAR ? more : 0;
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %.1f | %.1f | %.1f | %+.1f |%n",
          entry.getKey(),
          count.all,
          reference,
          count.percent(count.own),
          count.percent(count.script),
          more);
    }
    System.out.printf(
        Locale.ROOT,
        "where the reference is below %.0f: %+.1f on average of %d cells%n",
        CLEAR,
        sum / hard,
        hard);
  }
}
