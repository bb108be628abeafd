package lampwise.file;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.LampState;

/**
 * One part of a guide with an id, such as a cause, as it stands in a file.
 *
 * @param faults takes what is wrong in that file
 * @param key the id
 * @param node its keys and their values
 */
record GuideItem(FaultList faults, YamlNode.Text key, YamlNode.Table node) {
  /**
   * The parts of one sort from all files of a guide, in order. Ids that are no names or stand twice
   * are faults.
   *
   * @param files the files
   * @param section the key under which they stand
   * @param what one of them in words, such as "cause"
   */
  static List<GuideItem> all(List<GuideFile> files, String section, String what) {
    List<GuideItem> items = new ArrayList<>();
    Map<String, String> places = new HashMap<>();
    for (GuideFile file : files) {
      for (YamlNode.Entry entry : file.entries(section, what)) {
        String id = entry.key().text();
        FaultList faults = file.faults();
        if (!LampState.isName(id)) {
          faults.add(
              entry.key(),
              "the id of a "
                  + what
                  + " must be lower-case letters, digits and hyphens, starting with a letter"
                  + YamlTable.found(entry.key()));
        }
        String place = file.name() + " line " + entry.key().line();
        Optional.ofNullable(places.putIfAbsent(id, place))
            .ifPresent(
                first ->
                    faults.add(
                        entry.key(),
                        "the "
                            + what
                            + " "
                            + Wording.quote(id)
                            + " stands twice; it stood in "
                            + first
                            + " already"));
        if (entry.value() instanceof YamlNode.Table node) {
          items.add(new GuideItem(faults, entry.key(), node));
        } else if (!(entry.value() instanceof YamlNode.Faulty)) {
          faults.add(
              entry.value(),
              "the "
                  + what
                  + " "
                  + Wording.quote(id)
                  + " must be a table of keys"
                  + YamlTable.found(entry.value()));
        }
      }
    }
    return items;
  }

  String id() {
    return key.text();
  }

  /** Whether the id is a name; a fault was told if it is none. */
  boolean isNamed() {
    return LampState.isName(id());
  }
}
