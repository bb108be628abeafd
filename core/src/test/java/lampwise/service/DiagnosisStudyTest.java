package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** The study in small: the order of the ways, as the document has it. */
class DiagnosisStudyTest {
  @Test
  void theToolNeedsFewerMinutesThanSimplerWaysAndMoreThanWhoeverKnows() {
    Map<String, double[]> minutes = new DiagnosisStudy().minutes(200, 1126);
    double knowing = DiagnosisStudy.mean(minutes.get("omniscient"));
    double tool = DiagnosisStudy.mean(minutes.get("the tool"));
    double list = DiagnosisStudy.mean(minutes.get("fixed list of checks, then repairs"));
    double repairs = DiagnosisStudy.mean(minutes.get("repairs by chance over minutes"));
    double share = DiagnosisStudy.mean(minutes.get("repairs by share alone"));
    String all = knowing + " " + tool + " " + list + " " + repairs + " " + share;
    assertTrue(knowing < tool, all);
    assertTrue(tool < list, all);
    assertTrue(tool < repairs, all);
    assertTrue(repairs < share, all);
  }
}
