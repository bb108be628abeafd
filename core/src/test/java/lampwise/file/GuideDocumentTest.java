package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import lampwise.service.Caution;
import lampwise.service.Guide;
import lampwise.service.GuideCheck;
import lampwise.service.Measure;
import lampwise.service.Site;
import lampwise.service.Urgency;
import org.junit.jupiter.api.Test;

/** Reads what docs/guide.md shows, so that it stays true. */
class GuideDocumentTest {
  private static String document() throws IOException {
    return Files.readString(Path.of("docs", "guide.md"), StandardCharsets.UTF_8);
  }

  private static List<String> examples() throws IOException {
    List<String> examples = new ArrayList<>();
    String[] parts = document().split("```yaml\n", -1);
    for (int i = 1; i < parts.length; i++) {
      examples.add(parts[i].substring(0, parts[i].indexOf("```")));
    }
    return examples;
  }

  @Test
  void theGuideShownIsAGuideInOrder() throws Exception {
    Guide guide = GuideReader.read("docs/guide.md", GuideText.bytes(examples().get(0)));
    assertEquals(List.of(), GuideCheck.warnings(guide));
  }

  @Test
  void theSiteShownSuitsTheBuiltInGuide() throws Exception {
    Guide guide = GuideReader.builtIn();
    Site site = SiteReader.read("docs/guide.md", GuideText.bytes(examples().get(1)), guide);
    assertEquals(6, site.applyTo(guide).remedy("new-cells").orElseThrow().minutes());
    assertEquals(Measure.FLUSH_VOLUME, site.limits().get(0).of());
  }

  @Test
  void itsFiguresAreThoseOfTheBuiltInGuide() throws Exception {
    Guide guide = GuideReader.builtIn();
    String text = document().replace("\n", " ");
    String sizes =
        String.format(
            Locale.ROOT,
            "it has %d causes, %d checks, %d remedies and %d cautions",
            guide.causes().size(),
            guide.checks().size(),
            guide.remedies().size(),
            cautions(guide).size());
    assertTrue(text.contains(sizes), sizes);
    for (Urgency reason : Urgency.values()) {
      String weight = "`" + reason.word() + "` " + (int) reason.usualWeight();
      assertTrue(text.contains(weight), weight);
    }
  }

  /** Every caution that some work shows. */
  private static Set<Caution> cautions(Guide guide) {
    Set<Caution> cautions = new HashSet<>();
    guide.checks().forEach(check -> cautions.addAll(check.cautions()));
    guide.remedies().forEach(remedy -> cautions.addAll(remedy.cautions()));
    guide.makeSafe().forEach(rule -> cautions.addAll(rule.cautions()));
    return cautions;
  }
}
