package tenterbook.exchange.kept;

import java.io.IOException;
import java.nio.file.Path;
import java.util.NavigableMap;
import tenterbook.exchange.bag.Pace;

/** Where the photographs and papers of an archive go, each once, for all backups of its ledger. */
public interface SharedFiles {
    /**
     * @param hex the digest its name gives
     * @return the digest of the archive's own file; {@code hex} where it is kept there already
     */
    String store(KeptFolder folder, KeptFiles.KeptFile file, String hex, Pace pace) throws IOException;

    /** Those that lie there, by their names in an archive. */
    NavigableMap<String, Path> there() throws IOException;

    /** Files that were new in this run. */
    long copied();

    /** Of the archive's own files that were new. */
    long bytes();
}
