package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is believed of two causes, reckoned by hand. */
class BeliefTest {
  private static final double EXACT = 1e-12;

  private static final Problem PROBLEM =
      new Problem(
          2,
          List.of(
              new Problem.Repair(10, 0, new double[] {1, 0}, 0b01),
              new Problem.Repair(20, 3, new double[] {0.5, 1}, 0)),
          List.of(
              new Problem.Test(2, new double[][] {{0.9, 0.2}, {0.1, 0.8}}, 0),
              new Problem.Test(4, new double[][] {{1, 1}}, 0b01)),
          100);

  private static Belief start() {
    return Belief.start(new double[] {0.6, 0.4});
  }

  @Test
  void costsCountWhatIsNeededBefore() {
    assertEquals(1, start().sum(), EXACT);
    assertEquals(10 + 2, start().costOf(PROBLEM, PROBLEM.repairs().get(0)), EXACT);
    assertEquals(20 + 3 * 0.7, start().costOf(PROBLEM, PROBLEM.repairs().get(1)), EXACT);
    assertEquals(2, start().costOf(PROBLEM, PROBLEM.checks().get(0)), EXACT);
    assertEquals(4 + 2, start().costOf(PROBLEM, PROBLEM.checks().get(1)), EXACT);
    assertEquals(6, start().costOfNeeds(PROBLEM, 0b11), EXACT);
    assertEquals(100, start().handOver(PROBLEM), EXACT);
  }

  @Test
  void anAnswerIsNotPaidForTwice() {
    Belief after = start().answered(PROBLEM, 0, 0);
    assertEquals(0.54 + 0.08, after.sum(), EXACT);
    assertTrue(after.wasMade(0));
    assertFalse(after.wasMade(1));
    assertFalse(after.wasTried(0));
    assertEquals(10 * 0.62, after.costOf(PROBLEM, PROBLEM.repairs().get(0)), EXACT);
    assertEquals(4 * 0.62, after.costOf(PROBLEM, PROBLEM.checks().get(1)), EXACT);
    Belief needing = start().answered(PROBLEM, 1, 0);
    assertTrue(needing.wasMade(0));
    assertTrue(needing.wasMade(1));
    assertFalse(needing.wasMade(2));
  }

  @Test
  void aRepairThatFailedLeavesWhatItDoesNotFix() {
    Belief first = start().failed(PROBLEM, 0);
    assertEquals(0.4, first.sum(), EXACT);
    assertTrue(first.wasTried(0));
    assertFalse(first.wasTried(1));
    assertTrue(first.wasMade(0), "the check that it needs was made");
    Belief second = start().failed(PROBLEM, 1);
    assertEquals(0.3, second.sum(), EXACT);
    assertFalse(second.wasTried(0));
    assertTrue(second.wasTried(1));
    Belief both = first.answered(PROBLEM, 1, 0).failed(PROBLEM, 1);
    assertTrue(both.wasTried(0) && both.wasTried(1));
    assertTrue(both.isMended());
    assertEquals(0, both.handOver(PROBLEM));
  }

  @Test
  void aMillionthOfAMillionthIsNothing() {
    assertTrue(Belief.start(new double[] {1e-12}).isMended());
    assertFalse(Belief.start(new double[] {1.1e-12}).isMended());
  }

  @Test
  void aProblemHasSixtyFourRepairsAtTheMost() {
    List<Problem.Repair> repairs = new ArrayList<>();
    for (int i = 0; i < Problem.MOST; i++) {
      repairs.add(Problem.Repair.of(1, 1));
    }
    Problem full = new Problem(1, repairs, List.of(), 10);
    Belief last = Belief.start(new double[] {1}).failed(full, 63);
    assertTrue(last.wasTried(63));
    assertFalse(last.wasTried(0));
    repairs.add(Problem.Repair.of(1, 1));
    assertThrows(GuideException.class, () -> new Problem(1, repairs, List.of(), 10));
  }
}
