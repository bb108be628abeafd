package lampwise.cli;

import java.util.Optional;
import lampwise.file.FileException;
import lampwise.file.GuideReader;
import lampwise.file.SiteReader;
import lampwise.service.Guide;
import lampwise.service.GuideException;
import lampwise.service.Site;
import picocli.CommandLine.ParseResult;

/** The option {@code --site FILE}: what a site knows better than the built-in guide. */
final class SiteOption {
  private final Guide builtIn = GuideReader.builtIn();
  private final Optional<String> name;
  private final Site site;

  /**
   * Reads the site, if one is named.
   *
   * @throws UsageException with a line for each fault
   */
  SiteOption(ParseResult parsed, Surroundings here) throws UsageException {
    name = ReadingFlags.text(parsed, "--site");
    try {
      site =
          name.isEmpty()
              ? Site.unknown()
              : SiteReader.read(name.get(), InputFiles.read(here, name.get(), "a site"), builtIn);
    } catch (FileException e) {
      throw new UsageException(e);
    }
  }

  /** The site; one of which nothing is known if none was named. */
  Site site() {
    return site;
  }

  /**
   * The built-in guide as the site has it.
   *
   * @throws UsageException if the two do not go together
   */
  Guide guide() throws UsageException {
    try {
      return site.applyTo(builtIn);
    } catch (GuideException e) {
      throw new UsageException(Layout.clean(name.orElse("") + ": " + e.getMessage()));
    }
  }
}
