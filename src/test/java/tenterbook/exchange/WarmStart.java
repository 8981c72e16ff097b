package tenterbook.exchange;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import tenterbook.scenario.ServedWork;

/**
 * Archives of loaded classes (JEP 350, class-data sharing) for the processes that {@link KillHarness} kills, so that less of their
 * time is a start.
 */
final class WarmStart {
    private WarmStart() {}

    /** Puts jars in the place of the folders of the class path, since only jars can be shared. */
    static void useJars(Path into) throws IOException {
        Files.createDirectory(into);
        List<String> path = new ArrayList<>();
        for (Path entry : classPath()) {
            if (Files.isDirectory(entry)) {
                Path jar = into.resolve(path.size() + ".jar");
                jar(entry, jar);
                path.add(jar.toString());
            } else if (Files.exists(entry)) {
                path.add(entry.toString());
            }
        }
        System.setProperty("java.class.path", String.join(File.pathSeparator, path));
    }

    /** Maven's {@code exec:java} loads this class by a loader of its own, in its own process. */
    private static List<Path> classPath() throws IOException {
        List<Path> entries = new ArrayList<>();
        if (WarmStart.class.getClassLoader() instanceof URLClassLoader loader) {
            for (URL each : loader.getURLs()) {
                entries.add(Path.of(URI.create(each.toString())));
            }
        } else {
            for (String each : System.getProperty("java.class.path").split(File.pathSeparator)) {
                entries.add(Path.of(each));
            }
        }
        return entries;
    }

    private static void jar(Path folder, Path jar) throws IOException {
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar));
                Stream<Path> files = Files.walk(folder)) {
            out.setLevel(1);
            for (Path file : files.filter(each -> !each.equals(folder)).sorted().toList()) {
                String name = folder.relativize(file).toString().replace(File.separatorChar, '/');
                if (Files.isDirectory(file)) {
                    out.putNextEntry(new JarEntry(name + "/"));
                } else {
                    out.putNextEntry(new JarEntry(name));
                    Files.copy(file, out);
                }
                out.closeEntry();
            }
        }
    }

    /** Settings of Java for {@link KilledWork}. */
    static List<String> ofWork(Path around) throws Exception {
        Path here = Files.createDirectory(around.resolve("warm-work"));
        Path studio = here.resolve("studio");
        Demo.open(studio, 1, 1000).close();
        Path shared = around.resolve("work.jsa");
        Process learning = KilledWork.start(
                making(shared),
                here.resolve("acknowledged"),
                "ONCE",
                studio.toString(),
                here.toString(),
                here.resolve("acknowledged").toString());
        if (learning.waitFor() != 0 || !Files.exists(shared)) {
            throw new IllegalStateException(Files.readString(here.resolve("child.log")));
        }
        return using(shared);
    }

    /** Settings of Java for the whole program. */
    static List<String> ofProgram(Path around) throws Exception {
        Path here = Files.createDirectory(around.resolve("warm-program"));
        Path studio = here.resolve("studio");
        Demo.open(studio, 1, 1000).close();
        Path shared = around.resolve("program.jsa");
        new ServedWork(making(shared), studio, here).once();
        if (!Files.exists(shared)) {
            throw new IllegalStateException("no " + shared);
        }
        return using(shared);
    }

    private static List<String> making(Path shared) {
        return List.of("-Xlog:disable", "-Xlog:all=error", "-XX:+UseSerialGC", "-XX:ArchiveClassesAtExit=" + shared);
    }

    private static List<String> using(Path shared) {
        return List.of("-XX:+UseSerialGC", "-Xshare:auto", "-XX:SharedArchiveFile=" + shared);
    }
}
