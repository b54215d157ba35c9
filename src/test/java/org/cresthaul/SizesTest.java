package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** How many values a method asks for and how long it is, read from the sources; what is beyond has its reason here. */
class SizesTest {
    private static final int MOST_PARAMETERS = 7;

    /** Constructors of records are not counted: they ask for what the record is. */
    private static final Map<String, String> MORE_PARAMETERS = Map.of(
            "LineSensitivity.steered", "a step of a hot loop: values for its numbers would be made at every state",
            "PathNodes.clothoid", "a step of a hot loop: values for its numbers would be made at every piece",
            "Segments.cross", "four points by their coordinates, asked millions of times",
            "Segments.distance2", "four points by their coordinates, asked millions of times");

    private static final int MOST_LINES = 60;

    private static final Map<String, String> MORE_LINES = Map.of(
            "CornerView.view", "one drawing of many parts, all made of the same swept areas and states",
            "MotionBounds.under", "steps 2 and 3 of the proof, in the order of docs/model.md",
            "PivotedGroup.place", "one step of a search: parts of it would hand a dozen numbers to one another",
            "ReportCsv.header", "a list of columns");

    private static final List<Measured> METHODS = methods();

    /** A method or constructor as it is written. */
    private record Measured(String name, boolean isOfRecord, int parameters, long lines) {}

    private static List<Measured> methods() {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        List<Measured> found = new ArrayList<>();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null);
                Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            List<Path> java =
                    sources.filter(p -> p.toString().endsWith(".java")).sorted().toList();
            JavacTask task = (JavacTask)
                    compiler.getTask(null, files, null, List.of(), null, files.getJavaFileObjectsFromPaths(java));
            SourcePositions positions = Trees.instance(task).getSourcePositions();
            for (CompilationUnitTree unit : task.parse()) {
                unit.accept(new Methods(unit, positions, found), null);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    /** Gathers what a source has. */
    private static final class Methods extends TreeScanner<Void, ClassTree> {
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private final List<Measured> found;

        Methods(CompilationUnitTree unit, SourcePositions positions, List<Measured> found) {
            this.unit = unit;
            this.positions = positions;
            this.found = found;
        }

        @Override
        public Void visitClass(ClassTree type, ClassTree outer) {
            return super.visitClass(type, type);
        }

        @Override
        public Void visitMethod(MethodTree method, ClassTree type) {
            LineMap lines = unit.getLineMap();
            long from = lines.getLineNumber(positions.getStartPosition(unit, method));
            long to = lines.getLineNumber(positions.getEndPosition(unit, method));
            found.add(new Measured(
                    type.getSimpleName() + "." + method.getName(),
                    type.getKind() == Tree.Kind.RECORD && method.getReturnType() == null,
                    method.getParameters().size(),
                    to - from + 1));
            return super.visitMethod(method, type);
        }
    }

    private static Set<String> beyond(Predicate<Measured> rule) {
        return METHODS.stream().filter(rule).map(Measured::name).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void theSourcesAreRead() {
        assertTrue(METHODS.size() > 2000, "" + METHODS.size());
        assertTrue(METHODS.stream().anyMatch(m -> m.name().equals("Statement.<init>") && m.isOfRecord()));
    }

    @Test
    void noSignatureIsOverSevenParametersWithoutAReason() {
        assertEquals(
                new TreeSet<>(MORE_PARAMETERS.keySet()),
                beyond(m -> !m.isOfRecord() && m.parameters() > MOST_PARAMETERS));
    }

    @Test
    void noMethodIsOverSixtyLinesWithoutAReason() {
        assertEquals(new TreeSet<>(MORE_LINES.keySet()), beyond(m -> m.lines() > MOST_LINES));
    }
}
