package org.cresthaul;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which package may use which. Data flows one way; loosening a row is a decision written into docs/decisions.md. */
class ArchitectureTest {
    private static final String BASE = "org.cresthaul";
    /**
     * Each package with those of ours it may use. The empty name is the base package, which wires the two front doors.
     */
    private static final Map<String, List<String>> MAY_USE = Map.ofEntries(
            Map.entry("language", List.of()),
            Map.entry("units", List.of()),
            Map.entry("geometry", List.of()),
            Map.entry("rig", List.of("units", "geometry")),
            Map.entry("road", List.of("units", "geometry")),
            Map.entry("axleload", List.of("language", "rig", "units", "geometry")),
            Map.entry("route", List.of("axleload", "language", "road", "units", "geometry")),
            Map.entry("exchange.json", List.of("units")),
            Map.entry("exchange.rigfile", List.of("exchange.json", "rig", "units", "geometry")),
            Map.entry(
                    "exchange.routefile",
                    List.of("exchange.json", "axleload", "language", "rig", "road", "route", "units", "geometry")),
            Map.entry("exchange.crs", List.of("route", "units")),
            Map.entry("exchange.track", List.of("exchange.crs", "exchange.json", "route", "units", "geometry")),
            Map.entry("exchange.osm", List.of("exchange.track", "route", "units", "geometry")),
            Map.entry("exchange.raster", List.of("exchange.crs", "route", "units", "geometry")),
            Map.entry(
                    "exchange",
                    List.of(
                            "exchange.json",
                            "exchange.osm",
                            "exchange.raster",
                            "exchange.routefile",
                            "exchange.track",
                            "route",
                            "road",
                            "units",
                            "geometry")),
            Map.entry("posture", List.of("rig", "road", "geometry")),
            Map.entry("clearance.bound", List.of("posture", "rig", "road", "geometry")),
            Map.entry("clearance", List.of("clearance.bound", "posture", "rig", "road", "geometry")),
            Map.entry("turning", List.of("language", "rig", "road", "units", "geometry")),
            Map.entry(
                    "report", List.of("axleload", "rig", "road", "route", "turning", "language", "units", "geometry")),
            Map.entry(
                    "check",
                    List.of(
                            "report",
                            "axleload",
                            "clearance",
                            "posture",
                            "turning",
                            "route",
                            "language",
                            "rig",
                            "road",
                            "units",
                            "geometry")),
            Map.entry(
                    "view",
                    List.of(
                            "check",
                            "report",
                            "axleload",
                            "clearance",
                            "posture",
                            "turning",
                            "route",
                            "language",
                            "rig",
                            "road",
                            "units",
                            "geometry")),
            Map.entry(
                    "plan",
                    List.of(
                            "check",
                            "report",
                            "axleload",
                            "turning",
                            "route",
                            "language",
                            "rig",
                            "road",
                            "units",
                            "geometry")),
            Map.entry("whatif", List.of("plan", "view", "check", "report", "route", "language", "rig", "road")),
            Map.entry(
                    "sheet",
                    List.of(
                            "plan",
                            "check",
                            "report",
                            "axleload",
                            "posture",
                            "turning",
                            "route",
                            "language",
                            "rig",
                            "road",
                            "units",
                            "geometry")),
            Map.entry(
                    "paper",
                    List.of(
                            "sheet",
                            "plan",
                            "view",
                            "report",
                            "exchange",
                            "exchange.osm",
                            "route",
                            "language",
                            "rig",
                            "units")),
            Map.entry("store", List.of("units")),
            Map.entry(
                    "server",
                    List.of(
                            "store",
                            "paper",
                            "sheet",
                            "whatif",
                            "plan",
                            "view",
                            "check",
                            "report",
                            "axleload",
                            "exchange",
                            "exchange.crs",
                            "exchange.json",
                            "exchange.osm",
                            "exchange.raster",
                            "exchange.rigfile",
                            "exchange.routefile",
                            "exchange.track",
                            "route",
                            "language",
                            "rig",
                            "road",
                            "units",
                            "geometry")),
            Map.entry(
                    "cli",
                    List.of(
                            "store",
                            "server",
                            "exchange",
                            "exchange.crs",
                            "exchange.json",
                            "exchange.osm",
                            "exchange.raster",
                            "exchange.rigfile",
                            "exchange.routefile",
                            "exchange.track",
                            "paper",
                            "sheet",
                            "whatif",
                            "plan",
                            "check",
                            "report",
                            "axleload",
                            "turning",
                            "route",
                            "language",
                            "rig",
                            "units")),
            Map.entry("", List.of("server", "cli")));

    /** A library and the only packages that may use it. */
    private static final Map<String, List<String>> ONLY_IN = Map.ofEntries(
            Map.entry("net.sf.geographiclib..", List.of("route")),
            Map.entry("io.javalin..", List.of("server")),
            Map.entry("org.eclipse.jetty..", List.of("server")),
            Map.entry("picocli..", List.of("cli")),
            Map.entry("org.apache.pdfbox..", List.of("paper")),
            Map.entry("org.apache.sis..", List.of("exchange.crs")),
            Map.entry("org.opengis..", List.of("exchange.crs")),
            Map.entry("com.google.protobuf..", List.of("exchange.osm")),
            Map.entry("crosby.binary..", List.of("exchange.osm")),
            Map.entry("org.sqlite..", List.of("store")),
            Map.entry("org.jdbi..", List.of("store")),
            Map.entry("org.flywaydb..", List.of("store")),
            Map.entry(
                    "com.fasterxml.jackson..",
                    List.of(
                            "exchange",
                            "exchange.json",
                            "exchange.rigfile",
                            "exchange.routefile",
                            "exchange.track",
                            "server",
                            "cli")));

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(BASE);

    static Stream<String> packages() {
        return MAY_USE.keySet().stream().sorted();
    }

    static Stream<String> libraries() {
        return ONLY_IN.keySet().stream().sorted();
    }

    private static String[] full(List<String> packages) {
        return packages.stream().map(p -> p.isEmpty() ? BASE : BASE + "." + p).toArray(String[]::new);
    }

    @ParameterizedTest(name = "org.cresthaul {0}")
    @MethodSource("packages")
    void usesOnlyWhatTheTableSays(String name) {
        String[] self = full(List.of(name));
        classes()
                .that(resideInAnyPackage(self))
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage(BASE + ".."))
                        .or(resideInAnyPackage(self))
                        .or(resideInAnyPackage(full(MAY_USE.get(name)))))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("libraries")
    void keepsALibraryInItsRoom(String library) {
        noClasses()
                .that(not(resideInAnyPackage(full(ONLY_IN.get(library)))))
                .should()
                .dependOnClassesThat(resideInAPackage(library))
                .check(CLASSES);
    }

    @Test
    void theEnginesDoNoInputOrOutput() {
        noClasses()
                .that(resideInAnyPackage(full(
                        List.of("geometry", "road", "posture", "clearance", "clearance.bound", "axleload", "turning"))))
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("java.io..", "java.nio..", "java.net..", "java.sql..", "org.slf4j.."))
                .check(CLASSES);
    }

    @Test
    void everyPackageHasARowAndEveryRowKnownPackages() {
        Set<String> found = CLASSES.stream()
                .map(c -> c.getPackageName().equals(BASE)
                        ? ""
                        : c.getPackageName().substring(BASE.length() + 1))
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(
                found.containsAll(
                        List.of("units", "geometry", "rig", "road", "route", "posture", "clearance", "turning")),
                found.toString());
        found.removeAll(MAY_USE.keySet());
        assertEquals(Set.of(), found, "packages without a row");
        Stream.concat(MAY_USE.values().stream(), ONLY_IN.values().stream())
                .flatMap(List::stream)
                .forEach(name -> assertTrue(MAY_USE.containsKey(name), name));
    }

    @Test
    void theTableHasNoCircle() {
        for (String name : MAY_USE.keySet()) {
            Set<String> below = new TreeSet<>(MAY_USE.get(name));
            while (below.addAll(
                    below.stream().flatMap(used -> MAY_USE.get(used).stream()).toList())) {
                assertFalse(below.contains(name), name + " stands on itself: " + below);
            }
            assertFalse(below.contains(name), name + " stands on itself: " + below);
        }
    }
}
