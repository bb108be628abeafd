package lampwise.service;

import java.util.List;
import java.util.Optional;

/** What to do next during a visit. */
public sealed interface Step permits Step.Secure, Step.Look, Step.Mend, Step.HandOver, Step.Close {
  /**
   * Why, in one sentence, with the figures where there are any.
   *
   * @return the sentence
   */
  String why();

  /**
   * What to mind before the first line of the step.
   *
   * @return the cautions, in the guide's order; may be empty
   */
  default List<Caution> cautions() {
    if (this instanceof Secure secure) {
      return secure.rule().cautions();
    }
    if (this instanceof Look look) {
      return look.check().cautions();
    }
    if (this instanceof HandOver over) {
      return over.remedy().map(Remedy::cautions).orElse(List.of());
    }
    return this instanceof Mend mend ? mend.remedy().cautions() : List.of();
  }

  /**
   * Make it safe, before any question.
   *
   * @param rule what to do
   * @param why why
   */
  record Secure(MakeSafe rule, String why) implements Step {}

  /**
   * Look, try or measure.
   *
   * @param check the check
   * @param expectedMinutes the minutes to a working fixture that are expected from here; NaN for
   *     what is asked whatever it costs
   * @param why why
   */
  record Look(Check check, double expectedMinutes, String why) implements Step {}

  /**
   * Put something right.
   *
   * @param remedy the remedy
   * @param missing its parts that are not at hand; may be empty
   * @param expectedMinutes the minutes to a working fixture that are expected from here
   * @param why why
   */
  record Mend(Remedy remedy, List<String> missing, double expectedMinutes, String why)
      implements Step {
    /** Keeps a copy of the list. */
    public Mend {
      missing = List.copyOf(missing);
    }
  }

  /**
   * Hand over to somebody else.
   *
   * @param to to whom
   * @param remedy what they are expected to do; empty if that is open
   * @param expectedMinutes the minutes to a working fixture that are expected from here
   * @param why why
   */
  record HandOver(Who to, Optional<Remedy> remedy, double expectedMinutes, String why)
      implements Step {}

  /**
   * End the visit.
   *
   * @param outcome its result
   * @param lines what to do and to write down before leaving
   * @param why why
   */
  record Close(Outcome outcome, List<ClosingStep> lines, String why) implements Step {
    /** Keeps a copy of the list. */
    public Close {
      lines = List.copyOf(lines);
    }
  }
}
