package lampwise.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.service.Fixture;
import lampwise.service.Job;
import lampwise.service.Worklist;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Person;
import lampwise.sim.Presets;
import picocli.CommandLine.ParseResult;

/** What is needed before a round: the route, the kit, and a card for each sheet. */
final class RoundPrepare {
  private static final int STRIP = 32;

  private final RoundInput input;
  private final Worklist worklist;
  private final Map<String, List<Fixture>> route = new LinkedHashMap<>();
  private final Map<CodeSheet, List<Fixture>> cards = new LinkedHashMap<>();
  private final Map<CodeSheet, OptionalInt> seconds = new LinkedHashMap<>();

  private RoundPrepare(RoundInput input, Surroundings here) {
    this.input = input;
    worklist = Worklist.of(input.basis(), input.fixtures(), Map.of(), input.visits());
    for (Fixture fixture : input.fixtures()) {
      route.computeIfAbsent(area(fixture.place()), area -> new ArrayList<>()).add(fixture);
      Optional.ofNullable(input.sheets().get(fixture.id()))
          .ifPresent(sheet -> cards.computeIfAbsent(sheet, s -> new ArrayList<>()).add(fixture));
    }
    cards.keySet().forEach(sheet -> seconds.put(sheet, watch(sheet, here)));
  }

  /** Prints what is needed, and writes it as a page if that was asked for. */
  static int run(RoundInput input, ParseResult parsed, Surroundings here) throws UsageException {
    for (String other : List.of("--json", "--csv", "--hand-over")) {
      if (parsed.hasMatchedOption(other)) {
        throw new UsageException(other + " goes without --prepare");
      }
    }
    RoundPrepare prepare = new RoundPrepare(input, here);
    prepare.lines().forEach(here.out()::println);
    Optional<String> report = ReadingFlags.text(parsed, "--report");
    if (report.isPresent()) {
      OutputFiles.write(here, report.get(), prepare.page(), parsed.hasMatchedOption("--force"));
    }
    return Main.DONE;
  }

  /** The longest of the shortest recordings that tell a sheet's states apart, nothing provoked. */
  private static OptionalInt watch(CodeSheet sheet, Surroundings here) {
    if (!(Presets.named(ObserverOption.USUAL) instanceof Person person)) {
      return OptionalInt.empty();
    }
    RecordingPlan plan =
        new RecordingPlan(
            sheet,
            Watching.byHand(
                person.timingSd(),
                person.missed(),
                person.straysPerMinute() / 60,
                person.firstLateSeconds()));
    Progress progress = new Progress(here, plan.count(), System::nanoTime);
    AtomicInteger done = new AtomicInteger();
    List<RecordingPlan.Pair> pairs =
        plan.pairs(
            () -> {
              synchronized (progress) {
                progress.done(done.incrementAndGet());
              }
            });
    progress.end();
    return pairs.stream()
        .filter(pair -> pair.provoke().isEmpty() && pair.seconds().isPresent())
        .mapToInt(pair -> (int) Math.ceil(pair.seconds().getAsDouble()))
        .max();
  }

  private String watching(CodeSheet sheet) {
    OptionalInt plan = seconds.getOrDefault(sheet, OptionalInt.empty());
    return plan.isPresent()
        ? "watch "
            + plan.getAsInt()
            + " s with nobody before it: a careful person can then tell apart what can be"
        : "watch " + Words.duration(SheetCard.watchSeconds(sheet));
  }

  private String title() {
    return "Before the round of " + RoundText.at(input.basis().day(), input.title());
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.addAll(VisitText.wrapped(input.isInvented() ? RoundText.INVENTED : "", title()));
    lines.add("");
    lines.add("Route");
    int number = 1;
    for (Map.Entry<String, List<Fixture>> stop : route.entrySet()) {
      String label = "  " + number++ + ". ";
      lines.addAll(VisitText.wrapped(label, stop.getKey() + ": " + fixtures(stop)));
    }
    needed()
        .forEach(
            (heading, items) -> {
              lines.add("");
              lines.add(heading);
              items.forEach(item -> lines.addAll(VisitText.wrapped("  - ", item)));
            });
    for (Map.Entry<CodeSheet, List<Fixture>> card : cards.entrySet()) {
      CodeSheet sheet = card.getKey();
      lines.add("");
      lines.addAll(VisitText.wrapped("Card: ", sheet.title()));
      lines.addAll(VisitText.wrapped("  for ", ids(card.getValue())));
      lines.addAll(VisitText.wrapped("  ", watching(sheet)));
      int width = sheet.states().stream().mapToInt(state -> state.name().length()).max().orElse(1);
      for (LampState state : sheet.states()) {
        String strip = RhythmStrip.text(state.rhythm(), sheet.blinkSeconds(), STRIP);
        lines.addAll(
            VisitText.wrapped(
                "  " + Layout.padded(state.name(), Math.min(width, 30)) + " ", strip));
      }
      for (String step : SheetCard.provoking(sheet)) {
        lines.addAll(VisitText.wrapped("  provoke: ", step));
      }
    }
    return lines;
  }

  /** Fixtures whose places are alike up to the first comma are one stop. */
  private static String area(String place) {
    int comma = place.indexOf(',');
    String area = comma < 0 ? place : place.substring(0, comma);
    return area.isBlank() ? "place not known" : area.strip();
  }

  private String fixtures(Map.Entry<String, List<Fixture>> stop) {
    return stop.getValue().stream().map(this::fixture).collect(Collectors.joining(", "));
  }

  private String fixture(Fixture fixture) {
    List<String> words = new ArrayList<>();
    fixture.complaint().ifPresent(complaint -> words.add(complaint.word()));
    if (fixture.onlyAccessible()) {
      words.add("only accessible");
    }
    return fixture.id() + (words.isEmpty() ? "" : " (" + String.join(", ", words) + ")");
  }

  /** What to bring and to know, by its heading. */
  private Map<String, List<String>> needed() {
    Map<String, List<String>> needed = new LinkedHashMap<>();
    needed.put("Kit", worklist.kit().stream().map(RoundText::kit).toList());
    needed.put("Cells due", worklist.cellsDue().stream().map(RoundText::due).toList());
    needed.put("Waits for others", worklist.handOvers().stream().map(RoundText::handOver).toList());
    needed.put(
        "Riser valves",
        worklist.jobs().stream()
            .map(Job::fixture)
            .filter(fixture -> !fixture.riserValve().isEmpty())
            .map(fixture -> fixture.id() + ": " + fixture.riserValve())
            .toList());
    needed.values().removeIf(List::isEmpty);
    return needed;
  }

  private static String ids(List<Fixture> fixtures) {
    return fixtures.stream().map(Fixture::id).collect(Collectors.joining(", "));
  }

  private String page() {
    StringBuilder page = new StringBuilder();
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';");
    page.append(" style-src 'unsafe-inline'\">\n");
    page.append("<meta name=\"viewport\" content=\"width=device-width\">\n<title>");
    page.append(text(title())).append("</title>\n<style>\n").append(SheetCard.STYLE);
    page.append("section + section { break-before: page; }\n");
    page.append("</style>\n</head>\n<body>\n<section>\n<h1>");
    page.append(text(title())).append("</h1>\n");
    if (input.isInvented()) {
      page.append("<p class=\"invented\">INVENTED SHEET, for trying and teaching.</p>\n");
    }
    page.append("<h2>Route</h2>\n<ol>\n");
    for (Map.Entry<String, List<Fixture>> stop : route.entrySet()) {
      page.append("<li><b>").append(text(stop.getKey())).append("</b>: ");
      page.append(text(fixtures(stop))).append("</li>\n");
    }
    page.append("</ol>\n");
    needed()
        .forEach(
            (heading, items) -> {
              page.append("<h2>").append(heading).append("</h2>\n<ul>\n");
              items.forEach(item -> page.append("<li>").append(text(item)).append("</li>\n"));
              page.append("</ul>\n");
            });
    page.append("</section>\n");
    for (Map.Entry<CodeSheet, List<Fixture>> card : cards.entrySet()) {
      page.append("<section>\n");
      SheetCard.content(page, card.getKey());
      page.append("<p><b>For</b> ").append(text(ids(card.getValue()))).append("; ");
      page.append(text(watching(card.getKey()))).append(".</p>\n</section>\n");
    }
    return page.append("</body>\n</html>\n").toString();
  }

  private static String text(String text) {
    return RhythmStrip.escaped(Layout.clean(text));
  }
}
