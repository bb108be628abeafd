package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lampwise.service.Check;
import lampwise.service.ClosingStep;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Common practice, no source: values that the guide must hold, as its check and remedy texts. */
class GuidePracticeTest {
  private static final String TEXT = text();

  private static String text() {
    Guide guide = GuideReader.builtIn();
    List<String> lines = new ArrayList<>();
    for (Check check : guide.checks()) {
      lines.add(check.question());
      lines.addAll(check.steps());
      check.cautions().forEach(caution -> lines.add(caution.text()));
    }
    for (Remedy remedy : guide.remedies()) {
      lines.addAll(remedy.steps());
      remedy.cautions().forEach(caution -> lines.add(caution.text()));
    }
    guide.closing().stream().map(ClosingStep::text).forEach(lines::add);
    return String.join("\n", lines).toLowerCase(Locale.ROOT);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "about 6 in (150 mm) before the rim",
        "stand there for 15 s, walk away; it flushes",
        "hand-tight and half a turn more unless",
        "ring and joints dry",
        "flow stops when it is let go, and the ring stays dry",
        "stop holds",
        "polarity|right way round",
        "collection point",
        "no petroleum|no grease from petroleum"
      })
  void theGuideHoldsWhatIsUsual(String practice) {
    boolean holds = List.of(practice.split("\\|")).stream().anyMatch(TEXT::contains);
    assertTrue(holds, () -> practice + " is not in the guide");
  }
}
