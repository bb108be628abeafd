package lampwise.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A day's work at a site: what is to be done at which fixture, and what else is to be known of it.
 *
 * <p>A fixture has a job if something is said to be wrong with it, or its lamp warns. Of several
 * readings of one fixture the last one counts. One that was visited on the day and works has none.
 *
 * @param jobs the jobs: running water first, then the only accessible ones, then by weight; equal
 *     ones in the order of the fixtures
 * @param inOrder fixtures whose lamp says that they are in order, or that were put right
 * @param again readings in which no state was decoded, by the ids of their fixtures; a fixture
 *     whose lamp says that it is in order, though not in which way, is not here
 * @param handOvers what waits for somebody else
 * @param repeats visits of the 30 days before the day, by the ids of the fixtures that have a job
 * @param cellsDue fixtures whose cells are due
 * @param notVisited fixtures without a recording and a visit on the day
 * @param kit the parts for all jobs and cells that are due
 */
public record Worklist(
    List<Job> jobs,
    List<Fixture> inOrder,
    Map<String, LampRead> again,
    List<HandOver> handOvers,
    Map<String, List<Visit>> repeats,
    List<CellsDue> cellsDue,
    List<Fixture> notVisited,
    List<KitLine> kit) {
  /** A fixture that is worked on twice within so many days is a repeat. */
  public static final int REPEAT_DAYS = 30;

  /** Keeps copies. */
  public Worklist {
    jobs = List.copyOf(jobs);
    inOrder = List.copyOf(inOrder);
    again = Rules.copy(again);
    handOvers = List.copyOf(handOvers);
    repeats = Rules.copy(repeats);
    cellsDue = List.copyOf(cellsDue);
    notVisited = List.copyOf(notVisited);
    kit = List.copyOf(kit);
  }

  /**
   * What a worklist is made by.
   *
   * @param guide the guide, with the site's figures
   * @param site the site
   * @param day the day, such as {@code 2026-11-25}
   * @param cellsDays after how many days cells are due, 1 or more
   */
  public record Basis(Guide guide, Site site, String day, int cellsDays) {
    /**
     * Checks the day.
     *
     * @throws GuideException if it is no day, or the days of the cells are less than 1
     */
    public Basis {
      Rules.that(Fixture.isDay(day), "a day must be like 2026-11-25: " + day);
      Rules.that(cellsDays >= 1, "cells last at least a day: " + cellsDays);
    }

    long since(String earlier) {
      return LocalTime.day(day + "T00:00") - LocalTime.day(earlier + "T00:00");
    }

    boolean isToday(Visit visit) {
      return visit.when().startsWith(day);
    }

    boolean isLately(Visit visit) {
      long days = since(dayOf(visit));
      return days >= 0 && days <= REPEAT_DAYS;
    }
  }

  /** The day of a visit. */
  static String dayOf(Visit visit) {
    return visit.when().substring(0, 10);
  }

  /**
   * Makes it.
   *
   * @param basis what it is made by
   * @param fixtures the fixtures of the site
   * @param readings the day's readings, by the ids of the fixtures, each fixture's in order
   * @param visits the visits of the log, in order of time; later ones than the day do not count
   * @return the worklist
   */
  public static Worklist of(
      Basis basis,
      List<Fixture> fixtures,
      Map<String, List<LampRead>> readings,
      List<Visit> visits) {
    return new WorklistMaker(basis, fixtures, readings, visits).made();
  }

  /**
   * What to bring along where only the fixtures are known: cells that are due.
   *
   * @param due the fixtures
   * @return a line for each kind of cells
   */
  public static List<KitLine> cells(List<CellsDue> due) {
    Map<String, List<String>> kit = new LinkedHashMap<>();
    for (CellsDue one : due) {
      kit.computeIfAbsent(cellsOf(one.fixture()), part -> new ArrayList<>())
          .add(one.fixture().id());
    }
    return lines(kit);
  }

  static String cellsOf(Fixture fixture) {
    return "cell set" + (fixture.cells().isEmpty() ? "" : " (" + fixture.cells() + ")");
  }

  static List<KitLine> lines(Map<String, List<String>> kit) {
    return kit.entrySet().stream()
        .map(entry -> new KitLine(entry.getKey(), entry.getValue().size(), entry.getValue()))
        .sorted(Comparator.comparing(KitLine::part))
        .toList();
  }

  /**
   * The job of a fixture.
   *
   * @param id the fixture's id
   * @return the job; empty if it has none
   */
  public Optional<Job> job(String id) {
    return jobs.stream().filter(job -> job.fixture().id().equals(id)).findFirst();
  }
}
