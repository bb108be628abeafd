package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.file.GuideReader;
import lampwise.file.SheetReader;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;

/** What a visit remembers, and how it ends. */
class VisitCourseTest {
  private static final Guide GUIDE = GuideReader.builtIn();

  private static Diagnosis start(FixtureKind kind, Complaint complaint) {
    return Diagnosis.start(GUIDE, kind, Optional.of(Power.CELLS), complaint);
  }

  private static Diagnosis looked(FixtureKind kind, Complaint complaint) {
    return start(kind, complaint)
        .with(new Finding("danger", "none"))
        .with(new Finding("bowl", "clear"));
  }

  private static List<String> lines(Step.Close close) {
    return close.lines().stream().map(ClosingStep::text).toList();
  }

  @Test
  void itKeepsWhatItStartedFromAndWhatHappened() {
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    assertSame(GUIDE, visit.guide());
    assertEquals(FixtureKind.URINAL, visit.situation().kind());
    Finding none = new Finding("danger", "none");
    Diagnosis after = visit.with(none).with(new Act.Skipped("bowl"));
    assertEquals(List.of(new Act.Found(none), new Act.Skipped("bowl")), after.acts());
    assertEquals(List.of(), visit.acts());
  }

  @Test
  void whatTheGuideDoesNotKnowCannotHaveHappened() {
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    assertEquals(
        "the guide has no rule to make safe moon",
        assertThrows(GuideException.class, () -> visit.with(new Act.Secured("moon"))).getMessage());
    assertEquals(
        "the guide has no remedy moon",
        assertThrows(GuideException.class, () -> visit.with(new Act.Tried("moon", true)))
            .getMessage());
    assertThrows(GuideException.class, () -> visit.with(new Act.Skipped("moon")));
  }

  @Test
  void theFirstRowOfTheLogIsItsOwn() {
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    assertEquals(OptionalInt.empty(), visit.loggedRow());
    Diagnosis logged = visit.with(new Act.Logged(7)).with(new Act.Logged(9));
    assertEquals(OptionalInt.of(7), logged.loggedRow());
  }

  @Test
  void theLastReadingIsWhatTheLampSaid() {
    CodeSheet demo = SheetReader.demo();
    Reading nothing = new LampDecoder().decode(demo, List.of());
    Diagnosis visit = start(FixtureKind.URINAL, Complaint.DEAD);
    assertEquals(Visit.Lamp.unseen(), visit.lamp());
    assertFalse(visit.isInvented());
    Diagnosis read =
        visit.with(demo, nothing, List.of("a.csv")).with(demo, nothing, List.of("b.csv"));
    assertEquals(List.of("b.csv"), read.with(new Finding("danger", "none")).lamp().recordings());
    assertTrue(read.isInvented());
    CodeSheet own = CodeSheet.of("Own", Basis.LABEL, demo.states());
    assertFalse(visit.with(own, nothing).isInvented());
  }

  @Test
  void aCauseIsSettledOnceItIsLikelierThanAllOthers() {
    Diagnosis visit = looked(FixtureKind.URINAL, Complaint.LAMP_ONLY);
    Diagnosis low = visit.with(new Finding("cells-load", "low"));
    assertEquals("cells-low", low.settled().map(Cause::id).orElse("-"));
    assertTrue(low.causes().values().iterator().next() > 0.5);
    Diagnosis open = looked(FixtureKind.URINAL, Complaint.DEAD);
    assertTrue(open.causes().values().iterator().next() <= 0.5);
    assertEquals(Optional.empty(), open.settled());
  }

  @Test
  void whatWorksIsClosedWithWhatWasOpened() {
    Diagnosis visit =
        looked(FixtureKind.FAUCET, Complaint.DEAD).with(new Act.Tried("new-cells", true));
    Step.Close close = assertInstanceOf(Step.Close.class, visit.next());
    assertEquals(Outcome.FIXED, close.outcome());
    assertEquals("It works, and the checks of this remedy have proven it.", close.why());
    List<String> lines = lines(close);
    assertTrue(lines.contains("Three good runs, each stops by itself"), lines::toString);
    assertTrue(lines.contains("Housing shut, no lead pinched, old cells taken along"));
    assertTrue(lines.contains("Figures, parts and minutes are written down"));
    assertFalse(lines.contains("Three good flushes, the bowl clear before each"));
    assertFalse(lines.contains("Ring and joints are dry"), lines::toString);
    // Writing it down changes nothing.
    assertEquals(close, visit.with(new Act.Logged(1)).next());
  }

  @Test
  void whatMayComeBackIsWatched() {
    Remedy reset = GUIDE.remedies().stream().filter(Remedy::watch).findFirst().orElseThrow();
    Diagnosis visit =
        looked(FixtureKind.URINAL, Complaint.DEAD).with(new Act.Tried(reset.id(), true));
    Step.Close close = assertInstanceOf(Step.Close.class, visit.next());
    assertEquals(Outcome.RESET_WATCH, close.outcome());
    assertTrue(close.why().contains("may come back within days"), close::why);
  }

  @Test
  void whatIsHandedOverIsNotProvenToWork() {
    Diagnosis visit =
        looked(FixtureKind.URINAL, Complaint.DEAD)
            .with(new Act.Tried("new-cells", false))
            .with(new Act.Handed(Who.PLUMBER));
    Step.Close close = assertInstanceOf(Step.Close.class, visit.next());
    assertEquals(Outcome.HANDED_OVER, close.outcome());
    List<String> lines = lines(close);
    assertTrue(lines.contains("Figures, parts and minutes are written down"), lines::toString);
    assertTrue(lines.contains("Housing shut, no lead pinched, old cells taken along"));
    assertFalse(lines.contains("Three good flushes, the bowl clear before each"));
    assertFalse(lines.contains("The manual override moves freely and works"));
  }
}
