package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Next;
import lampwise.decode.Verdict;
import lampwise.light.Window;
import lampwise.service.Complaint;
import lampwise.service.Fixture;
import lampwise.service.LampRead;
import lampwise.service.LampSaid;
import lampwise.service.Outcome;
import lampwise.service.Round;
import lampwise.service.Site;
import lampwise.service.Visit;
import lampwise.service.Worklist;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;

/** A round as JSON and as a table, to the letter. */
class RoundJsonTest {
  private static Fixture fixture(String id, String lastCells, Optional<Complaint> complaint) {
    return new Fixture(
        id,
        "Hall",
        FixtureKind.URINAL,
        Optional.of(Power.CELLS),
        "",
        "",
        "",
        "",
        false,
        lastCells,
        "",
        complaint);
  }

  private static LampRead lamp(Verdict verdict, Visit.Lamp seen, String observed) {
    return new LampRead(
        "r.log",
        seen,
        new LampSaid(Map.of(), 1, false),
        verdict,
        verdict instanceof Verdict.Decoded ? Map.of(Condition.POWER_LOW, 1.0) : Map.of(),
        "",
        observed,
        Optional.empty());
  }

  private static LampRead open(Verdict verdict) {
    return lamp(
        verdict, new Visit.Lamp(List.of("r.log"), verdict.word(), "", OptionalDouble.empty()), "");
  }

  private static Visit visit(String when, String fixture, Outcome outcome) {
    return new Visit(
        when,
        fixture,
        "",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        new Visit.Done("empty", List.of(), List.of(), OptionalDouble.empty()),
        List.of(),
        List.of(),
        outcome,
        "",
        "");
  }

  private static Round round(
      List<Fixture> fixtures, Map<String, List<LampRead>> read, Visit... visits)
      throws FileException {
    Worklist.Basis basis =
        new Worklist.Basis(GuideText.read(GuideText.SMALL), Site.unknown(), "2026-11-25", 730);
    return new Round(
        "T",
        "2026-11-25",
        false,
        fixtures,
        read,
        Worklist.of(basis, fixtures, read, List.of(visits)),
        List.of(new Round.Unused("s.log", "a stray")),
        List.of(new Round.Unused("x.log", "refused")));
  }

  private static String json(Round round) throws IOException {
    StringWriter out = new StringWriter();
    RoundJson.write(out, round);
    return out.toString();
  }

  private static Round low() throws FileException {
    LampRead low =
        lamp(
            new Verdict.Decoded("low", 0.97, new Window(0, 60)),
            new Visit.Lamp(List.of("r.log"), "low", "power-low", OptionalDouble.of(0.97)),
            "1 blink every 3 s");
    return round(
        List.of(fixture("a", "2026-01-02", Optional.empty())),
        Map.of("a", List.of(low)),
        visit("2026-11-20T10:00", "a", Outcome.FIXED));
  }

  @Test
  void aJobStandsInItsOrder() throws IOException, FileException {
    String json = json(low());
    assertEquals(
        "{\"lampwise-round\":1,\"title\":\"T\",\"day\":\"2026-11-25\",\"invented\":false,"
            + "\"fixtures\":1,\"readings\":1,\"jobs\":[{\"fixture\":\"a\",\"place\":\"Hall\","
            + "\"kind\":\"urinal\",\"complaint\":\"lamp-only\",\"urgent\":[\"repeat\",\"lamp-only\"],"
            + "\"weight\":8.0,\"lamp\":{\"recording\":\"r.log\",\"verdict\":\"decoded\","
            + "\"state\":\"low\",\"condition\":\"power-low\",\"probability\":0.97,\"observed\":\"1"
            + " blink every 3 s\"},\"causes\":[{\"cause\":\"empty\",\"name\":\"Cells"
            + " empty\",\"probability\":0.9},{\"cause\":\"other\",\"name\":\"Something"
            + " else\",\"probability\":0.1}],"
            + "\"make_safe\":null,\"before\":[\"bowl\"],\"next\":{\"do\":\"repair\",",
        json.substring(0, json.indexOf("\"id\":\"renew\"")));
    assertEquals(
        "\"minutes\":21.05,\"parts\":[\"cell set\"],\"waits_for\":null,"
            + "\"lately\":[{\"when\":\"2026-11-20T10:00\",\"result\":\"fixed\",\"cause\":\"empty\"}]}],"
            + "\"in_order\":[],\"again\":[],\"kit\":[{\"part\":\"cell"
            + " set\",\"count\":1,\"fixtures\":[\"a\"]}],"
            + "\"hand_overs\":[],\"cells_due\":[],\"not_visited\":[],\"strays\":[{\"recording\":\"s.log\",\"why\":\"a"
            + " stray\"}],\"refused\":[{\"recording\":\"x.log\",\"why\":\"refused\"}]}",
        json.substring(json.indexOf("\"minutes\":21.05")));
  }

  @Test
  void aJobIsARowOfTheTable() throws IOException, FileException {
    assertEquals(
        List.of(
            "order,fixture,place,kind,complaint,urgent,weight,recording,lamp,probability,cause,"
                + "cause-probability,make-safe,next,minutes,parts,waits-for",
            "1,a,Hall,urinal,lamp-only,repeat; lamp-only,8,r.log,low,0.97,Cells empty,0.9,,"
                + "repair: New cells,21.05,cell set,"),
        RoundCsv.write(low()).lines().toList());
    Round unknown =
        round(List.of(fixture("b", "2026-01-02", Optional.of(Complaint.WEAK))), Map.of());
    assertEquals(
        "1,b,Hall,urinal,weak,weak,10,,,,,,,,,,",
        RoundCsv.write(unknown).lines().skip(1).findFirst().orElse(""));
    assertEquals(
        true,
        json(unknown)
            .contains(
                "\"lamp\":null,\"causes\":[],\"make_safe\":null,"
                    + "\"before\":[],\"next\":null,\"minutes\":null,\"parts\":[],\"waits_for\":null,"));
  }

  @Test
  void whatIsToBeRecordedAgainSaysHow() throws IOException, FileException {
    Map<String, List<LampRead>> read = new LinkedHashMap<>();
    Next watch = new Next.Watch(45, OptionalDouble.of(20), "none", "how");
    Next check = new Next.Check("hold a card there", 2);
    read.put("a", List.of(open(new Verdict.Unreadable("too short", watch))));
    read.put("b", List.of(open(new Verdict.Undecided(List.of(), "two fit", check))));
    String json =
        json(
            round(
                List.of(
                    fixture("a", "2026-01-02", Optional.empty()),
                    fixture("b", "", Optional.empty()),
                    fixture("c", "2024-11-25", Optional.empty())),
                read,
                visit("2026-11-20T10:00", "c", Outcome.MADE_SAFE)));
    assertEquals(
        "\"again\":[{\"fixture\":\"a\",\"recording\":\"r.log\",\"verdict\":\"unreadable\","
            + "\"state\":null,\"condition\":null,\"probability\":null,\"observed\":null,"
            + "\"reason\":\"too short\",\"next\":{\"kind\":\"record\",\"seconds\":45,"
            + "\"rate_hz\":20,\"target\":\"none\"}},"
            + "{\"fixture\":\"b\",\"recording\":\"r.log\",\"verdict\":\"undecided\","
            + "\"state\":null,\"condition\":null,\"probability\":null,\"observed\":null,"
            + "\"reason\":\"two fit\",\"next\":{\"kind\":\"check\",\"ask\":\"hold a card there\","
            + "\"minutes\":2}}],"
            + "\"kit\":[{\"part\":\"cell set\",\"count\":2,\"fixtures\":[\"b\",\"c\"]}],"
            + "\"hand_overs\":[{\"fixture\":\"c\",\"to\":\"plumber\","
            + "\"left\":\"2026-11-20T10:00\"}],"
            + "\"cells_due\":[{\"fixture\":\"b\",\"since\":null,\"days\":null},"
            + "{\"fixture\":\"c\",\"since\":\"2024-11-25\",\"days\":730}],"
            + "\"not_visited\":[\"c\"],",
        json.substring(json.indexOf("\"again\""), json.indexOf("\"strays\"")));
  }
}
