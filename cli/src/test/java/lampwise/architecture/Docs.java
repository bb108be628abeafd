package lampwise.architecture;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.ModifiersTree;
import com.sun.source.tree.PrimitiveTypeTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javax.lang.model.element.Modifier;
import javax.lang.model.type.TypeKind;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.ToolProvider;

/**
 * Finds what public Javadoc leaves out: a comment, a parameter, a result. What a comment says
 * wrongly is doclint's to find.
 *
 * <p>The parameters of a record stand at the record; its compact constructor needs a comment of its
 * own, but not the parameters again. A method marked with {@code @Override} needs none.
 */
final class Docs {
  private Docs() {}

  /** One line for each gap in the given sources, with file and line. */
  static List<String> gaps(Iterable<? extends JavaFileObject> sources) {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    JavacTask task =
        (JavacTask) compiler.getTask(null, null, null, List.of("-proc:none"), null, sources);
    List<String> gaps = new ArrayList<>();
    try {
      for (CompilationUnitTree unit : task.parse()) {
        new Scanner(DocTrees.instance(task), unit, gaps).scan(unit, null);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return gaps;
  }

  private static final class Scanner extends TreePathScanner<Void, Void> {
    private final DocTrees trees;
    private final CompilationUnitTree unit;
    private final List<String> gaps;

    Scanner(DocTrees trees, CompilationUnitTree unit, List<String> gaps) {
      this.trees = trees;
      this.unit = unit;
      this.gaps = gaps;
    }

    @Override
    public Void visitClass(ClassTree type, Void unused) {
      if (!isPublic(type.getModifiers())) {
        return null;
      }
      Set<String> names = new LinkedHashSet<>();
      type.getTypeParameters().forEach(name -> names.add("<" + name.getName() + ">"));
      type.getMembers().stream()
          .filter(member -> type.getKind() == Tree.Kind.RECORD && isComponent(member))
          .forEach(member -> names.add(((VariableTree) member).getName().toString()));
      require(type.getSimpleName().toString(), names, false);
      return super.visitClass(type, null);
    }

    @Override
    public Void visitMethod(MethodTree method, Void unused) {
      if (!isPublic(method.getModifiers()) || isOverride(method)) {
        return null;
      }
      boolean constructor = method.getReturnType() == null;
      Set<String> names = new LinkedHashSet<>();
      method.getTypeParameters().forEach(name -> names.add("<" + name.getName() + ">"));
      if (!(constructor && isCompact(method))) {
        method.getParameters().forEach(name -> names.add(name.getName().toString()));
      }
      String name = constructor ? enclosing().getSimpleName() + "()" : method.getName() + "()";
      require(name, names, !constructor && !isVoid(method.getReturnType()));
      return null;
    }

    @Override
    public Void visitVariable(VariableTree field, Void unused) {
      boolean component = enclosing().getKind() == Tree.Kind.RECORD && isComponent(field);
      if (isPublic(field.getModifiers()) && !component) {
        require(field.getName().toString(), Set.of(), false);
      }
      return null;
    }

    private void require(String name, Set<String> parameters, boolean result) {
      DocCommentTree comment = trees.getDocCommentTree(getCurrentPath());
      if (comment == null) {
        report(name, "no comment");
        return;
      }
      if (comment.getFullBody().isEmpty()) {
        report(name, "no description");
      }
      if (comment.toString().contains("{@inheritDoc}")) {
        return;
      }
      Set<String> missing = new LinkedHashSet<>(parameters);
      boolean returns = !result || comment.toString().startsWith("{@return");
      for (DocTree tag : comment.getBlockTags()) {
        if (tag instanceof ParamTree param) {
          missing.remove(
              param.isTypeParameter() ? "<" + param.getName() + ">" : param.getName().toString());
        }
        returns |= tag.getKind() == DocTree.Kind.RETURN;
      }
      missing.forEach(parameter -> report(name, "no @param for " + parameter));
      if (!returns) {
        report(name, "no @return");
      }
    }

    private void report(String name, String gap) {
      TreePath path = getCurrentPath();
      long start = trees.getSourcePositions().getStartPosition(unit, path.getLeaf());
      long line = unit.getLineMap().getLineNumber(start);
      String file = Path.of(unit.getSourceFile().getName()).getFileName().toString();
      gaps.add(file + ":" + line + ": " + name + ": " + gap);
    }

    private ClassTree enclosing() {
      return (ClassTree) getCurrentPath().getParentPath().getLeaf();
    }

    /** Public or protected; in an interface also what says neither. */
    private boolean isPublic(ModifiersTree modifiers) {
      Tree parent = getCurrentPath().getParentPath().getLeaf();
      Set<Modifier> flags = modifiers.getFlags();
      boolean inInterface =
          parent.getKind() == Tree.Kind.INTERFACE || parent.getKind() == Tree.Kind.ANNOTATION_TYPE;
      return flags.contains(Modifier.PUBLIC)
          || flags.contains(Modifier.PROTECTED)
          || (inInterface && !flags.contains(Modifier.PRIVATE));
    }

    /** Whether its body follows right after its name. */
    private boolean isCompact(MethodTree constructor) {
      SourcePositions positions = trees.getSourcePositions();
      int start = (int) positions.getStartPosition(unit, constructor);
      int body = (int) positions.getStartPosition(unit, constructor.getBody());
      try {
        CharSequence source = unit.getSourceFile().getCharContent(true);
        String head = source.subSequence(start, body).toString().strip();
        return head.endsWith(enclosing().getSimpleName().toString());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static boolean isComponent(Tree member) {
      return member instanceof VariableTree field
          && !field.getModifiers().getFlags().contains(Modifier.STATIC);
    }

    private static boolean isOverride(MethodTree method) {
      return method.getModifiers().getAnnotations().stream()
          .anyMatch(annotation -> annotation.getAnnotationType().toString().equals("Override"));
    }

    private static boolean isVoid(Tree type) {
      return type instanceof PrimitiveTypeTree primitive
          && primitive.getPrimitiveTypeKind() == TypeKind.VOID;
    }
  }
}
