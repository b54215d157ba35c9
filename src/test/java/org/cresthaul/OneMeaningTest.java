package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A short word that could stand for much stands for one thing in the program. */
class OneMeaningTest {
    /** Each was the name of two to nine types at a time, or could become it. */
    private static final TreeSet<String> WORDS = new TreeSet<>(List.of(
            "Plan",
            "Passage",
            "Place",
            "Way",
            "Judged",
            "Figures",
            "Say",
            "Texts",
            "Words",
            "Marks",
            "Target",
            "LoadTest"));

    @Test
    void eachNamesOneType() {
        JavaClasses program = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.cresthaul");
        Map<String, TreeSet<String>> several = program.stream()
                .filter(c -> !c.isAnonymousClass() && WORDS.contains(c.getSimpleName()))
                .collect(Collectors.groupingBy(
                        JavaClass::getSimpleName,
                        TreeMap::new,
                        Collectors.mapping(JavaClass::getName, Collectors.toCollection(TreeSet::new))));
        // What was read is the program, so that nothing found means nothing there.
        assertTrue(program.contain("org.cresthaul.plan.Plan") && program.size() > 700, "" + program.size());
        several.values().removeIf(names -> names.size() < 2);
        assertEquals(Map.of(), several);
    }
}
