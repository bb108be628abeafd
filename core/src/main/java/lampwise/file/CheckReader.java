package lampwise.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Answer;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Opening;
import lampwise.service.Requirement;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;

/** Reads one check of a guide. */
final class CheckReader {
  private static final GuideFields.Keys KEYS =
      GuideFields.Keys.of(
          List.of("ask", "minutes", "answers", "usual"),
          "steps",
          "tools",
          "kind",
          "power",
          "complaint",
          "first",
          "bowl-look",
          "flushes",
          "opens",
          "who",
          "before",
          "cautions",
          "given",
          "source");

  private final GuideItem item;
  private final GuideNames names;
  private final GuideFields fields;

  private CheckReader(GuideItem item, GuideNames names) {
    this.item = item;
    this.names = names;
    this.fields = GuideFields.of(item, KEYS);
  }

  /** The check; empty after a fault. */
  static Optional<Check> read(GuideItem item, GuideNames names) {
    return new CheckReader(item, names).read();
  }

  private Optional<Check> read() {
    String question = fields.text("ask");
    List<String> steps = fields.texts("steps");
    double minutes = fields.positive("minutes");
    List<String> tools = fields.texts("tools");
    List<FixtureKind> kinds = fields.kinds();
    List<Power> powers = fields.powers();
    List<Complaint> complaints = fields.complaints();
    boolean first = fields.yes("first");
    boolean bowlLook = fields.yes("bowl-look");
    boolean flushes = fields.yes("flushes");
    List<Opening> opens = fields.openings("opens");
    Who who = fields.who();
    List<Requirement> before = fields.requirements("before", names);
    List<Caution> cautions = fields.cautions(names);
    Optional<String> source = fields.source();
    List<Answer> answers = answers();
    List<String> words = answers.stream().map(Answer::word).toList();
    List<Double> usual = new ArrayList<>();
    Map<String, List<Double>> rows = new LinkedHashMap<>();
    if (!words.isEmpty()) {
      fields
          .table()
          .node("usual")
          .flatMap(node -> fields.row(node, node, words))
          .ifPresent(usual::addAll);
      given(words, rows);
    }
    if (fields.faulty() || answers.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Check(
            item.id(),
            question,
            steps,
            minutes,
            tools,
            kinds,
            powers,
            complaints,
            answers,
            usual,
            rows,
            first,
            bowlLook,
            flushes,
            opens,
            who,
            before,
            cautions,
            source));
  }

  /** The answers, at least two; none after a fault. */
  private List<Answer> answers() {
    Optional<YamlNode> value = fields.table().node("answers");
    if (value.isEmpty()) {
      return List.of();
    }
    if (!(value.get() instanceof YamlNode.Table node) || node.entries().size() < 2) {
      item.faults()
          .add(
              value.get(),
              "answers must be a table of at least two words and what they mean"
                  + YamlTable.found(value.get()));
      return List.of();
    }
    Map<String, YamlNode.Entry> before = new LinkedHashMap<>();
    List<Answer> answers = new ArrayList<>();
    for (YamlNode.Entry entry : node.entries()) {
      String word = entry.key().text();
      YamlTable.refuseDoubled(
          "answer", entry.key(), Optional.ofNullable(before.get(word)), item.faults());
      before.putIfAbsent(word, entry);
      if (!LampState.isName(word)) {
        item.faults()
            .add(
                entry.key(),
                "an answer must be lower-case letters, digits and hyphens, starting with a letter"
                    + YamlTable.found(entry.key()));
      } else if (!(entry.value() instanceof YamlNode.Faulty)) {
        YamlTable.scalar(word, entry.value(), item.faults())
            .ifPresent(text -> answers.add(new Answer(word, Wording.onOneLine(text.text()))));
      }
    }
    return answers.size() == node.entries().size() && before.size() == answers.size()
        ? answers
        : List.of();
  }

  /** The rows of the causes. A key may name several causes with commas between them. */
  private void given(List<String> words, Map<String, List<Double>> rows) {
    Optional<YamlNode> value = fields.table().node("given");
    if (value.isEmpty()) {
      return;
    }
    if (!(value.get() instanceof YamlNode.Table node)) {
      item.faults()
          .add(
              value.get(),
              "given must be a table of causes and the chances of the answers"
                  + YamlTable.found(value.get()));
      return;
    }
    for (YamlNode.Entry entry : node.entries()) {
      Optional<List<Double>> row = fields.row(entry.key(), entry.value(), words);
      for (YamlNode.Text cause : causesOf(entry.key())) {
        String id = cause.text();
        if (!names.causes().contains(id)) {
          item.faults()
              .add(
                  cause,
                  "unknown cause "
                      + Wording.quote(id)
                      + Wording.nearest(id, names.causes())
                          .map(nearest -> "; did you mean " + nearest + "?")
                          .orElse(""));
        } else if (rows.containsKey(id)) {
          item.faults().add(cause, "the cause " + id + " has a row already");
        } else {
          rows.put(id, row.orElse(List.of()));
        }
      }
    }
  }

  /** The causes of a key, each with its place. */
  private static List<YamlNode.Text> causesOf(YamlNode.Text key) {
    List<YamlNode.Text> causes = new ArrayList<>();
    String text = key.text();
    int start = 0;
    while (start <= text.length()) {
      int comma = text.indexOf(',', start);
      int end = comma < 0 ? text.length() : comma;
      String word = text.substring(start, end).strip();
      int offset = start + text.substring(start, end).indexOf(word);
      int column = key.textColumn() > 0 ? key.textColumn() + offset : key.column();
      causes.add(new YamlNode.Text(key.line(), column, word, key.textColumn() > 0 ? column : 0));
      start = end + 1;
    }
    return causes;
  }
}
