package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwise.service.Act;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Outcome;
import lampwise.service.Site;
import lampwise.service.Situation;
import lampwise.service.Visit;
import lampwise.service.Volume;
import lampwise.service.WaterCheck;
import lampwise.service.WaterFound;
import lampwise.service.WaterUnit;
import lampwise.service.Who;
import lampwise.service.Work;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;

/** Visits and water figures as JSON, to the letter. */
class ServiceJsonTest {
  private static final String NO_STEP =
      "\"answers\":[],\"parts\":[],\"missing\":[],\"verify\":[],\"minutes\":null,";

  private static Diagnosis dead(Power power, Work... recent) throws FileException {
    return Diagnosis.start(
        GuideText.read(GuideText.SMALL),
        new Situation(
            FixtureKind.URINAL,
            Optional.of(power),
            Complaint.DEAD,
            List.of(recent),
            Optional.of(List.of()),
            Situation.TECHNICIAN));
  }

  private static String json(Diagnosis visit) throws IOException, FileException {
    StringWriter out = new StringWriter();
    DiagnosisJson.write(out, visit);
    return out.toString();
  }

  /** What stands behind the causes. */
  private static String next(Diagnosis visit) throws IOException, FileException {
    String json = json(visit);
    return json.substring(json.indexOf("\"next\":"));
  }

  @Test
  void aVisitStandsInItsOrder() throws IOException, FileException {
    Diagnosis visit =
        dead(Power.MAINS, Work.VALVE)
            .with(new Finding("bowl", "clear"))
            .with(new Act.Tried("unblock", false));
    assertEquals(
        "{\"lampwise-diagnosis\":1,\"invented\":false,\"kind\":\"urinal\",\"power\":\"mains\","
            + "\"complaint\":\"dead\",\"recent\":[\"valve\"],\"learned_from\":null,\"repeats\":[],"
            + "\"found\":[{\"check\":\"bowl\",\"answer\":\"clear\"}],"
            + "\"tried\":[{\"remedy\":\"unblock\",\"worked\":false}],"
            + "\"causes\":[{\"cause\":\"other\",\"name\":\"Something else\","
            + "\"probability\":0.956106},{\"cause\":\"blocked\",\"name\":\"Blocked\","
            + "\"probability\":0.043894}],",
        json(visit).substring(0, json(visit).indexOf("\"next\":")));
  }

  @Test
  void whatWasLearnedAndVisitedBeforeIsSaid() throws IOException, FileException {
    StringWriter out = new StringWriter();
    Visit before =
        new Visit(
            "2026-11-20T10:00",
            "a",
            "",
            Optional.empty(),
            Optional.empty(),
            Visit.Lamp.unseen(),
            List.of(),
            new Visit.Done("blocked", List.of(), List.of(), OptionalDouble.empty()),
            List.of(),
            List.of(),
            Outcome.RESET_WATCH,
            "",
            "");
    DiagnosisJson.write(out, dead(Power.MAINS), OptionalInt.of(3), List.of(before));
    String json = out.toString();
    assertEquals(
        "\"learned_from\":3,\"repeats\":[{\"when\":\"2026-11-20T10:00\",\"result\":\"reset,"
            + " watch\",\"cause\":\"blocked\"}],",
        json.substring(json.indexOf("\"learned_from\""), json.indexOf("\"found\"")));
  }

  @Test
  void aCheckHasItsAnswers() throws IOException, FileException {
    assertEquals(
        "\"next\":{\"do\":\"check\",\"id\":\"bowl\",\"say\":\"Is it clear?\",\"cautions\":[],"
            + "\"steps\":[],\"answers\":[{\"answer\":\"clear\",\"means\":\"Clear\"},"
            + "{\"answer\":\"full\",\"means\":\"Full\"}],\"parts\":[],\"missing\":[],\"verify\":[],"
            + "\"minutes\":0.5,\"expected_minutes\":59.97,\"to\":null,\"result\":null,"
            + "\"why\":\"Likeliest are \\\"Blocked\\\" (67 %) and \\\"Something else\\\" (33 %);"
            + " this takes 0.5 min and leaves 60 min expected to a working fixture, 62 min without"
            + " asking.\"}}",
        next(dead(Power.MAINS)));
  }

  @Test
  void aRepairHasItsPartsAndItsProof() throws IOException, FileException {
    String next =
        next(
            dead(Power.CELLS).with(new Finding("bowl", "clear")).with(new Finding("cells", "low")));
    assertEquals(
        "\"next\":{\"do\":\"repair\",\"id\":\"renew\",\"say\":\"New cells\","
            + "\"cautions\":[\"Look first\"],\"steps\":[\"Old ones out\",\"New ones in\"],"
            + "\"answers\":[],\"parts\":[\"cell set\"],\"missing\":[\"cell set\"],"
            + "\"verify\":[{\"check\":\"cells\",\"answers\":[\"good\"]}],\"minutes\":8.0,",
        next.substring(0, next.indexOf("\"expected_minutes\"")));
  }

  @Test
  void dangersHandOversAndEndsHaveNoMinutesOfTheirOwn() throws IOException, FileException {
    assertEquals(
        "\"next\":{\"do\":\"make-safe\",\"id\":\"full\",\"say\":\"It runs over\","
            + "\"cautions\":[\"Look first\"],\"steps\":[\"Close the stop\"],"
            + NO_STEP
            + "\"expected_minutes\":null,\"to\":null,\"result\":null,"
            + "\"why\":\"Making safe comes before any question: It runs over.\"}}",
        next(dead(Power.CELLS).with(new Finding("bowl", "full"))));
    String over = next(dead(Power.MAINS).with(new Finding("bowl", "clear")));
    assertEquals(
        "\"next\":{\"do\":\"hand-over\",\"id\":null,\"say\":\"Hand over to: plumber\","
            + "\"cautions\":[],\"steps\":[],"
            + NO_STEP
            + "\"expected_minutes\":90.0,\"to\":\"plumber\",\"result\":null,",
        over.substring(0, over.indexOf("\"why\"")));
    String works = "It works, and the checks of this remedy have proven it.";
    assertEquals(
        "\"next\":{\"do\":\"close\",\"id\":null,\"say\":\""
            + works
            + "\",\"cautions\":[],\"steps\":[\"Written down\"],"
            + NO_STEP
            + "\"expected_minutes\":null,\"to\":null,\"result\":\"fixed\",\"why\":\""
            + works
            + "\"}}",
        next(dead(Power.CELLS).with(new Act.Tried("unblock", true))));
    Diagnosis handed = dead(Power.CELLS).with(new Act.Handed(Who.PLUMBER));
    assertEquals(true, next(handed).contains("\"result\":\"handed over\""), next(handed));
  }

  @Test
  void othersWorkIsNamed() throws IOException, FileException {
    Diagnosis visit =
        Diagnosis.start(
            GuideText.read(GuideText.changed("who: anyone", "who: plumber")),
            Situation.of(FixtureKind.URINAL, Optional.of(Power.CELLS), Complaint.LAMP_ONLY));
    String next = next(visit);
    assertEquals(
        "\"next\":{\"do\":\"hand-over\",\"id\":\"renew\",\"say\":\"New cells\","
            + "\"cautions\":[\"Look first\"],\"steps\":[\"Old ones out\",\"New ones in\"],"
            + NO_STEP
            + "\"expected_minutes\":21.05,\"to\":\"plumber\",\"result\":null,",
        next.substring(0, next.indexOf("\"why\"")));
  }

  @Test
  void waterFiguresStandInTheirUnits() {
    WaterFound found =
        new WaterFound(
            FixtureKind.URINAL,
            "",
            OptionalDouble.of(200),
            OptionalDouble.of(200),
            Optional.of(new Volume(4.7, 0.12, 1, Volume.Method.METER, 0)),
            OptionalDouble.empty(),
            OptionalDouble.of(4.8),
            OptionalDouble.of(4.8),
            WaterUnit.LITRE);
    WaterCheck check = WaterCheck.of(found, Site.unknown(), Optional.of("UPC 608.1"));
    assertEquals(
        "{\"lampwise-water\":1,\"kind\":\"urinal\",\"volume\":{\"litres\":4.7,"
            + "\"unsure_litres\":0.12,\"flushes\":1,\"by\":\"meter\"},"
            + "\"figures\":[{\"of\":\"flowing-pressure\",\"value\":29.0075,\"unsure\":0,"
            + "\"unit\":\"psi\",\"at_least\":15,\"at_most\":null,\"basis\":\"UPC 608.1\","
            + "\"sure\":\"seen in secondary text\",\"verdict\":\"pass\",\"more_flushes\":null}],"
            + "\"says\":[],\"unproven\":[],"
            + "\"computed\":[{\"what\":\"a\",\"value\":1.2346,\"unit\":\"L\",\"how\":null},"
            + "{\"what\":\"b\",\"value\":1,\"unit\":\"gal\",\"how\":\"why\"}]}",
        WaterJson.object(
            Optional.of(FixtureKind.URINAL),
            found.volume(),
            Optional.of(check),
            List.of(
                new WaterJson.Computed("a", 1.23456, "L", ""),
                WaterJson.Computed.of("b", 3.785411784, WaterUnit.GALLON, "why"))));
    String marked =
        WaterJson.object(
            Optional.empty(),
            Optional.empty(),
            Optional.of(WaterCheck.of(found, Site.unknown(), Optional.empty())),
            List.of());
    assertEquals(
        "\"verdict\":\"not decided\",\"more_flushes\":1}],",
        marked.substring(marked.indexOf("\"verdict\":\"not"), marked.indexOf("\"says\"")));
    assertEquals(
        "{\"lampwise-water\":1,\"kind\":null,\"volume\":null,\"figures\":[],\"says\":[],"
            + "\"unproven\":[],\"computed\":[]}",
        WaterJson.object(Optional.empty(), Optional.empty(), Optional.empty(), List.of()));
  }
}
