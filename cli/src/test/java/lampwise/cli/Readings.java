package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Candidate;
import lampwise.decode.Nearest;
import lampwise.decode.Next;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/** Readings made by hand, one of each verdict. */
final class Readings {
  static final Window WHOLE = new Window(0, 90);

  private Readings() {}

  /** So many blinks every so many seconds. */
  static Rhythm blinks(int count, double everySeconds) {
    return new Rhythm.Blinking(
        List.of(),
        new Cycle.Parts(
            List.of(
                new Part.Blinks(Count.of(count), Size.UNSAID, Optional.empty(), Optional.empty())),
            new Ending.Every(Length.exactly(everySeconds))));
  }

  static CodeSheet sheet(Basis basis) {
    return CodeSheet.of(
        "Sheet made for a test",
        basis,
        List.of(
            LampState.of(
                "standing-by", blinks(2, 14.1), "Ready, nothing in range", Condition.READY),
            new LampState(
                "cells-low",
                blinks(1, 3.1),
                "Backup cells are running down",
                Condition.POWER_LOW,
                Seen.ALWAYS,
                3,
                Optional.of("one wink now and then"),
                Optional.of("new cells, then power off for a minute"),
                Optional.empty()),
            LampState.of("resting", new Rhythm.Dark(), "Rests", Condition.OTHER)));
  }

  static Candidate candidate(String state, double probability) {
    return new Candidate(state, 0.25, -1, probability);
  }

  static Observation observation(String name, String... notes) {
    List<SeenBlink> blinks = new ArrayList<>();
    for (double on = 0.4; on < 90; on += 3.2) {
      blinks.add(new SeenBlink(Blink.startingAt(on), 0.97));
    }
    blinks.add(new SeenBlink(new Blink(89.9, 89.95), 0.1));
    return new Observation(
        new BlinkLog(
            new Origin(name, Optional.empty(), List.of("the file's own note")),
            Marks.watched(0, 90),
            List.of()),
        Optional.of(WHOLE),
        Optional.of(blinks(1, 3.2)),
        blinks,
        Optional.empty(),
        List.of(notes));
  }

  static Reading decoded() {
    return reading(
        new Verdict.Decoded("cells-low", 0.967, WHOLE),
        candidate("cells-low", 0.967),
        candidate("unlisted", 0.03),
        candidate("standing-by", 0.0029),
        candidate("resting", 0.0001));
  }

  static Reading unlisted() {
    return reading(
        new Verdict.Unlisted(
            Optional.of(blinks(1, 3.2)),
            List.of(new Nearest("standing-by", "2 blinks every 14.1 s", "1 blink instead of 2"))),
        candidate("unlisted", 0.98),
        candidate("cells-low", 0.02));
  }

  static Reading undecided() {
    List<Candidate> left = List.of(candidate("cells-low", 0.62), candidate("unlisted", 0.36));
    return reading(
        new Verdict.Undecided(
            left,
            "only two blinks were seen",
            new Next.Watch(45, OptionalDouble.empty(), "none", "tap at each blink")),
        candidate("cells-low", 0.62),
        candidate("unlisted", 0.36),
        candidate("no-rhythm", 0.02));
  }

  static Reading unreadable() {
    return reading(
        new Verdict.Unreadable(
            "the light is sampled too slowly",
            new Next.Watch(45, OptionalDouble.of(20), "any", "")));
  }

  /** A reading of one recording with one segment. */
  static Reading reading(Verdict verdict, Candidate... candidates) {
    List<Candidate> all = List.of(candidates);
    return new Reading(
        verdict,
        all,
        Optional.of(blinks(1, 3.2)),
        List.of(new Segment(0, WHOLE, verdict, all, Optional.of(blinks(1, 3.2)))),
        List.of(observation("a.txt")));
  }

  /** A recording with these blinks and no rhythm. */
  static Observation observed(Recording recording, List<SeenBlink> blinks) {
    return new Observation(
        recording, recording.window(), Optional.empty(), blinks, Optional.empty(), List.of());
  }
}
