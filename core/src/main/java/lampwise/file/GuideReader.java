package lampwise.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.ClosingStep;
import lampwise.service.Guide;
import lampwise.service.GuideException;
import lampwise.service.MakeSafe;
import lampwise.service.Remedy;
import lampwise.sheet.Condition;

/**
 * Reads guides: YAML 1.2, strictly, as code sheets are. A guide may be one file or several; parts
 * of one file may name parts of another.
 */
public final class GuideReader {
  private static final String VERSION_KEY = "lampwise-guide";

  /** The files of the built-in guide; the head of the guide stands in the first. */
  private static final List<String> BUILT_IN =
      List.of(
          "safety.guide.yaml",
          "causes.guide.yaml",
          "checks.guide.yaml",
          "measures.guide.yaml",
          "remedies.guide.yaml",
          "service.guide.yaml");

  private static final GuideFields.Keys HEAD =
      GuideFields.Keys.of(
          List.of(
              VERSION_KEY,
              "title",
              "basis",
              "hand-over-minutes",
              "second-trip-minutes",
              "usual-lamp"),
          "cautions",
          "causes",
          "checks",
          "remedies",
          "make-safe",
          "closing");
  private static final GuideFields.Keys FURTHER =
      GuideFields.Keys.of(
          List.of(VERSION_KEY), "cautions", "causes", "checks", "remedies", "make-safe", "closing");

  private final List<GuideFile> files = new ArrayList<>();

  private GuideReader() {}

  /**
   * Reads a guide of one file.
   *
   * @param name the file's name, for messages
   * @param content its bytes, UTF-8, at most 1 MiB
   * @return the guide
   * @throws FileException with every fault of the file, sorted by line and column; if the file says
   *     a newer version of the format, with that alone
   */
  public static Guide read(String name, byte[] content) throws FileException {
    return read(Map.of(name, content));
  }

  /**
   * Reads a guide of several files.
   *
   * @param contents the bytes of each file by its name, at least one; the title and the other keys
   *     of the guide as a whole stand in the first one only
   * @return the guide
   * @throws FileException with every fault of all files, in their order, sorted by line and column
   */
  public static Guide read(Map<String, byte[]> contents) throws FileException {
    return new GuideReader().guide(contents);
  }

  /**
   * The guide that is built in: sensor flush valves of water closets and urinals, sensor faucets.
   *
   * @return the guide
   */
  public static Guide builtIn() {
    Map<String, byte[]> contents = new LinkedHashMap<>();
    for (String name : BUILT_IN) {
      try (InputStream in =
          Objects.requireNonNull(GuideReader.class.getResourceAsStream(name), name)) {
        contents.put(name, in.readAllBytes());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    try {
      return read(contents);
    } catch (FileException e) {
      throw new AssertionError("the built-in guide has a fault: " + e.getMessage(), e);
    }
  }

  private Guide guide(Map<String, byte[]> contents) throws FileException {
    List<FaultList> faults = new ArrayList<>();
    boolean complete = true;
    for (Map.Entry<String, byte[]> content : contents.entrySet()) {
      FaultList list = new FaultList(content.getKey());
      faults.add(list);
      complete &= open(content.getKey(), content.getValue(), list, faults.size() == 1);
    }
    // What is missing from a file that could not be read would look unknown in all others.
    Optional<Guide> guide = complete ? assemble() : Optional.empty();
    List<FileFault> all = faults.stream().flatMap(list -> list.sorted().stream()).toList();
    if (!all.isEmpty() || guide.isEmpty()) {
      throw new FileException(all);
    }
    return guide.get();
  }

  /** Reads the first level of a file; false if that was not possible. */
  private boolean open(String name, byte[] content, FaultList faults, boolean first) {
    Optional<YamlNode> root =
        StrictYaml.read(content, "a guide that starts with " + VERSION_KEY + ": 1", faults);
    if (root.isEmpty()) {
      return false;
    }
    if (!(root.get() instanceof YamlNode.Table node)) {
      faults.add(root.get(), "a guide must be a table of keys" + YamlTable.found(root.get()));
      return false;
    }
    if (!FormatVersion.accept(VERSION_KEY, node, faults)) {
      return false;
    }
    GuideFields.Keys keys = first ? HEAD : FURTHER;
    YamlTable table = YamlTable.of(node, node, keys.known(), keys.required(), faults);
    files.add(new GuideFile(name, faults, node, table));
    return true;
  }

  private Optional<Guide> assemble() {
    List<GuideItem> causeItems = GuideItem.all(files, "causes", "cause");
    List<GuideItem> checkItems = GuideItem.all(files, "checks", "check");
    Map<String, Caution> cautions = new LinkedHashMap<>();
    for (GuideItem item : GuideItem.all(files, "cautions", "caution")) {
      SafetyReader.caution(item).ifPresent(caution -> cautions.put(caution.id(), caution));
    }
    GuideNames names = new GuideNames(causeItems, checkItems, cautions);
    List<Cause> causes = new ArrayList<>();
    causeItems.forEach(item -> CauseReader.read(item).ifPresent(causes::add));
    List<Check> checks = new ArrayList<>();
    checkItems.forEach(item -> CheckReader.read(item, names).ifPresent(checks::add));
    List<Remedy> remedies = new ArrayList<>();
    GuideItem.all(files, "remedies", "remedy")
        .forEach(item -> RemedyReader.read(item, names).ifPresent(remedies::add));
    List<MakeSafe> makeSafe = new ArrayList<>();
    GuideItem.all(files, "make-safe", "rule to make safe")
        .forEach(item -> SafetyReader.makeSafe(item, names).ifPresent(makeSafe::add));
    List<ClosingStep> closing =
        files.stream().flatMap(file -> SafetyReader.closing(file).stream()).toList();
    return head(causes, checks, remedies, makeSafe, closing);
  }

  private Optional<Guide> head(
      List<Cause> causes,
      List<Check> checks,
      List<Remedy> remedies,
      List<MakeSafe> makeSafe,
      List<ClosingStep> closing) {
    GuideFile file = files.get(0);
    GuideFields fields = new GuideFields(file.table(), file.faults());
    String title = fields.text("title");
    String basis = fields.text("basis");
    double handOver = fields.positive("hand-over-minutes");
    double secondTrip = fields.positive("second-trip-minutes");
    Map<Condition, Double> lamp = fields.chances("usual-lamp", Condition.values(), Condition::word);
    double sum = lamp.values().stream().mapToDouble(Double::doubleValue).sum();
    if (!fields.faulty() && !(Math.abs(sum - 1) <= 1e-6)) {
      file.table()
          .node("usual-lamp")
          .ifPresent(
              node ->
                  file.faults()
                      .add(
                          node,
                          "the chances of usual-lamp must sum to 100 %; they sum to "
                              + GuideFields.percent(sum)));
    }
    if (files.stream().anyMatch(any -> any.faults().any())) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Guide(
              title,
              basis,
              handOver,
              secondTrip,
              lamp,
              causes,
              checks,
              remedies,
              makeSafe,
              closing));
    } catch (GuideException e) {
      file.faults().add(file.root(), String.valueOf(e.getMessage()));
      return Optional.empty();
    }
  }
}
