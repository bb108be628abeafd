package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import lampwise.service.Complaint;
import lampwise.service.Guide;
import lampwise.service.Measure;
import lampwise.service.Site;
import lampwise.service.SiteLimit;
import lampwise.service.SiteUnits;
import lampwise.service.Urgency;
import lampwise.service.WaterPrice;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SiteReaderTest {
  private static final String SITE =
      """
      lampwise-site: 1
      title: Ferry terminal
      shares:
        empty: {dead: 12}
      minutes: {renew: 6, bowl: 1}
      hand-over-minutes: 60
      second-trip-minutes: 25
      who: {renew: plumber}
      water: {price: 10, currency: USD, per: 1000 gal}
      units: {pressure: bar, flow: L/min}
      limits:
        - of: flush-volume
          kind: [water-closet]
          at-least: 3.8 L
          at-most: 4.8 L
          basis: city code
      urgency: {running: 80}
      """;

  private static Site read(String text) throws FileException {
    return SiteReader.read("site", GuideText.bytes(text), GuideText.read(GuideText.SMALL));
  }

  @Test
  void readsEveryKey() throws FileException {
    assertEquals(
        new Site(
            "Ferry terminal",
            Map.of("empty", Map.of(Complaint.DEAD, 12.0)),
            Map.of("renew", 6.0, "bowl", 1.0),
            OptionalDouble.of(60),
            OptionalDouble.of(25),
            Map.of("renew", Who.PLUMBER),
            Optional.of(new WaterPrice(10, "USD", 3785.411784)),
            new SiteUnits(
                Optional.of("bar"), Optional.empty(), Optional.of("L/min"), Optional.empty()),
            List.of(
                new SiteLimit(
                    Measure.FLUSH_VOLUME,
                    List.of(FixtureKind.WATER_CLOSET),
                    OptionalDouble.of(3.8),
                    OptionalDouble.of(4.8),
                    "L",
                    "city code")),
            Map.of(Urgency.RUNNING, 80.0)),
        read(SITE));
  }

  @Test
  void replacesTheFiguresOfTheGuide() throws FileException {
    Guide guide = GuideText.read(GuideText.SMALL);
    Guide own = read(SITE).applyTo(guide);
    assertEquals(60, own.handOverMinutes());
    assertEquals(25, own.secondTripMinutes());
    assertEquals(
        Map.of(Complaint.DEAD, 12.0, Complaint.LAMP_ONLY, 9.0),
        own.cause("empty").orElseThrow().shares());
    assertEquals(guide.cause("blocked"), own.cause("blocked"));
    assertEquals(1, own.check("bowl").orElseThrow().minutes());
    assertEquals(4, own.check("cells").orElseThrow().minutes());
    assertEquals(6, own.remedy("renew").orElseThrow().minutes());
    assertEquals(Who.PLUMBER, own.remedy("renew").orElseThrow().who());
    assertEquals(guide.remedy("unblock"), own.remedy("unblock"));
    assertEquals(guide, Site.unknown().applyTo(guide));
  }

  /** facts/plumbing.md 3.5, derived: half a gallon a minute is 262,800 gal a year, 2,628 at 10. */
  @Test
  void costsOfWaterFollowThePrice() throws FileException {
    WaterPrice price = read(SITE).water().orElseThrow();
    assertEquals(2628, price.of(262_800 * 3.785411784), 1e-6);
  }

  @Test
  void saysNothingWhereTheFileSaysNothing() throws FileException {
    Site site = read("lampwise-site: 1\ntitle: Bare\n");
    assertEquals(Optional.empty(), site.water());
    assertEquals(SiteUnits.unsaid(), site.units());
    assertEquals(60, site.weight(Urgency.RUNNING));
    assertEquals(80, read(SITE).weight(Urgency.RUNNING));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          empty: {dead: 12}       | emty: {dead: 12}         | 4:3: unknown key "emty"; did you mean "empty"?
          empty: {dead: 12}       | empty: {dead: none}      | 4:17: dead must be a number over 0 such as 2.5; found "none"
          empty: {dead: 12}       | empty: 12                | 4:10: empty must be a table such as {dead: ...}; found "12"
          renew: 6, bowl: 1       | renew: 0                 | 5:18: renew must be a number of minutes over 0 such as 12; found "0"
          renew: 6, bowl: 1       | renwe: 6                 | 5:11: unknown key "renwe"; did you mean "renew"?
          renew: plumber          | renew: plumer            | 8:14: renew must be one of anyone, technician, plumber, electrician, owner; found "plumer"; did you mean plumber?
          per: 1000 gal           | per: 1000 pints          | 9:40: per must be a volume over 0 in gal, ft3, L or m3 such as 1000 gal; found "1000 pints"
          price: 10               | prize: 10                | 9:9: unknown key "prize"; did you mean "price"?
          pressure: bar           | pressure: atm            | 10:19: pressure must be one of psi, kPa, bar; found "atm"
          at-most: 4.8 L          | at-most: 4.8 gpm         | 15:14: at-most must be a number and one of the units gal, L; found "4.8 gpm"
          at-most: 4.8 L          | at-most: 1.28 gal        | 12:5: at-least and at-most must be in one unit
          at-most: 4.8 L          | at-most: 3 L             | 12:5: at-least must not be more than at-most
          basis: city code        | note: city code          | 12:5: the key "basis" is missing
          of: flush-volume        | of: volume               | 12:9: of must be one of static-pressure, flowing-pressure, flush-volume, flow, temperature, running-time; found "volume"; did you mean flush-volume?
          running: 80             | running: much            | 17:20: running must be a number of 0 or more such as 20; found "much"
          lampwise-site: 1        | lampwise-site: 3         | 1:16: lampwise-site must be 1; found "3"
          title: Ferry terminal   | name: Ferry terminal     | 1:1: the key "title" is missing
          """)
  void tellsAFaultAndWhereItStands(String from, String to, String expected) {
    assertTrue(SITE.contains(from), from);
    FileException e = assertThrows(FileException.class, () -> read(SITE.replace(from, to)));
    List<String> told =
        e.faults().stream()
            .map(fault -> fault.line() + ":" + fault.column() + ": " + fault.message())
            .collect(Collectors.toList());
    assertTrue(told.contains(expected), String.join("\n", told));
  }

  @Test
  void refusesAListAndALimitWithoutBound() {
    assertEquals(
        "site:1:1: a site must be a table of keys; found a list",
        assertThrows(FileException.class, () -> read("- a\n")).getMessage());
    assertEquals(
        "site:4:5: a limit needs at-least or at-most",
        assertThrows(
                FileException.class,
                () -> read("lampwise-site: 1\ntitle: A\nlimits:\n  - {of: flow, basis: b}\n"))
            .getMessage());
    assertEquals(
        "site:4:5: a limit must be a table with the keys of and basis; found \"flow\"",
        assertThrows(
                FileException.class, () -> read("lampwise-site: 1\ntitle: A\nlimits:\n  - flow\n"))
            .getMessage());
  }
}
