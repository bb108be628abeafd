package lampwise.decode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * One recording, cut where the lamp's state changes, each stretch with its answer.
 *
 * @param segments the stretches, in order, at least one
 * @param main the one that covers most of the window outside target spans
 * @param blinks the blinks, each with its chance to belong to its stretch's likeliest state
 */
record Stretches(List<Segment> segments, Segment main, List<SeenBlink> blinks) {
  /**
   * With fewer blinks and pulses than this without partner a change would not pay for itself,
   * whatever it explained.
   */
  private static final int LEAST_LOOSE = 2;

  /** A change less probable than this must leave parts that are clear by themselves. */
  private static final double SURE_CHANGE = 0.9;

  private static final double CLEAR = 0.5;

  /** A light curve as one stretch, by what its raw samples say. */
  static Stretches folded(CodeSheet sheet, LightCurve curve, LightLikelihoods light, int number) {
    Evidence evidence = light.evidence();
    List<Candidate> candidates = Posterior.candidates(sheet, light.logs());
    Likelihoods likelihoods = new Likelihoods(sheet, evidence, curve.marks());
    Optional<Explained> how = explain(sheet, likelihoods, evidence, candidates);
    Optional<Rhythm> observed =
        how.isPresent() ? how.get().observed() : Measured.unrepeated(evidence);
    Verdict verdict =
        Verdicts.of(sheet, candidates, observed, evidence.window(), curve.marks(), true);
    Segment segment = new Segment(number, evidence.window(), verdict, candidates, observed);
    return new Stretches(List.of(segment), segment, evidence.blinks());
  }

  static Stretches of(CodeSheet sheet, Recording recording, Evidence evidence, int number) {
    Likelihoods likelihoods = new Likelihoods(sheet, evidence, recording.marks());
    boolean curve = recording instanceof LightCurve;
    double[] whole = orRoom(sheet, curve, evidence, likelihoods.whole());
    List<Candidate> candidates = Posterior.candidates(sheet, whole);
    Optional<Explained> explained = explain(sheet, likelihoods, evidence, candidates);
    Map<Window, double[]> known = new HashMap<>();
    known.put(evidence.window(), whole);
    Function<Window, double[]> logs =
        window ->
            known.computeIfAbsent(
                window,
                w -> {
                  Evidence part = evidence.within(w.fromSeconds(), w.toSeconds());
                  return orRoom(sheet, curve, part, likelihoods.of(part));
                });
    List<Window> windows = new ArrayList<>();
    for (Window between :
        Segmenter.stretches(
            evidence,
            recording.marks(),
            stretch ->
                best(
                    sheet,
                    stretch.window().equals(evidence.window())
                        ? whole
                        : likelihoods.of(stretch.roughly())))) {
      boolean all = between.equals(evidence.window());
      Evidence stretch =
          all ? evidence : evidence.within(between.fromSeconds(), between.toSeconds());
      List<Candidate> here = Posterior.candidates(sheet, logs.apply(between));
      Optional<Explained> how = all ? explained : explain(sheet, likelihoods, stretch, here);
      windows.addAll(changes(sheet, likelihoods, stretch, logs, how));
    }
    windows = merged(sheet, logs, windows);
    List<Segment> segments = new ArrayList<>();
    List<SeenBlink> blinks = new ArrayList<>();
    for (Window window : windows) {
      boolean all = windows.size() == 1;
      Evidence stretch = all ? evidence : evidence.within(window.fromSeconds(), window.toSeconds());
      List<Candidate> here = all ? candidates : Posterior.candidates(sheet, logs.apply(window));
      List<Part> parts = parts(sheet, recording, likelihoods.unanswered(), stretch, here);
      for (Part part : parts) {
        Evidence inside =
            parts.size() == 1
                ? stretch
                : evidence.within(part.window().fromSeconds(), part.window().toSeconds());
        boolean same = all && parts.size() == 1 && part.candidates().equals(candidates);
        Optional<Explained> how =
            same ? explained : explain(sheet, likelihoods, inside, part.candidates());
        Optional<Rhythm> observed =
            how.isPresent() ? how.get().observed() : Measured.unrepeated(inside);
        blinks.addAll(how.isPresent() ? how.get().blinks() : inside.blinks());
        Verdict verdict =
            Verdicts.of(
                sheet, part.candidates(), observed, part.window(), recording.marks(), curve);
        segments.add(new Segment(number, part.window(), verdict, part.candidates(), observed));
      }
    }
    return new Stretches(segments, main(segments, recording), blinks);
  }

  /** Blinks of a light curve in no order may also be the room's light. */
  private static double[] orRoom(
      CodeSheet sheet, boolean curve, Evidence stretch, double[] logLikelihoods) {
    int none = sheet.states().size() + 1;
    if (curve) {
      double room = RoomLight.logLikelihood(stretch);
      logLikelihoods[none] = Gauss.logAdd(logLikelihoods[none], room) - Math.log(2);
    }
    return logLikelihoods;
  }

  /** Cuts a stretch between marks where the state changes all the same. */
  private static List<Window> changes(
      CodeSheet sheet,
      Likelihoods likelihoods,
      Evidence stretch,
      Function<Window, double[]> logs,
      Optional<Explained> explained) {
    double[] here = logs.apply(stretch.window());
    int loose = explained.map(Explained::loose).orElse(stretch.notes().size());
    if (loose < LEAST_LOOSE && best(sheet, here).candidate() < sheet.states().size()) {
      return List.of(stretch.window());
    }
    double[] priors = Posterior.priors(sheet);
    double unchanged = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < priors.length; i++) {
      unchanged = Gauss.logAdd(unchanged, Math.log(priors[i]) + here[i]);
    }
    List<Noise> settings = new ArrayList<>(stretch.usualSettings());
    explained.ifPresent(how -> settings.sort(Noise.likeFirst(how.noise())));
    Changes.Cut cut =
        Changes.cut(
            likelihoods.shows(stretch.window()),
            stretch,
            settings,
            unchanged,
            sheet.clockTolerance());
    boolean sure = cut.parts().size() == 1 || cut.probability() >= SURE_CHANGE;
    return sure || areClear(sheet, logs, cut.parts()) ? cut.parts() : List.of(stretch.window());
  }

  /** Whether each part has a state of the sheet that is likelier than all else together. */
  private static boolean areClear(
      CodeSheet sheet, Function<Window, double[]> logs, List<Window> parts) {
    for (Window part : parts) {
      Candidate top = Posterior.candidates(sheet, logs.apply(part)).get(0);
      if (top.probability() < CLEAR || sheet.state(top.state()).isEmpty()) {
        return false;
      }
    }
    return true;
  }

  /** Joins neighbours of which the same is likeliest. */
  private static List<Window> merged(
      CodeSheet sheet, Function<Window, double[]> logs, List<Window> windows) {
    List<Window> merged = new ArrayList<>();
    int before = -1;
    for (Window window : windows) {
      int here = best(sheet, logs.apply(window)).candidate();
      double from = window.fromSeconds();
      if (here == before) {
        from = merged.remove(merged.size() - 1).fromSeconds();
      }
      merged.add(new Window(from, window.toSeconds()));
      before = here;
    }
    return merged;
  }

  /** A part of a stretch and what may be shown in it. */
  private record Part(Window window, List<Candidate> candidates) {}

  /**
   * Takes out of a stretch at rest the times at which the unit showed that it saw a target. The
   * rest keeps its candidates: that it answered is part of their evidence.
   */
  private static List<Part> parts(
      CodeSheet sheet,
      Recording recording,
      Likelihoods aside,
      Evidence stretch,
      List<Candidate> candidates) {
    List<Part> parts = new ArrayList<>();
    double from = stretch.window().fromSeconds();
    if (seen(sheet, candidates) == Seen.IDLE) {
      for (Window target : Visibility.clip(recording.marks().targets().spans(), stretch.window())) {
        Evidence inside = stretch.within(target.fromSeconds(), target.toSeconds());
        List<Candidate> shown = Posterior.candidates(sheet, aside.of(inside));
        if (seen(sheet, shown) == Seen.TARGET && target.fromSeconds() >= from) {
          if (target.fromSeconds() > from) {
            parts.add(new Part(new Window(from, target.fromSeconds()), candidates));
          }
          parts.add(new Part(target, shown));
          from = target.toSeconds();
        }
      }
    }
    if (parts.isEmpty() || from < stretch.window().toSeconds()) {
      parts.add(new Part(new Window(from, stretch.window().toSeconds()), candidates));
    }
    return parts;
  }

  private static Seen seen(CodeSheet sheet, List<Candidate> candidates) {
    return sheet.state(candidates.get(0).state()).map(LampState::seen).orElse(Seen.ALWAYS);
  }

  /** A description is one stretch: what a person says is said of the whole of it. */
  static Stretches told(CodeSheet sheet, Description description, int number) {
    List<Candidate> candidates =
        Posterior.candidates(sheet, Told.logLikelihoods(sheet, description));
    Window window = description.window().orElse(new Window(0, 0));
    Optional<Rhythm> observed = Told.observed(description);
    Verdict verdict = Verdicts.of(sheet, candidates, observed, window, description.marks(), false);
    Segment segment = new Segment(number, window, verdict, candidates, observed);
    return new Stretches(List.of(segment), segment, List.of());
  }

  private static Segmenter.Best best(CodeSheet sheet, double[] logLikelihoods) {
    double[] priors = Posterior.priors(sheet);
    Segmenter.Best best = new Segmenter.Best(0, Double.NEGATIVE_INFINITY);
    for (int i = 0; i < priors.length; i++) {
      double score = Math.log(priors[i]) + logLikelihoods[i];
      if (score > best.score()) {
        best = new Segmenter.Best(i, score);
      }
    }
    return best;
  }

  /** How the likeliest candidate explains the blinks; empty if it does not blink. */
  private static Optional<Explained> explain(
      CodeSheet sheet, Likelihoods likelihoods, Evidence stretch, List<Candidate> candidates) {
    String top = candidates.get(0).state();
    if (stretch.notes().isEmpty() || top.equals(CodeSheet.NO_RHYTHM)) {
      return Optional.empty();
    }
    int number = Posterior.number(sheet, top);
    if (number < sheet.states().size()) {
      return Explained.likeliest(
          likelihoods.trains(number).stream()
              .map(train -> new Explained.Proposal(train, train.logWeight()))
              .toList(),
          stretch);
    }
    return Explained.freely(stretch);
  }

  private static Segment main(List<Segment> segments, Recording recording) {
    Segment best = segments.get(0);
    double most = -1;
    for (Segment segment : segments) {
      double seconds = segment.stretch().lengthSeconds();
      for (Window with : Visibility.clip(recording.marks().targets().spans(), segment.stretch())) {
        seconds -= with.lengthSeconds();
      }
      if (seconds > most + 1e-9) {
        most = seconds;
        best = segment;
      }
    }
    return best;
  }
}
