package lampwise.sim.check;

import lampwise.decode.Decoder;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;

/**
 * The laws that every decoder holds. A test that implements it tries them all:
 *
 * <pre>{@code
 * class MyDecoderTest implements DecoderContract {
 *   public Decoder decoder() {
 *     return new MyDecoder();
 *   }
 * }
 * }</pre>
 *
 * <p>A law that a decoder does not hold yet is overridden with its annotations and {@code
 * net.jqwik.api.Disabled} with the reason. What two answers may differ by is a {@link Tolerance}.
 */
@Domain(LampwiseDomain.class)
@Domain(DomainContext.Global.class)
public interface DecoderContract {
  /**
   * The decoder to try.
   *
   * @return a decoder; it is asked for once a try
   */
  Decoder decoder();

  /**
   * Any recordings against any sheet are answered, also none at all: no exception, nothing null.
   *
   * @param sample any sheet and recordings
   */
  @Property(tries = 20, edgeCases = EdgeCasesMode.NONE)
  @Label("any recordings are answered")
  default void anyRecordingsAreAnswered(@ForAll Sample sample) {
    Laws.answers(decoder(), sample);
  }

  /**
   * The candidates of an answer and of each segment are the states of the sheet, {@code unlisted}
   * and {@code no-rhythm}, each once; their probabilities lie between 0 and 1 and sum to 1. An
   * unreadable recording may have no candidates.
   *
   * @param sample any sheet and recordings
   */
  @Property(tries = 20, edgeCases = EdgeCasesMode.NONE)
  @Label("probabilities sum to one")
  default void probabilitiesSumToOne(@ForAll Sample sample) {
    Laws.sumsToOne(decoder(), sample);
  }

  /**
   * The same call gives the same answer, whatever was asked in between.
   *
   * @param sample what is asked twice
   * @param between what is asked in between
   */
  @Property(tries = 15, edgeCases = EdgeCasesMode.NONE)
  @Label("the same call gives the same answer")
  default void theSameCallGivesTheSameAnswer(
      @ForAll @Plausible Sample sample, @ForAll @Plausible Sample between) {
    Laws.repeats(decoder(), sample, between);
  }

  /**
   * Another zero of the clock changes the times of an answer and nothing else.
   *
   * @param sample a plausible sheet and recordings
   * @param millis how much later everything happens, in milliseconds, up to 11 days either way
   */
  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  @Label("shifting time changes nothing but times")
  default void shiftingTimeChangesNothingButTimes(
      @ForAll @Plausible Sample sample,
      @ForAll @IntRange(min = -1_000_000_000, max = 1_000_000_000) int millis) {
    Laws.shifts(decoder(), sample, millis / 1000.0);
  }

  /**
   * Other names and another order of the states change the names in an answer and nothing else.
   *
   * @param sample a plausible sheet and recordings
   * @param seed of the names and the order
   */
  @Property(tries = 25, edgeCases = EdgeCasesMode.NONE)
  @Label("relabelling and reordering states changes nothing but names")
  default void relabellingChangesNothingButNames(
      @ForAll @Plausible Sample sample, @ForAll @IntRange(max = 1_000_000) int seed) {
    Laws.relabels(decoder(), sample, seed);
  }

  /**
   * Where nothing was watched nothing is decided: logs without blinks and window, windows without
   * length, light curves without samples in the window.
   *
   * @param sheet a plausible sheet
   * @param marks what was noted besides
   */
  @Property(tries = 400, edgeCases = EdgeCasesMode.NONE)
  @Label("an empty window decides nothing")
  default void anEmptyWindowDecidesNothing(
      @ForAll @Plausible CodeSheet sheet, @ForAll @Plausible Marks marks) {
    Laws.decidesNothingOfNothing(decoder(), sheet, marks);
  }

  /**
   * Three clean cycles are decoded where no two states of the sheet come near each other.
   *
   * @param sample a lamp that nobody need mistake
   */
  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  @Label("three clean cycles are decoded")
  default void threeCleanCyclesAreDecoded(@ForAll CleanSample sample) {
    Laws.decodesClean(decoder(), sample);
  }

  /**
   * A lamp whose clock runs within the tolerance stays the likeliest of the candidates.
   *
   * @param sample a lamp that nobody need mistake
   * @param percent how far its clock is off, in per cent of the tolerance
   */
  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  @Label("a clock within the tolerance is accepted")
  default void aClockWithinTheToleranceIsAccepted(
      @ForAll CleanSample sample, @ForAll @IntRange(min = -90, max = 90) int percent) {
    Laws.accepts(decoder(), sample, percent / 100.0);
  }

  /**
   * A lamp whose every duration is three times as long as printed, or a third, is not decoded as
   * the state with that print.
   *
   * @param sample a lamp that nobody need mistake
   * @param slow whether it is three times as long
   */
  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  @Label("a clock far outside the tolerance is not accepted")
  default void aClockFarOutsideTheToleranceIsNotAccepted(
      @ForAll CleanSample sample, @ForAll boolean slow) {
    Laws.rejects(decoder(), sample, slow ? 3 : 1 / 3.0);
  }

  /**
   * The probability of the truth, on average over lamps, does not fall when more of the same lamp
   * is seen. A statistical test of {@value MoreOfTheSame#PAIRS} pairs with fixed seeds: a decoder
   * that holds the law is wrongly accused once in a thousand choices of seeds at the most; one that
   * loses 0.05 on average, with a standard deviation of 0.2, is found out with 95 %.
   */
  @Property(tries = 1)
  @Label("more of the same lamp does not lower the expected probability of the truth")
  default void moreOfTheSameDoesNotLowerTheTruth() {
    MoreOfTheSame.check(decoder());
  }

  /**
   * A state that is added to the sheet and fits worse turns no right answer wrong. It may turn a
   * decoded one into an undecided one.
   *
   * @param sample a lamp that nobody need mistake, and the added state
   */
  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  @Label("a state that fits worse turns no right answer wrong")
  default void aStateThatFitsWorseTurnsNoRightAnswerWrong(@ForAll GrownSample sample) {
    Laws.keepsRightAnswers(decoder(), sample);
  }
}
