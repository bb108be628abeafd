package lampwise.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes the job of a fixture: what makes it urgent, what is likely, what to do next. */
final class JobPlanner {
  private static final int MOST_CAUSES = 3;
  private static final double LIKELY = 0.2;

  /** More first questions and dangers than any guide has. */
  private static final int MOST_FIRST = 20;

  private final Guide guide;
  private final Site site;

  JobPlanner(Guide guide, Site site) {
    this.guide = guide;
    this.site = site;
  }

  Job job(Fixture fixture, Complaint complaint, Optional<LampRead> lamp, List<Visit> lately) {
    List<Urgency> reasons = reasons(fixture, complaint, lately);
    double weight = reasons.stream().mapToDouble(site::weight).sum();
    if (guide.causes(fixture.kind(), fixture.power(), complaint).stream()
        .allMatch(cause -> cause.id().equals(Guide.OTHER))) {
      return new Job(
          fixture,
          complaint,
          lamp,
          reasons,
          weight,
          lately,
          Map.of(),
          Optional.empty(),
          List.of(),
          Optional.empty(),
          List.of(),
          Double.NaN);
    }
    Situation situation =
        new Situation(
            fixture.kind(),
            fixture.power(),
            complaint,
            work(lately),
            Optional.empty(),
            Situation.TECHNICIAN);
    Diagnosis visit = Diagnosis.start(guide, situation);
    if (lamp.isPresent()) {
      visit = visit.with(new Act.Lamp(lamp.get().said(), lamp.get().seen()));
    }
    Optional<MakeSafe> safe = Optional.empty();
    List<Check> before = new ArrayList<>();
    Step step = visit.next();
    for (int i = 0; i < MOST_FIRST; i++) {
      if (step instanceof Step.Secure secure) {
        safe = safe.or(() -> Optional.of(secure.rule()));
        visit = visit.with(new Act.Secured(secure.rule().id()));
      } else if (step instanceof Step.Look look
          && (look.check().first()
              || (look.check().bowlLook() && complaint != Complaint.SLOW_DRAIN))) {
        before.add(look.check());
        visit = visit.with(new Finding(look.check().id(), harmless(look.check())));
      } else {
        break;
      }
      step = visit.next();
    }
    Map<Cause, Double> all = visit.causes();
    Map<Cause, Double> causes = new LinkedHashMap<>();
    all.entrySet().stream()
        .limit(MOST_CAUSES)
        .forEach(entry -> causes.put(entry.getKey(), entry.getValue()));
    return new Job(
        fixture,
        complaint,
        lamp,
        reasons,
        weight,
        lately,
        causes,
        safe,
        before,
        Optional.of(step),
        remedies(fixture, causes),
        minutes(step));
  }

  private List<Urgency> reasons(Fixture fixture, Complaint complaint, List<Visit> lately) {
    List<Urgency> reasons = new ArrayList<>();
    reasons.add(
        switch (complaint) {
          case RUNS_ON, NEVER_STOPS -> Urgency.RUNNING;
          case DEAD -> Urgency.DEAD;
          case SLOW_DRAIN -> Urgency.SLOW_DRAIN;
          case TEMPERATURE -> Urgency.TEMPERATURE;
          case WEAK, SHORT -> Urgency.WEAK;
          case PHANTOM -> Urgency.PHANTOM;
          case LAMP_ONLY -> Urgency.LAMP_ONLY;
        });
    if (fixture.onlyAccessible()) {
      reasons.add(Urgency.ONLY_ACCESSIBLE);
    }
    if (!lately.isEmpty()) {
      reasons.add(Urgency.REPEAT);
    }
    reasons.sort(Comparator.comparingDouble(reason -> -site.weight(reason)));
    return reasons;
  }

  /** The first answer that calls for nothing to be made safe. */
  private String harmless(Check check) {
    return check.answers().stream()
        .map(Answer::word)
        .filter(
            word ->
                guide.makeSafe().stream()
                    .flatMap(rule -> rule.findings().stream())
                    .noneMatch(sign -> sign.metBy(new Finding(check.id(), word))))
        .findFirst()
        .orElse(check.answers().get(0).word());
  }

  /** What was worked on, as far as the remedies of the visits tell (chosen). */
  private List<Work> work(List<Visit> visits) {
    Set<Work> work = new LinkedHashSet<>();
    for (Visit visit : visits) {
      for (String id : visit.done().remedies()) {
        Optional<Remedy> remedy = guide.remedy(id);
        if (remedy.isPresent()) {
          work.add(
              CellsDue.areCells(remedy.get().parts())
                  ? Work.CELLS
                  : remedy.get().opens().contains(Opening.WATER) ? Work.VALVE : Work.UNIT);
        }
      }
    }
    return List.copyOf(work);
  }

  private List<Remedy> remedies(Fixture fixture, Map<Cause, Double> causes) {
    List<Remedy> remedies = new ArrayList<>();
    double least = 0;
    for (Map.Entry<Cause, Double> entry : causes.entrySet()) {
      if (entry.getValue() >= least) {
        String cause = entry.getKey().id();
        guide.remedies().stream()
            .filter(remedy -> remedy.fits(fixture.kind(), fixture.power()))
            .filter(remedy -> remedy.fixes().containsKey(cause))
            .max(Comparator.comparingDouble(remedy -> remedy.fixes().getOrDefault(cause, 0.0)))
            .filter(remedy -> !remedies.contains(remedy))
            .ifPresent(remedies::add);
      }
      least = LIKELY;
    }
    return remedies;
  }

  private static double minutes(Step step) {
    if (step instanceof Step.Look look) {
      return look.expectedMinutes();
    }
    if (step instanceof Step.Mend mend) {
      return mend.expectedMinutes();
    }
    return step instanceof Step.HandOver over ? over.expectedMinutes() : Double.NaN;
  }
}
