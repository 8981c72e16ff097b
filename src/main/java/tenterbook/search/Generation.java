package tenterbook.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.SearcherFactory;
import org.apache.lucene.search.SearcherManager;
import org.apache.lucene.store.Directory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.search.find.ColumnCache;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Facet;
import tenterbook.search.query.TextAnalysis;

/**
 * One Lucene index in a numbered folder of its own. A rebuild makes the next one beside it; a folder without a commit was
 * never finished and is deleted at the next opening.
 */
final class Generation implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Generation.class);
    private static final String SEQUENCE = "sequence";
    private static final String FORMAT = "format";

    /** Opens the files of one index. */
    @FunctionalInterface
    interface Opening {
        Directory open(Path folder) throws IOException;
    }

    /**
     * Where the generations of an index lie.
     *
     * @param outside values that are indexed beside the archive's own
     */
    record Place(Path root, OutsideFacets outside, Opening opening) {
        /** What an index holds and how, values from outside included. */
        private String format() {
            return PieceDocument.FORMAT + ", " + outside.version();
        }
    }

    private final Place place;
    private final Path folder;
    private final Directory directory;
    private final IndexWriter writer;
    private final SearcherManager searchers;
    private final ColumnCache columns;
    private volatile long seen;
    private long committed = -1;

    private Generation(Place place, Path folder) throws IOException {
        this.place = place;
        this.folder = folder;
        this.columns = new ColumnCache(Stream.concat(Facet.OWN.stream(), place.outside().facets().stream())
                .toList());
        this.directory = place.opening().open(folder);
        IndexWriter opened = null;
        try {
            IndexWriterConfig config = new IndexWriterConfig(TextAnalysis.FOR_INDEX)
                    .setRAMBufferSizeMB(128)
                    .setCommitOnClose(false)
                    .setMergedSegmentWarmer(columns::warm);
            opened = new IndexWriter(directory, config);
            this.writer = opened;
            this.searchers = new SearcherManager(writer, new Warming());
        } catch (IOException | RuntimeException e) {
            if (opened != null) {
                opened.rollback();
            }
            directory.close();
            throw e;
        }
    }

    /** Builds a segment's columns before a search can use it. */
    private final class Warming extends SearcherFactory {
        @Override
        public IndexSearcher newSearcher(IndexReader reader, IndexReader previous) {
            reader.leaves().forEach(leaf -> columns.of(leaf.reader()));
            return new IndexSearcher(reader);
        }
    }

    /** The newest finished generation of this format; every other folder there is deleted. */
    static Optional<Generation> newest(Place place) throws IOException {
        Optional<Generation> found = Optional.empty();
        for (Path folder : folders(place.root())) {
            if (found.isEmpty()) {
                found = opened(place, folder);
            }
            if (found.isEmpty() || !found.get().folder.equals(folder)) {
                delete(folder);
            }
        }
        return found;
    }

    private static Optional<Generation> opened(Place place, Path folder) {
        try (Directory directory = place.opening().open(folder)) {
            if (!DirectoryReader.indexExists(directory)) {
                return Optional.empty();
            }
            Map<String, String> data = SegmentInfos.readLatestCommit(directory).getUserData();
            if (!place.format().equals(data.get(FORMAT))) {
                LOG.info("The search index in {} is of another format and will be rebuilt", folder);
                return Optional.empty();
            }
            Generation generation = new Generation(place, folder);
            generation.seen = Long.parseLong(data.getOrDefault(SEQUENCE, "0"));
            generation.committed = generation.seen;
            return Optional.of(generation);
        } catch (IOException | RuntimeException e) {
            LOG.warn("The search index in {} cannot be read and will be rebuilt from the ledger", folder, e);
            return Optional.empty();
        }
    }

    /** A new, empty generation, unfinished until {@link #commit}. */
    static Generation create(Place place) throws IOException {
        return create(place, 0);
    }

    /** A new one beside this one, in another folder even where this one's was deleted. */
    Generation next() throws IOException {
        return create(place, number(folder));
    }

    private static Generation create(Place place, int above) throws IOException {
        int last = folders(place.root()).stream()
                .mapToInt(Generation::number)
                .max()
                .orElse(0);
        return new Generation(
                place, Files.createDirectories(place.root().resolve(String.valueOf(Math.max(last, above) + 1))));
    }

    private static int number(Path folder) {
        return Integer.parseInt(folder.getFileName().toString());
    }

    private static List<Path> folders(Path root) throws IOException {
        Files.createDirectories(root);
        try (Stream<Path> all = Files.list(root)) {
            return all.filter(path -> path.getFileName().toString().matches("\\d{1,9}"))
                    .sorted(Comparator.comparingInt(Generation::number).reversed())
                    .toList();
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException | UncheckedIOException e) {
            LOG.info("The old search index in {} could not be deleted yet: {}", folder, e.getMessage());
        }
    }

    long seen() {
        return seen;
    }

    ColumnCache columns() {
        return columns;
    }

    /** @throws org.apache.lucene.store.AlreadyClosedException if this generation was replaced */
    IndexSearcher acquire() throws IOException {
        return searchers.acquire();
    }

    void release(IndexSearcher searcher) throws IOException {
        searchers.release(searcher);
    }

    /** Puts the colours of all segments in order, which otherwise the first search by colour does. */
    void orderColours() throws IOException {
        IndexSearcher searcher = acquire();
        try {
            searcher.getIndexReader().leaves().forEach(leaf -> columns.warm(leaf.reader()));
        } finally {
            release(searcher);
        }
    }

    void add(PieceDocument piece) throws IOException {
        writer.addDocument(piece.document());
    }

    void replace(PieceDocument piece) throws IOException {
        writer.updateDocument(PieceDocument.key(piece.number()), piece.document());
    }

    void remove(String number) throws IOException {
        writer.deleteDocuments(PieceDocument.key(number));
    }

    /** Lets searches see what was written, all of the ledger up to {@code sequence}. */
    void refresh(long sequence) throws IOException {
        searchers.maybeRefreshBlocking();
        seen = sequence;
    }

    /** False after a failed write: searches still use it, but only another generation can take more. */
    boolean writable() {
        return writer.isOpen();
    }

    boolean uncommitted() {
        return committed != seen;
    }

    /** Writes to disk what searches see, with the sequence up to which it is complete. */
    void commit() throws IOException {
        long sequence = seen;
        writer.setLiveCommitData(Map.of(SEQUENCE, String.valueOf(sequence), FORMAT, place.format())
                .entrySet());
        writer.commit();
        committed = sequence;
    }

    /** What was not committed is lost. */
    @Override
    public void close() throws IOException {
        searchers.close();
        writer.rollback();
        directory.close();
    }

    void closeAndDelete() throws IOException {
        close();
        delete(folder);
    }
}
