package lampwise.file;

import java.util.List;
import java.util.Optional;

/**
 * One file of a guide, with its first level read.
 *
 * @param name its name
 * @param faults takes what is wrong in it
 * @param root where the file starts
 * @param table its keys
 */
record GuideFile(String name, FaultList faults, YamlNode root, YamlTable table) {
  /** The entries of a section; none if it is not there or after a fault. */
  List<YamlNode.Entry> entries(String section, String what) {
    Optional<YamlNode> value = table.node(section);
    if (value.isPresent() && value.get() instanceof YamlNode.Table node) {
      return node.entries();
    }
    value.ifPresent(
        node ->
            faults.add(
                node,
                section + " must be a table with one " + what + " a key" + YamlTable.found(node)));
    return List.of();
  }
}
