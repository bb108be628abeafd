package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lampwise.file.GuideReader;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** What a site's visits change in the guide. */
class LearnedTest {
  private static final Guide GUIDE = GuideReader.builtIn();

  private static Visit visit(String cause, Outcome outcome, double minutes, String... remedies) {
    return new Visit(
        "2026-11-25T09:40",
        "n07",
        "",
        Optional.of(FixtureKind.URINAL),
        Optional.of(Complaint.DEAD),
        Visit.Lamp.unseen(),
        List.of(new Finding("bowl", "clear")),
        new Visit.Done(
            cause,
            List.of(remedies),
            List.of(),
            minutes > 0 ? OptionalDouble.of(minutes) : OptionalDouble.empty()),
        List.of(),
        List.of(),
        outcome,
        "",
        "");
  }

  private static double share(Guide guide, String cause) {
    double all = 0;
    for (Cause any : guide.causes()) {
      all += any.share(Complaint.DEAD, List.of());
    }
    return guide.cause(cause).orElseThrow().share(Complaint.DEAD, List.of()) / all;
  }

  private static Guide after(List<Visit> visits) {
    return Learned.from(GUIDE, visits).site().applyTo(GUIDE);
  }

  @Test
  void noVisitChangesNothing() {
    Learned learned = Learned.from(GUIDE, List.of());
    assertEquals(0, learned.visits());
    assertEquals(GUIDE, learned.site().applyTo(GUIDE));
    Visit open = visit("cells-low", Outcome.HANDED_OVER, 30, "new-cells");
    Visit unknown = visit("no-such-cause", Outcome.FIXED, 30, "new-cells");
    Visit odd = visit("mixer-set-wrong", Outcome.FIXED, 30, "new-cells");
    assertEquals(GUIDE, after(List.of(open, unknown, odd)));
  }

  @Test
  void asManyVisitsAsTheGuideIsWorthMeetHalfWay() {
    double before = share(GUIDE, "cells-low");
    List<Visit> visits =
        Collections.nCopies(Learned.GUIDE_VISITS, visit("cells-low", Outcome.FIXED, 0));
    assertEquals((before + 1) / 2, share(after(visits), "cells-low"), 1e-9);
    double other = share(GUIDE, "plug-loose");
    assertEquals(other / 2, share(after(visits), "plug-loose"), 1e-9);
  }

  @Property(tries = 50)
  void eachVisitMakesItsCauseLikelierAndNoOther(@ForAll @IntRange(max = 60) int visits) {
    List<Visit> some = Collections.nCopies(visits, visit("cells-low", Outcome.FIXED, 0));
    List<Visit> more = Collections.nCopies(visits + 1, visit("cells-low", Outcome.RESET_WATCH, 0));
    assertTrue(share(after(more), "cells-low") > share(after(some), "cells-low"));
    assertTrue(share(after(more), "plug-loose") < share(after(some), "plug-loose"));
    Situation dead = Situation.of(FixtureKind.URINAL, Optional.of(Power.CELLS), Complaint.DEAD);
    double first = probability(Diagnosis.start(after(some), dead));
    assertTrue(probability(Diagnosis.start(after(more), dead)) > first);
  }

  private static double probability(Diagnosis visit) {
    return visit.causes().entrySet().stream()
        .filter(entry -> entry.getKey().id().equals("cells-low"))
        .mapToDouble(entry -> entry.getValue())
        .sum();
  }

  /** Drawn from shares unlike the guide's, the site's own shares are found. */
  @Test
  void manyVisitsTellTheSitesOwnShares() {
    Random chance = new Random(20261125);
    List<Visit> visits = new ArrayList<>();
    for (int i = 0; i < 2000; i++) {
      String cause = chance.nextDouble() < 0.7 ? "plug-loose" : "cells-low";
      visits.add(visit(cause, Outcome.FIXED, 0));
    }
    assertEquals(0.7, share(after(visits), "plug-loose"), 0.03);
    assertEquals(0.3, share(after(visits), "cells-low"), 0.03);
  }

  @Test
  void minutesMoveTowardsTheSitesOwn() {
    double usual = GUIDE.remedy("new-cells").orElseThrow().minutes();
    double bowl = GUIDE.check("bowl").orElseThrow().minutes();
    List<Visit> visits =
        Collections.nCopies(
            Learned.GUIDE_MINUTES,
            visit("cells-low", Outcome.FIXED, usual + 10 + bowl, "new-cells"));
    Learned learned = Learned.from(GUIDE, visits);
    assertEquals(Learned.GUIDE_MINUTES, learned.timed());
    Guide guide = learned.site().applyTo(GUIDE);
    assertEquals(usual + 5, guide.remedy("new-cells").orElseThrow().minutes(), 1e-9);
    Visit two = visit("cells-low", Outcome.FIXED, 90, "new-cells", "clean-contacts");
    assertEquals(0, Learned.from(GUIDE, List.of(two)).timed());
    Visit quick = visit("cells-low", Outcome.FIXED, 0.1, "new-cells");
    assertTrue(
        after(List.of(quick)).remedy("new-cells").orElseThrow().minutes()
            >= usual * Learned.GUIDE_MINUTES / (Learned.GUIDE_MINUTES + 1));
  }
}
