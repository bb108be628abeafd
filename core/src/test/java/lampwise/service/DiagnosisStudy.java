package lampwise.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import lampwise.file.GuideReader;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * How many minutes a fault of the built-in guide costs until the fixture works, by the tool's steps
 * and by simpler ways. Kind, power and complaint are drawn evenly, the cause by its shares, answers
 * and repairs by the guide's chances; all ways meet the same faults.
 */
public final class DiagnosisStudy {
  /** A way to work: what to do next. */
  interface Way {
    Step next(Diagnosis visit);
  }

  private static final int MOST_STEPS = 200;

  private final Guide guide = GuideReader.builtIn();
  private final List<Situation> situations = situations(guide);
  private final Map<String, Way> ways = new LinkedHashMap<>();
  private final Map<Situation, double[]> bounds = new HashMap<>();

  DiagnosisStudy() {
    ways.put("the tool", cached(Diagnosis::next));
    ways.put("fixed list of checks, then repairs", cached(DiagnosisStudy::checksFirst));
    ways.put("repairs by chance over minutes", cached(DiagnosisStudy::byEfficiency));
    ways.put("repairs by share alone", cached(DiagnosisStudy::byShare));
  }

  /** Runs it: number of faults, seed. */
  public static void main(String[] args) {
    int faults = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1125;
    System.out.print(new DiagnosisStudy().table(faults, seed));
  }

  /** The mean minutes of each way, the omniscient bound first, with what they differ by. */
  Map<String, double[]> minutes(int faults, long seed) {
    Map<String, double[]> minutes = new LinkedHashMap<>();
    minutes.put("omniscient", new double[faults]);
    ways.keySet().forEach(way -> minutes.put(way, new double[faults]));
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < faults; i++) {
      Situation situation = situations.get(random.nextInt(situations.size()));
      Map<Cause, Double> prior = Diagnosis.start(guide, situation).causes();
      Cause cause = draw(prior, random.nextDouble());
      long own = random.nextLong();
      minutes.get("omniscient")[i] = bound(situation, cause);
      for (Map.Entry<String, Way> way : ways.entrySet()) {
        minutes.get(way.getKey())[i] =
            work(situation, cause, way.getValue(), new SplittableRandom(own));
      }
    }
    return minutes;
  }

  private String table(int faults, long seed) {
    StringBuilder text = new StringBuilder("| way | minutes | 95 % interval | over omniscient |\n");
    text.append("|---|---|---|---|\n");
    Map<String, double[]> all = minutes(faults, seed);
    double bound = mean(all.get("omniscient"));
    all.forEach(
        (way, values) -> {
          double mean = mean(values);
          double half = 1.96 * deviation(values, mean) / Math.sqrt(values.length);
          text.append(
              String.format(
                  Locale.ROOT,
                  "| %s | %.1f | %.1f to %.1f | %.2f times |%n",
                  way,
                  mean,
                  mean - half,
                  mean + half,
                  mean / bound));
        });
    return text.toString();
  }

  static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private static double deviation(double[] values, double mean) {
    double sum = 0;
    for (double value : values) {
      sum += (value - mean) * (value - mean);
    }
    return Math.sqrt(sum / (values.length - 1));
  }

  static List<Situation> situations(Guide guide) {
    List<Situation> all = new ArrayList<>();
    for (FixtureKind kind : FixtureKind.values()) {
      for (Power power : Power.values()) {
        for (Complaint complaint : Complaint.values()) {
          if (guide.causes(kind, Optional.of(power), complaint).size() > 1) {
            all.add(Situation.of(kind, Optional.of(power), complaint));
          }
        }
      }
    }
    return all;
  }

  private static Cause draw(Map<Cause, Double> prior, double at) {
    double left = at;
    Cause last = null;
    for (Map.Entry<Cause, Double> entry : prior.entrySet()) {
      last = entry.getKey();
      left -= entry.getValue();
      if (left < 0) {
        break;
      }
    }
    return last;
  }

  /** What the fault costs somebody who knows it from the start; handing over included. */
  private double bound(Situation situation, Cause cause) {
    List<Cause> causes = guide.causes(situation.kind(), situation.power(), situation.complaint());
    double[] known = bounds.computeIfAbsent(situation, key -> new double[causes.size()]);
    int number = causes.indexOf(cause);
    if (known[number] == 0) {
      Map<Cause, Double> weights = new LinkedHashMap<>();
      causes.forEach(other -> weights.put(other, other.equals(cause) ? 1.0 : 0.0));
      double[] single = new double[causes.size()];
      single[number] = 1;
      OpenWork work = new OpenWork(guide, situation, new Progress(guide, situation, List.of()));
      known[number] = new Planner(work.problem(weights)).repairsOnly(Belief.start(single));
    }
    return known[number];
  }

  private double work(Situation situation, Cause cause, Way way, SplittableRandom random) {
    Diagnosis visit = Diagnosis.start(guide, situation);
    double minutes = 0;
    for (int i = 0; i < MOST_STEPS; i++) {
      Step step = way.next(visit);
      if (step instanceof Step.Secure secure) {
        visit = visit.with(new Act.Secured(secure.rule().id()));
      } else if (step instanceof Step.Look look) {
        Check check = look.check();
        minutes += check.minutes();
        visit = visit.with(new Finding(check.id(), answer(check, cause, random.nextDouble())));
      } else if (step instanceof Step.Mend mend) {
        minutes += mend.remedy().minutes();
        if (works(mend.remedy(), cause, random)) {
          return minutes;
        }
        visit = visit.with(new Act.Tried(mend.remedy().id(), false));
      } else if (step instanceof Step.HandOver over) {
        Optional<Remedy> remedy = over.remedy();
        if (remedy.isEmpty()) {
          return minutes + guide.handOverMinutes();
        }
        minutes += remedy.get().minutes();
        if (works(remedy.get(), cause, random)) {
          return minutes;
        }
        visit = visit.with(new Act.Tried(remedy.get().id(), false));
      }
    }
    throw new IllegalStateException("no end after " + MOST_STEPS + " steps: " + cause.id());
  }

  private static boolean works(Remedy remedy, Cause cause, SplittableRandom random) {
    return random.nextDouble() < remedy.fixes().getOrDefault(cause.id(), 0.0);
  }

  static String answer(Check check, Cause cause, double at) {
    double left = at;
    List<Double> chances = check.chances(cause.id());
    for (int i = 0; i < chances.size(); i++) {
      left -= chances.get(i);
      if (left < 0) {
        return check.answers().get(i).word();
      }
    }
    return check.answers().get(chances.indexOf(chances.stream().max(Double::compare).get())).word();
  }

  /** The same visit gets the same step, so that it is worked out once. */
  private static Way cached(Way way) {
    Map<List<Object>, Step> known = new HashMap<>();
    return visit ->
        known.computeIfAbsent(List.of(visit.situation(), visit.acts()), key -> way.next(visit));
  }

  /** What every way has in common: safety and what is asked first. */
  private static Optional<Step> common(Diagnosis visit) {
    if (!visit.progress().due().isEmpty()) {
      return Optional.of(visit.next());
    }
    boolean firstAsked =
        visit.guide().checks().stream()
            .filter(Check::first)
            .allMatch(check -> visit.progress().isAnswered(check));
    Step next = firstAsked ? null : visit.next();
    boolean ends =
        visit.acts().stream()
            .anyMatch(
                act ->
                    act instanceof Act.Secured safe
                        && List.of("wet-electrics", "sewage").contains(safe.rule()));
    return ends ? Optional.of(visit.next()) : Optional.ofNullable(next);
  }

  private static OpenWork open(Diagnosis visit) {
    return new OpenWork(visit.guide(), visit.situation(), visit.progress());
  }

  private static Step checksFirst(Diagnosis visit) {
    Optional<Step> common = common(visit);
    if (common.isPresent()) {
      return common.get();
    }
    for (Check check : open(visit).checks()) {
      if (check.opens().isEmpty() && !check.complaints().isEmpty() && check.minutes() <= 3) {
        return new Step.Look(
            open(visit).firstNeeded(check.before()).orElse(check), Double.NaN, "next on the list");
      }
    }
    return byEfficiency(visit);
  }

  private static Step byEfficiency(Diagnosis visit) {
    Optional<Step> common = common(visit);
    if (common.isPresent()) {
      return common.get();
    }
    OpenWork work = open(visit);
    Map<Cause, Double> weights = visit.weights();
    Problem repairs =
        new Problem(
            weights.size(),
            work.problem(weights).repairs().stream()
                .map(r -> new Problem.Repair(r.cost(), 0, r.fixes(), 0))
                .toList(),
            List.of(),
            visit.guide().handOverMinutes());
    Planner.Choice best =
        new Planner(repairs)
            .best(
                Belief.start(weights.values().stream().mapToDouble(Double::doubleValue).toArray()));
    return best.act() == Planner.Act.HAND_OVER
        ? new Step.HandOver(Who.PLUMBER, Optional.empty(), Double.NaN, "nothing better")
        : mend(work, work.remedies().get(best.number()));
  }

  private static Step byShare(Diagnosis visit) {
    Optional<Step> common = common(visit);
    if (common.isPresent()) {
      return common.get();
    }
    OpenWork work = open(visit);
    for (Cause cause : Diagnosis.start(visit.guide(), visit.situation()).causes().keySet()) {
      Optional<Remedy> remedy =
          work.remedies().stream()
              .filter(r -> r.fixes().getOrDefault(cause.id(), 0.0) >= 0.5)
              .min(Comparator.comparingDouble(Remedy::minutes));
      if (remedy.isPresent()) {
        return mend(work, remedy.get());
      }
    }
    return new Step.HandOver(Who.PLUMBER, Optional.empty(), Double.NaN, "all tried");
  }

  private static Step mend(OpenWork work, Remedy remedy) {
    if (work.isForOthers(remedy)) {
      return new Step.HandOver(remedy.who(), Optional.of(remedy), Double.NaN, "next on the list");
    }
    Optional<Check> needed = work.firstNeeded(remedy.before());
    return needed.isPresent()
        ? new Step.Look(needed.get(), Double.NaN, "needed")
        : new Step.Mend(remedy, List.of(), Double.NaN, "next on the list");
  }
}
