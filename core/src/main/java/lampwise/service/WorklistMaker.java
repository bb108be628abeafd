package lampwise.service;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwise.sheet.Power;

/** Puts fixtures, readings and visits together to a day's worklist. */
final class WorklistMaker {
  private final Worklist.Basis basis;
  private final List<Fixture> fixtures;
  private final Map<String, List<LampRead>> readings;
  private final Map<String, List<Visit>> visits = new LinkedHashMap<>();

  private final List<Job> jobs = new ArrayList<>();
  private final List<Fixture> inOrder = new ArrayList<>();
  private final Map<String, LampRead> again = new LinkedHashMap<>();
  private final List<HandOver> handOvers = new ArrayList<>();
  private final Map<String, List<Visit>> repeats = new LinkedHashMap<>();
  private final List<CellsDue> due = new ArrayList<>();
  private final List<Fixture> notVisited = new ArrayList<>();

  WorklistMaker(
      Worklist.Basis basis,
      List<Fixture> fixtures,
      Map<String, List<LampRead>> readings,
      List<Visit> visits) {
    this.basis = basis;
    this.fixtures = fixtures;
    this.readings = readings;
    for (Visit visit : visits) {
      if (basis.since(Worklist.dayOf(visit)) >= 0) {
        this.visits
            .computeIfAbsent(visit.fixture().toLowerCase(Locale.ROOT), id -> new ArrayList<>())
            .add(visit);
      }
    }
    for (List<Visit> own : this.visits.values()) {
      own.sort(Comparator.comparing(Visit::when));
    }
  }

  Worklist made() {
    JobPlanner planner = new JobPlanner(basis.guide(), basis.site());
    // Planning is nearly all of the work, and no job depends on another.
    List<Optional<Job>> planned =
        fixtures.stream().parallel().map(fixture -> planned(planner, fixture)).toList();
    for (int i = 0; i < fixtures.size(); i++) {
      take(fixtures.get(i), planned.get(i));
    }
    // The sort is stable: equal jobs stay in the order of the fixtures.
    jobs.sort(
        Comparator.<Job>comparingInt(job -> job.rank(basis.site()))
            .thenComparing(job -> -job.weight()));
    jobs.forEach(
        job ->
            job.waitsFor()
                .ifPresent(
                    who ->
                        handOvers.add(
                            new HandOver(job.fixture(), who, Optional.of(job), Optional.empty()))));
    handOvers.sort(Comparator.comparing(over -> over.job().isPresent() ? 0 : 1));
    return new Worklist(jobs, inOrder, again, handOvers, repeats, due, notVisited, kit());
  }

  private List<Visit> visitsOf(Fixture fixture) {
    return visits.getOrDefault(fixture.key(), List.of());
  }

  private Optional<LampRead> lampOf(Fixture fixture) {
    List<LampRead> read = readings.getOrDefault(fixture.id(), List.of());
    return read.isEmpty() ? Optional.empty() : Optional.of(read.get(read.size() - 1));
  }

  private static Optional<Visit> last(List<Visit> visits) {
    return visits.isEmpty() ? Optional.empty() : Optional.of(visits.get(visits.size() - 1));
  }

  private boolean isPutRight(List<Visit> own) {
    return last(own).filter(visit -> basis.isToday(visit) && works(visit)).isPresent();
  }

  private Optional<Job> planned(JobPlanner planner, Fixture fixture) {
    List<Visit> own = visitsOf(fixture);
    if (isPutRight(own)) {
      return Optional.empty();
    }
    Optional<LampRead> lamp = lampOf(fixture);
    List<Visit> lately = new ArrayList<>(own.stream().filter(basis::isLately).toList());
    Collections.reverse(lately);
    return fixture
        .complaint()
        .or(() -> lamp.flatMap(LampRead::complaint))
        .map(complaint -> planner.job(fixture, complaint, lamp, lately));
  }

  private void take(Fixture fixture, Optional<Job> job) {
    List<Visit> own = visitsOf(fixture);
    Optional<LampRead> lamp = lampOf(fixture);
    Optional<Visit> last = last(own);
    cells(fixture, own);
    if (lamp.isEmpty() && last.filter(basis::isToday).isEmpty()) {
      notVisited.add(fixture);
    }
    if (job.isPresent()) {
      jobs.add(job.get());
      if (!job.get().lately().isEmpty()) {
        repeats.put(fixture.id(), job.get().lately());
      }
    }
    if (isPutRight(own)) {
      inOrder.add(fixture);
      return;
    }
    if (job.isEmpty() && lamp.filter(LampRead::isInOrder).isPresent()) {
      inOrder.add(fixture);
    }
    lamp.filter(one -> !one.isDecoded() && !one.isInOrder())
        .ifPresent(one -> again.put(fixture.id(), one));
    boolean isTodays = job.flatMap(Job::waitsFor).isPresent();
    if (!isTodays && last.filter(visit -> !works(visit)).isPresent()) {
      handOvers.add(new HandOver(fixture, Who.PLUMBER, job, last));
    }
  }

  private static boolean works(Visit visit) {
    return visit.outcome() == Outcome.FIXED || visit.outcome() == Outcome.RESET_WATCH;
  }

  private void cells(Fixture fixture, List<Visit> own) {
    if (fixture.power().filter(power -> power == Power.CELLS).isEmpty()) {
      return;
    }
    String since = fixture.lastCells();
    for (Visit visit : own) {
      boolean changed =
          CellsDue.areCells(visit.done().parts())
              || visit.done().remedies().stream()
                  .map(basis.guide()::remedy)
                  .flatMap(Optional::stream)
                  .anyMatch(remedy -> CellsDue.areCells(remedy.parts()));
      String day = Worklist.dayOf(visit);
      since = changed && day.compareTo(since) > 0 ? day : since;
    }
    long days = since.isEmpty() ? -1 : basis.since(since);
    if (since.isEmpty() || days >= basis.cellsDays()) {
      due.add(new CellsDue(fixture, since, days));
    }
  }

  private List<KitLine> kit() {
    Map<String, List<String>> kit = new LinkedHashMap<>();
    Set<String> cells = new HashSet<>();
    for (Job job : jobs) {
      String id = job.fixture().id();
      for (String part : job.parts()) {
        boolean isCells = part.equals("cell set");
        String name = isCells ? Worklist.cellsOf(job.fixture()) : part;
        kit.computeIfAbsent(name, key -> new ArrayList<>()).add(id);
        if (isCells) {
          cells.add(id);
        }
      }
    }
    for (CellsDue one : due) {
      if (cells.add(one.fixture().id())) {
        kit.computeIfAbsent(Worklist.cellsOf(one.fixture()), key -> new ArrayList<>())
            .add(one.fixture().id());
      }
    }
    return Worklist.lines(kit);
  }
}
