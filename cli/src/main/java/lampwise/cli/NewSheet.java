package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.file.SheetWriter;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LabelEntry;
import lampwise.sheet.LabelException;
import lampwise.sheet.LabelWords;
import lampwise.sheet.LampState;

/**
 * {@code sheet --new}: asks for what stands on a label, line by line, and writes the sheet when all
 * of it was shown.
 */
final class NewSheet {
  private static final String BACK = "back";
  private static final String SKIP = "skip";
  private static final String DONE = "done";
  private static final List<String> BASES =
      List.of(Basis.LABEL.word(), Basis.MANUAL.word(), Basis.OBSERVED.word());

  private final Surroundings here;
  private final boolean force;
  private final Questions questions;
  private final List<LampState> states = new ArrayList<>();
  private final NewState state;
  private String title = "";
  private Basis basis = Basis.LABEL;
  private double clock = CodeSheet.DEFAULT_CLOCK;
  private OptionalDouble blink = OptionalDouble.empty();

  NewSheet(Surroundings here, boolean force) {
    this.here = here;
    this.force = force;
    this.questions = new Questions(here);
    this.state = new NewState(questions, states);
  }

  /**
   * Asks and writes.
   *
   * @param file where to; asked for at the end if it is empty
   * @return the exit status: refused if the answers end too early, then nothing is written
   * @throws UsageException if the file may not or cannot be written
   */
  int run(Optional<String> file) throws UsageException {
    if (file.isPresent()) {
      OutputFiles.check(here, file.get(), force);
    }
    questions.say(
        "A new code sheet, line by line. An empty answer takes what stands in brackets; back goes"
            + " one question back, skip leaves a state out, done ends the list.");
    try {
      head(0);
      while (true) {
        body();
        Optional<String> name = nameOf(file);
        if (name.isPresent()) {
          OutputFiles.write(here, name.get(), SheetWriter.write(sheet()), force);
          questions.say(name.get() + " is written; try it with decode --sheet");
          return Main.DONE;
        }
      }
    } catch (Questions.Ended e) {
      here.out().flush();
      here.err().println("the answers ended before the sheet was done; nothing is written");
      return Main.REFUSED;
    }
  }

  /** The questions about the sheet as a whole, from one of them on. */
  private void head(int from) throws Questions.Ended {
    int at = from;
    while (at < 4) {
      String answer = headAnswer(at);
      if (answer.equals(BACK)) {
        at = Math.max(0, at - 1);
      } else if (takesHead(at, answer)) {
        at++;
      }
    }
  }

  private String headAnswer(int at) throws Questions.Ended {
    return switch (at) {
      case 0 -> questions.ask("title, what the unit is", title);
      case 1 -> questions.ask("basis (" + String.join(", ", BASES) + ")", basis.word());
      case 2 ->
          questions.ask(
              "clock, how far the unit may be off its printed times",
              Words.decimal(clock * 100, 2) + " %");
      default ->
          questions.ask(
              "blink, how long one lasts where nothing is said, such as 0.1 s; may stay empty",
              blink.isPresent() ? Phrase.shown(blink.getAsDouble()) : "");
    };
  }

  private boolean takesHead(int at, String answer) {
    switch (at) {
      case 0 -> {
        title = answer;
        if (answer.isEmpty()) {
          questions.say("a sheet needs a title, such as: Ground floor urinals, amber lamp");
        }
        return !answer.isEmpty();
      }
      case 1 -> {
        Optional<Basis> said = Basis.of(answer).filter(b -> BASES.contains(b.word()));
        said.ifPresent(b -> basis = b);
        if (said.isEmpty()) {
          questions.say("the basis is one of " + String.join(", ", BASES));
        }
        return said.isPresent();
      }
      case 2 -> {
        OptionalDouble percent = percent(answer);
        if (percent.isEmpty()) {
          questions.say("a percentage is needed such as 5 %, from 0 % to below 50 %");
          return false;
        }
        clock = percent.getAsDouble() / 100;
        return true;
      }
      default -> {
        if (answer.isEmpty() || answer.equals("none")) {
          blink = OptionalDouble.empty();
          return true;
        }
        OptionalDouble seconds = seconds(answer);
        if (seconds.isEmpty() || seconds.getAsDouble() > 60) {
          questions.say("one time is needed such as 120 ms or 0.1 s, at most 60 s, or none");
          return false;
        }
        blink = seconds;
        return true;
      }
    }
  }

  private static OptionalDouble percent(String answer) {
    String number = (answer.endsWith("%") ? answer.substring(0, answer.length() - 1) : answer);
    try {
      double percent = Double.parseDouble(number.strip());
      return percent >= 0 && percent < 50 ? OptionalDouble.of(percent) : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** One duration as phrases write it. */
  private static OptionalDouble seconds(String answer) {
    try {
      if (Phrase.parse("1 blink of " + answer) instanceof Rhythm.Blinking blinking
          && blinking.cycle() instanceof Cycle.Parts cycle
          && cycle.parts().get(0) instanceof Part.Blinks blinks
          && blinks.of().isPresent()
          && blinks.of().get().form() == Length.Form.EXACT) {
        return OptionalDouble.of(blinks.of().get().fromSeconds());
      }
      return OptionalDouble.empty();
    } catch (PhraseException e) {
      return OptionalDouble.empty();
    }
  }

  /** The states, until the list is done. */
  private void body() throws Questions.Ended {
    while (true) {
      String words =
          questions.ask(
              "state " + (states.size() + 1) + ", the label's words (done ends the list)", "");
      if (words.equals(BACK)) {
        takeBack();
      } else if (words.equals(DONE)) {
        if (!states.isEmpty()) {
          return;
        }
        questions.say("a sheet needs at least one state");
      } else if (!words.isEmpty() && !words.equals(SKIP)) {
        label(words);
      }
    }
  }

  private void takeBack() throws Questions.Ended {
    if (states.isEmpty()) {
      head(3);
    } else {
      LampState last = states.remove(states.size() - 1);
      questions.say(last.name() + " is taken out again");
    }
  }

  private void label(String words) throws Questions.Ended {
    List<LabelEntry> entries;
    try {
      entries = LabelWords.read(words);
    } catch (LabelException e) {
      String better = e.suggestion().isEmpty() ? "" : "; perhaps: " + e.suggestion();
      questions.say("cannot be taken: " + e.reason() + better);
      questions.say("say it in other words, or leave it out with skip");
      return;
    }
    if (entries.size() > 1) {
      questions.say("this speaks of " + entries.size() + " states:");
      entries.forEach(entry -> questions.say("  " + entry.words()));
      String answer = questions.ask("one after the other, yes or skip", "yes");
      if (!answer.equals("yes")) {
        questions.say("then type the words of each state alone");
        return;
      }
    }
    for (LabelEntry entry : entries) {
      NewState.Answer answer = state.ask(entry);
      answer.state().ifPresent(states::add);
      if (answer.back()) {
        return;
      }
    }
  }

  private CodeSheet sheet() {
    return new CodeSheet(
        title,
        basis,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blink,
        states);
  }

  /** Shows the list and asks where to write it; empty to go on with the list. */
  private Optional<String> nameOf(Optional<String> file) throws Questions.Ended, UsageException {
    here.out().println();
    SheetCommand.show(here, SheetText.lines(sheet(), SheetText.blocks(here)));
    here.out().println();
    String offered = file.orElse(NewState.slug(title, 5) + ".sheet.yaml");
    while (true) {
      String name = questions.ask("write it to, or back to the list", offered);
      if (name.equals(BACK)) {
        return Optional.empty();
      }
      try {
        OutputFiles.check(here, name, force);
        return Optional.of(name);
      } catch (UsageException e) {
        questions.say(String.valueOf(e.getMessage()));
      }
    }
  }
}
