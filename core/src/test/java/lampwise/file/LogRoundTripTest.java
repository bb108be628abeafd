package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What is written is read back; times are whole milliseconds, or any. */
class LogRoundTripTest {
  @Property
  void readingGivesBackWhatWasWritten(@ForAll("recordings") List<Recording> recordings)
      throws Exception {
    String text = LampwiseLog.write(recordings);
    List<Recording> read = LampwiseLog.read("x", text.getBytes(UTF_8));
    assertEquals(bare(recordings), bare(read), text);
    assertEquals(text, LampwiseLog.write(read));
  }

  @Property
  void anyTimesAreRoundedOnce(
      @ForAll List<@net.jqwik.api.constraints.DoubleRange(min = -1e6, max = 1e6) Double> times)
      throws Exception {
    List<Double> sorted = times.stream().sorted().toList();
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i + 1 < sorted.size(); i += 2) {
      double off = sorted.get(i + 1) > sorted.get(i) ? sorted.get(i + 1) : Double.NaN;
      blinks.add(new Blink(sorted.get(i), off));
    }
    Marks marks =
        sorted.isEmpty()
            ? Marks.nothing()
            : Marks.watched(sorted.get(0), sorted.get(sorted.size() - 1));
    String text = LampwiseLog.write(List.of(new BlinkLog(Origin.named("x"), marks, blinks)));
    BlinkLog read = (BlinkLog) LampwiseLog.read("x", text.getBytes(UTF_8)).get(0);
    assertEquals(text, LampwiseLog.write(List.of(read)));
    assertEquals(blinks.size(), read.blinks().size());
    for (int i = 0; i < blinks.size(); i++) {
      assertEquals(blinks.get(i).onSeconds(), read.blinks().get(i).onSeconds(), 0.000501);
    }
  }

  private static List<Recording> bare(List<Recording> recordings) {
    return recordings.stream()
        .map(
            r -> {
              Origin origin = new Origin("x", r.origin().fixture(), List.of());
              return r instanceof BlinkLog log
                  ? new BlinkLog(origin, log.marks(), log.blinks())
                  : (Recording) new Description(origin, r.marks(), ((Description) r).said());
            })
        .toList();
  }

  @Provide
  Arbitrary<List<Recording>> recordings() {
    return Combinators.combine(origins(), windows(), targets(), marks(), contents())
        .as(LogRoundTripTest::recording)
        .list()
        .ofMinSize(1)
        .ofMaxSize(4);
  }

  private static Recording recording(
      Origin origin, Optional<Window> window, Targets targets, Marks marks, Object content) {
    Marks all = new Marks(window, targets, marks.events(), marks.covered());
    if (content instanceof String said) {
      return new Description(origin, all, said);
    }
    List<Blink> blinks = new ArrayList<>();
    for (Object blink : (List<?>) content) {
      if (window.isEmpty() || window.get().contains(((Blink) blink).onSeconds())) {
        blinks.add((Blink) blink);
      }
    }
    return new BlinkLog(origin, all, blinks);
  }

  private static Arbitrary<Origin> origins() {
    return Arbitraries.of("north-07", "Tür 3, links", "a: b # c", "none")
        .optional(0.7)
        .map(fixture -> new Origin("r", fixture, List.of()));
  }

  private static Arbitrary<Double> times() {
    return Arbitraries.longs().between(-10_000_000L, 100_000_000_000L).map(ms -> ms / 1e3);
  }

  private static Arbitrary<Window> stretches() {
    return Combinators.combine(
            Arbitraries.longs().between(-100_000, 100_000),
            Arbitraries.longs().between(0, 1_000_000))
        .as((from, length) -> new Window(from / 1e3, (from + length) / 1e3));
  }

  private static Arbitrary<Optional<Window>> windows() {
    return stretches().optional(0.7);
  }

  private static Arbitrary<Targets> targets() {
    Arbitrary<TargetSpan> spans =
        stretches()
            .filter(w -> w.lengthSeconds() > 0)
            .map(w -> new TargetSpan(w.fromSeconds(), w.toSeconds()));
    Arbitrary<TargetSpan> open =
        Combinators.combine(spans, Arbitraries.of(0, 1, 2, 3))
            .as(
                (span, sides) ->
                    new TargetSpan(
                        sides % 2 == 1 ? Double.NEGATIVE_INFINITY : span.fromSeconds(),
                        sides > 1 ? Double.POSITIVE_INFINITY : span.toSeconds()));
    return Arbitraries.oneOf(
        Arbitraries.of(Targets.unknown(), Targets.likely(), Targets.none()),
        open.list().ofMaxSize(3).map(Targets::during));
  }

  private static Arbitrary<Marks> marks() {
    Arbitrary<Event> events =
        Combinators.combine(Arbitraries.of(Event.Kind.class), times()).as(Event::new);
    return Combinators.combine(events.list().ofMaxSize(3), stretches().list().ofMaxSize(2))
        .as((e, c) -> new Marks(Optional.empty(), Targets.unknown(), e, c));
  }

  private static Arbitrary<Object> contents() {
    Arbitrary<Object> words =
        Arbitraries.of(
            Description.NOTHING, "fast blinks", "3 blinks every 7 to 9 s", "steady", "dark");
    Arbitrary<Object> blinks =
        Arbitraries.longs().between(1, 90_000).list().ofMaxSize(20).map(LogRoundTripTest::blinksOf);
    return Arbitraries.oneOf(words, blinks);
  }

  /** Blinks from steps in milliseconds; every second one of even length has an end. */
  private static List<Blink> blinksOf(List<Long> steps) {
    List<Blink> blinks = new ArrayList<>();
    long at = -50_000;
    for (long step : steps) {
      at += step;
      double on = at / 1e3;
      if (step % 2 == 0) {
        at += step / 2;
      }
      blinks.add(new Blink(on, step % 2 == 0 ? at / 1e3 : Double.NaN));
    }
    return blinks;
  }
}
