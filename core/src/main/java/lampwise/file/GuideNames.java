package lampwise.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwise.service.Caution;

/** What the parts of a guide may refer to: causes, checks with their answers, cautions. */
final class GuideNames {
  private final List<String> causes;
  private final Map<String, List<String>> checks = new LinkedHashMap<>();
  private final Map<String, Caution> cautions;

  GuideNames(List<GuideItem> causes, List<GuideItem> checks, Map<String, Caution> cautions) {
    this.causes = causes.stream().map(GuideItem::id).toList();
    this.cautions = cautions;
    for (GuideItem check : checks) {
      this.checks.put(check.id(), answers(check));
    }
  }

  private static List<String> answers(GuideItem check) {
    List<String> answers = new ArrayList<>();
    for (YamlNode.Entry entry : check.node().entries()) {
      if (entry.key().text().equals("answers") && entry.value() instanceof YamlNode.Table table) {
        table.entries().forEach(answer -> answers.add(answer.key().text()));
      }
    }
    return answers;
  }

  /** The ids of the causes. */
  List<String> causes() {
    return causes;
  }

  /** The words of the answers of each check, by its id. */
  Map<String, List<String>> checks() {
    return checks;
  }

  /** The cautions by their ids. */
  Map<String, Caution> cautions() {
    return cautions;
  }
}
