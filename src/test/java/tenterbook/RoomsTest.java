package tenterbook;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The rooms of the program and what each may know, as told in DEVELOPERS.md. Arrows point one way. */
class RoomsTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("tenterbook");

    /** A room, and the rooms it may know. A room that does not exist yet breaks nothing. */
    private static final Map<String, Set<String>> MAY_KNOW = new LinkedHashMap<>();

    static {
        MAY_KNOW.put("words", Set.of());
        MAY_KNOW.put("measure", Set.of("words"));
        MAY_KNOW.put("colour", Set.of("words", "measure"));
        MAY_KNOW.put("board", Set.of("words", "measure"));
        MAY_KNOW.put("material", Set.of("words", "measure"));
        MAY_KNOW.put("recipe", Set.of("words", "measure", "colour", "board", "material"));
        MAY_KNOW.put("piece", Set.of("words", "measure", "colour", "board", "material", "recipe"));
        MAY_KNOW.put("ledger", Set.of("words", "measure"));
        MAY_KNOW.put("imaging", Set.of("words", "measure", "colour", "ledger"));
        Set<String> kept =
                Set.of("words", "measure", "colour", "board", "material", "recipe", "piece", "ledger", "imaging");
        MAY_KNOW.put("archive", kept);
        MAY_KNOW.put("facts", with(kept, "archive"));
        MAY_KNOW.put("typeset", Set.of("words", "measure"));
        MAY_KNOW.put("labelling", with(kept, "archive", "facts", "typeset"));
        MAY_KNOW.put("documents", with(kept, "archive", "facts", "typeset", "labelling"));
        MAY_KNOW.put("search", with(kept, "archive", "facts"));
        MAY_KNOW.put("exchange", with(kept, "archive"));
        MAY_KNOW.put("network", Set.of("words"));
        Set<String> below =
                with(kept, "archive", "facts", "typeset", "labelling", "documents", "search", "exchange", "network");
        MAY_KNOW.put("web", below);
        MAY_KNOW.put("app", with(below, "web"));
    }

    private static Set<String> with(Set<String> rooms, String... more) {
        return java.util.stream.Stream.concat(rooms.stream(), Stream.of(more)).collect(Collectors.toUnmodifiableSet());
    }

    private static DescribedPredicate<JavaClass> room(String name) {
        return resideInAPackage("tenterbook." + name + "..");
    }

    @TestFactory
    Stream<DynamicTest> aRoomKnowsOnlyTheRoomsBelowIt() {
        return MAY_KNOW.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    String[] known = Stream.concat(Stream.of(entry.getKey()), entry.getValue().stream())
                            .map(name -> "tenterbook." + name + "..")
                            .toArray(String[]::new);
                    noClasses()
                            .that(room(entry.getKey()))
                            .should()
                            .dependOnClassesThat(
                                    resideInAPackage("tenterbook..").and(not(resideInAnyPackage(known))))
                            .allowEmptyShould(true)
                            .because("arrows between rooms point down the table only")
                            .check(CLASSES);
                }));
    }

    @Test
    void subRoomsPointOneWay() {
        SlicesRuleDefinition.slices()
                .assignedFrom(new SliceAssignment() {
                    @Override
                    public SliceIdentifier getIdentifierOf(JavaClass type) {
                        return SliceIdentifier.of(type.getPackageName());
                    }

                    @Override
                    public String getDescription() {
                        return "every package by itself";
                    }
                })
                .should()
                .beFreeOfCycles()
                .because("a room whose parts need each other is one room")
                .check(CLASSES);
    }

    /** Past that, what is in it can no longer be seen at a glance. Templates, compiled to classes, are not counted. */
    @Test
    void noPackageHoldsMoreThanTwentyFiveFiles() {
        assertThat(CLASSES.stream()
                        .filter(JavaClass::isTopLevelClass)
                        .filter(type -> !type.getPackageName().startsWith("tenterbook.web.pages"))
                        .collect(Collectors.groupingBy(JavaClass::getPackageName, Collectors.counting())))
                .as("classes by package")
                .isNotEmpty()
                .allSatisfy((name, classes) -> assertThat(classes).as(name).isLessThanOrEqualTo(25));
    }

    @Test
    void everyClassLivesInARoom() {
        assertThat(CLASSES)
                .hasSizeGreaterThan(50)
                .extracting(JavaClass::getPackageName)
                .allMatch(name -> MAY_KNOW.keySet().stream()
                        .anyMatch(room ->
                                name.equals("tenterbook." + room) || name.startsWith("tenterbook." + room + ".")));
    }

    /**
     * A table on the class path is part of the program, so reading one is no I/O: these types are all it takes. Files,
     * streams that write, databases, servers and JSON are not for a domain room.
     */
    @Test
    void aDomainRoomDoesNoInputOrOutput() {
        List<String> reading = Stream.of(
                        InputStream.class,
                        InputStreamReader.class,
                        BufferedReader.class,
                        Reader.class,
                        IOException.class,
                        UncheckedIOException.class,
                        java.io.Serializable.class)
                .map(Class::getName)
                .toList();
        DescribedPredicate<JavaClass> outside = resideInAnyPackage(
                        "java.io..",
                        "java.nio..",
                        "java.net..",
                        "java.sql..",
                        "javax.sql..",
                        "com.fasterxml..",
                        "io.javalin..",
                        "org.apache.lucene..",
                        "org.jdbi..",
                        "org.sqlite..",
                        "org.slf4j..")
                .and(not(DescribedPredicate.describe(
                        "types that read a table on the class path",
                        (JavaClass type) -> reading.contains(type.getName())
                                || type.getPackageName().equals(Charset.class.getPackageName()))));
        noClasses()
                .that(resideInAnyPackage(
                        "tenterbook.measure..",
                        "tenterbook.colour..",
                        "tenterbook.board..",
                        "tenterbook.material..",
                        "tenterbook.recipe..",
                        "tenterbook.piece.."))
                .should()
                .dependOnClassesThat(outside)
                .because("domain rooms hold facts and arithmetic only")
                .check(CLASSES);
    }

    /**
     * What a stranger's file or request could turn against the computer: starting programs, building Java objects from bytes, running
     * scripts, asking other servers. Backups and bags are files; only a decoder of photographs is started, by one class, within bounds,
     * and the browser, with an address of this program itself.
     */
    private static final DescribedPredicate<JavaClass> DANGEROUS = resideInAnyPackage(
                    "javax.script..", "java.net.http..", "javax.naming..", "java.rmi..")
            .or(DescribedPredicate.describe(
                    "types that start programs, read Java objects or call other computers",
                    (JavaClass type) -> Set.of(
                                    "java.lang.ProcessBuilder",
                                    "java.lang.Process",
                                    "java.io.ObjectInputStream",
                                    "java.net.Socket",
                                    "java.net.URLConnection",
                                    "java.net.HttpURLConnection",
                                    "java.net.URLClassLoader")
                            .contains(type.getName())));

    @Test
    void nothingStartsProgramsReadsJavaObjectsOrAsksOtherComputers() {
        noClasses()
                .that()
                .resideOutsideOfPackage("tenterbook.imaging.decoder")
                .and()
                .doNotHaveFullyQualifiedName("tenterbook.app.open.BrowserWindow")
                .should()
                .dependOnClassesThat(DANGEROUS)
                .check(CLASSES);
        noClasses()
                .should()
                .callMethodWhere(DescribedPredicate.describe(
                        "Runtime.exec or URL.openStream",
                        call -> call.getName().equals("exec")
                                        && call.getTargetOwner().isEquivalentTo(Runtime.class)
                                || call.getName().startsWith("open")
                                        && call.getTargetOwner().isEquivalentTo(java.net.URL.class)))
                .check(CLASSES);
    }

    @Test
    void theRulesCanFail() {
        // The ledger truly does what a domain room may not, and truly knows `measure`; were it judged as one, it fails.
        var asDomain = noClasses()
                .that(room("ledger"))
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.nio.file..", "java.sql.."));
        assertThat(asDomain.evaluate(CLASSES).hasViolation()).isTrue();
        var asLowest = noClasses().that(room("ledger")).should().dependOnClassesThat(room("measure"));
        assertThat(asLowest.evaluate(CLASSES).hasViolation()).isTrue();
    }
}
