package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import lampwise.file.GuideReader;
import org.junit.jupiter.api.Test;

/** The planner beside the exact plan on parts of the built-in guide. */
class SubGuidesTest {
  private static final int MOST = 8;

  /** Jensen et al. 2001, table 2: a mean excess of 1.81 % over nine models. */
  @Test
  void theMeanExcessOnSubGuidesStaysBelowThePublishedOne() {
    Guide guide = GuideReader.builtIn();
    SplittableRandom random = new SplittableRandom(1125);
    double sum = 0;
    double worst = 0;
    int count = 0;
    for (Situation situation : DiagnosisStudy.situations(guide)) {
      for (int round = 0; round < 3; round++) {
        Diagnosis visit = Diagnosis.start(guide, situation);
        for (String ready : List.of("bowl clear", "stop-holds holds")) {
          visit = visit.with(new Finding(ready.split(" ", -1)[0], ready.split(" ", -1)[1]));
        }
        Map<Cause, Double> weights = visit.weights();
        Problem whole = new OpenWork(guide, situation, visit.progress()).problem(weights);
        Problem part = part(whole, random);
        double[] start = weights.values().stream().mapToDouble(Double::doubleValue).toArray();
        double exact = ExactPlan.cost(part, start);
        double excess = Followed.cost(part, start) / exact - 1;
        assertTrue(excess > -1e-9, situation + ": no plan is better than the best");
        sum += excess;
        worst = Math.max(worst, excess);
        count++;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "sub-guides: %d, mean excess %.2f %%, worst %.1f %%%n",
        count,
        100 * sum / count,
        100 * worst);
    assertTrue(100 * sum / count < 1.81, "mean excess " + 100 * sum / count + " %");
  }

  /** Up to eight actions: repairs that can help and checks that tell something. */
  private static Problem part(Problem whole, SplittableRandom random) {
    int repairs = 3 + random.nextInt(3);
    List<Problem.Repair> some = new ArrayList<>();
    Map<Integer, Boolean> taken = new LinkedHashMap<>();
    for (int i = 0; i < 200 && some.size() < repairs; i++) {
      int number = random.nextInt(whole.repairs().size());
      Problem.Repair repair = whole.repairs().get(number);
      boolean helps = Arrays.stream(repair.fixes()).anyMatch(fix -> fix > 0);
      if (helps && taken.putIfAbsent(number, true) == null) {
        some.add(new Problem.Repair(repair.cost(), 0, repair.fixes(), 0));
      }
    }
    List<Problem.Test> checks = new ArrayList<>();
    taken.clear();
    for (int i = 0; i < 200 && checks.size() + some.size() < MOST; i++) {
      int number = random.nextInt(whole.checks().size());
      Problem.Test check = whole.checks().get(number);
      if (taken.putIfAbsent(number, true) == null) {
        checks.add(new Problem.Test(check.cost(), check.likelihoods(), 0));
      }
    }
    return new Problem(whole.causes(), some, checks, whole.handOver());
  }
}
