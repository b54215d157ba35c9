package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.tree.CaseTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.lang.model.element.Element;
import javax.lang.model.element.VariableElement;
import javax.lang.model.type.TypeKind;
import javax.lang.model.type.TypeMirror;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/**
 * What is judged, planned and told hangs on values, never on a word: nothing outside what reads files and requests
 * compares a text with one that stands in the source, takes a text apart, or compares the word of a value.
 */
class WordsDecideNothingTest {
    private static final Path SOURCES = Path.of("src/main/java");
    /** Where texts come in and go out, and what puts them together. */
    private static final Set<String> EDGES = Set.of("cli", "exchange", "language", "server", "store", "units");

    private static final Set<String> COMPARE = Set.of(
            "equals",
            "equalsIgnoreCase",
            "compareTo",
            "startsWith",
            "endsWith",
            "contains",
            "indexOf",
            "matches",
            "split",
            "containsKey");

    /** Sources that do compare texts, how often, and why. */
    private static final Map<String, Exception> EXCEPTIONS = Map.ofEntries(
            Map.entry("paper/Drawing.java", new Exception(1, "the sign ? in a drawing is no lettering")),
            Map.entry("paper/PdfFonts.java", new Exception(1, "lines are broken where there is space")),
            Map.entry("paper/PdfInk.java", new Exception(1, "letters that would run together are drawn apart")),
            Map.entry(
                    "paper/RunSheetPaper.java", new Exception(1, "the name of the whole route among those of places")),
            Map.entry("paper/StatementPaper.java", new Exception(3, "a paper shortens lines that are written")),
            Map.entry("paper/WaitingTogether.java", new Exception(3, "a paper shortens lines that are written")),
            Map.entry("route/Candidate.java", new Exception(1, "what the route file says stands for no object")),
            Map.entry("route/RailCrossing.java", new Exception(1, "the sign's number, as the route file has it")),
            Map.entry("sheet/Sources.java", new Exception(2, "the name of the whole route among those of places")),
            Map.entry("view/PassageView.java", new Exception(1, "what a request asks for by its name")),
            Map.entry("view/SpotHeights.java", new Exception(1, "a surveyed line is called as the route file has it")),
            Map.entry("whatif/Relaxations.java", new Exception(1, "the name of the whole route among those of places")),
            Map.entry(
                    "whatif/RobustnessCheck.java",
                    new Exception(1, "the name of the whole route among those of places")));

    private record Exception(int times, String why) {}

    @Test
    void nothingIsDecidedByAWord() throws IOException {
        Map<String, List<String>> found = comparisonsIn(judging());
        EXCEPTIONS.forEach((file, e) -> {
            List<String> there = found.getOrDefault(file, List.of());
            assertEquals(e.times, there.size(), file + ": " + e.why + ": " + there);
            found.remove(file);
        });
        assertEquals(Map.of(), found);
    }

    /** What it is there to find, so that it cannot pass by finding nothing. */
    @Test
    void findsEveryWayOfHangingOnAWord() throws IOException {
        String source = """
                import java.util.Set;
                class Sample {
                    static final String TIRES = "tires";
                    enum Kind { A; String word() { return "a"; } }
                    boolean literal(String s) { return s.equals("tires"); }
                    boolean turned(String s) { return "tires".equals(s); }
                    boolean constant(String s) { return TIRES.equals(s); }
                    boolean start(String s) { return s.startsWith("raised"); }
                    boolean among(String s) { return Set.of("left", "right").contains(s); }
                    boolean word(Kind k, String s) { return k.word().equals(s); }
                    String apart(String s) { return s.split(",")[0]; }
                    int chosen(String s) { switch (s) { case "left": return 1; default: return 0; } }
                    int arrows(String s) { return switch (s) { case "left" -> 1; default -> 0; }; }
                    boolean fine(String id, String other, Kind k) { return id.equals(other) && k.equals(Kind.A); }
                    int fine(Kind k) { return switch (k) { case A -> 1; }; }
                }
                """;
        JavaFileObject file =
                new SimpleJavaFileObject(URI.create("string:///Sample.java"), JavaFileObject.Kind.SOURCE) {
                    @Override
                    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                        return source;
                    }
                };
        List<String> found = comparisonsIn(List.of(file)).values().iterator().next();
        assertEquals(
                Set.of("literal", "turned", "constant", "start", "among", "word", "apart", "chosen", "arrows"),
                found.stream().map(f -> f.substring(0, f.indexOf(':'))).collect(Collectors.toSet()),
                found.toString());
    }

    @Test
    void looksAtEveryRoomThatJudges() throws IOException {
        Set<String> rooms = new TreeSet<>();
        for (JavaFileObject file : judging()) {
            rooms.add(room(Path.of(file.toUri())));
        }
        assertTrue(
                rooms.containsAll(Set.of(
                        "axleload",
                        "check",
                        "clearance",
                        "paper",
                        "plan",
                        "posture",
                        "report",
                        "rig",
                        "road",
                        "route",
                        "sheet",
                        "turning",
                        "view",
                        "whatif")),
                rooms.toString());
        assertFalse(rooms.contains("exchange"), rooms.toString());
    }

    private static List<JavaFileObject> judging() throws IOException {
        List<JavaFileObject> files = new ArrayList<>();
        StandardJavaFileManager manager = ToolProvider.getSystemJavaCompiler().getStandardFileManager(null, null, null);
        try (Stream<Path> all = Files.walk(SOURCES)) {
            List<Path> paths = all.filter(p -> p.toString().endsWith(".java"))
                    .filter(p -> p.getNameCount() > 5 && !EDGES.contains(room(p)))
                    .sorted()
                    .toList();
            manager.getJavaFileObjectsFromPaths(paths).forEach(files::add);
        }
        return files;
    }

    /** "check" of src/main/java/org/cresthaul/check/.... */
    private static String room(Path file) {
        String path = file.toString().replace('\\', '/');
        String below = path.substring(path.indexOf("org/cresthaul/") + "org/cresthaul/".length());
        return below.substring(0, Math.max(0, below.indexOf('/')));
    }

    /** By source, each as "method: what". */
    private static Map<String, List<String>> comparisonsIn(List<JavaFileObject> files) throws IOException {
        JavacTask task = (JavacTask) ToolProvider.getSystemJavaCompiler()
                .getTask(
                        null,
                        null,
                        d -> {},
                        List.of("-proc:none", "-cp", System.getProperty("java.class.path")),
                        null,
                        files);
        Iterable<? extends CompilationUnitTree> units = task.parse();
        task.analyze();
        Map<String, List<String>> found = new TreeMap<>();
        for (CompilationUnitTree unit : units) {
            List<String> here = new ArrayList<>();
            new Comparisons(Trees.instance(task), here).scan(unit, null);
            if (!here.isEmpty()) {
                String path = unit.getSourceFile().toUri().getPath();
                found.put(
                        path.substring(path.indexOf("org/cresthaul/") < 0 ? 0 : path.indexOf("org/cresthaul/") + 14),
                        here);
            }
        }
        return found;
    }

    private static final class Comparisons extends TreePathScanner<Void, Void> {
        private final Trees trees;
        private final List<String> found;
        private String method = "";

        Comparisons(Trees trees, List<String> found) {
            this.trees = trees;
            this.found = found;
        }

        @Override
        public Void visitMethod(com.sun.source.tree.MethodTree tree, Void none) {
            String outer = method;
            method = tree.getName().toString();
            super.visitMethod(tree, none);
            method = outer;
            return null;
        }

        @Override
        public Void visitMethodInvocation(MethodInvocationTree call, Void none) {
            if (call.getMethodSelect() instanceof MemberSelectTree select
                    && COMPARE.contains(select.getIdentifier().toString())
                    && call.getArguments().size() == 1) {
                ExpressionTree on = select.getExpression();
                ExpressionTree argument = call.getArguments().get(0);
                boolean texts = isText(on) || isText(argument);
                if (texts && (isWritten(on) || isWritten(argument))) {
                    found.add(method + ": " + call);
                }
            }
            return super.visitMethodInvocation(call, none);
        }

        @Override
        public Void visitCase(CaseTree branch, Void none) {
            if (branch.getExpressions().stream().anyMatch(this::isText)) {
                found.add(method + ": case " + branch.getExpressions());
            }
            return super.visitCase(branch, none);
        }

        private boolean isText(ExpressionTree tree) {
            TypeMirror type = typeOf(tree);
            return type != null
                    && type.getKind() == TypeKind.DECLARED
                    && type.toString().equals("java.lang.String");
        }

        /** A literal, a constant, a set or list of them, or the word of a value. */
        private boolean isWritten(ExpressionTree tree) {
            return switch (tree.getKind()) {
                case STRING_LITERAL -> true;
                case IDENTIFIER, MEMBER_SELECT -> isConstant(tree);
                case METHOD_INVOCATION -> {
                    MethodInvocationTree call = (MethodInvocationTree) tree;
                    String name = call.getMethodSelect() instanceof MemberSelectTree s
                            ? s.getIdentifier().toString()
                            : call.getMethodSelect().toString();
                    yield Set.of("word", "label").contains(name)
                            || name.equals("of") && call.getArguments().stream().anyMatch(this::isWritten);
                }
                default -> false;
            };
        }

        private boolean isConstant(ExpressionTree tree) {
            Element element = trees.getElement(new com.sun.source.util.TreePath(getCurrentPath(), tree));
            return element instanceof VariableElement v && v.getConstantValue() instanceof String;
        }

        private TypeMirror typeOf(ExpressionTree tree) {
            return trees.getTypeMirror(new com.sun.source.util.TreePath(getCurrentPath(), tree));
        }
    }
}
