package tenterbook.words;

/** An exception whose sentence can be written in any language; its {@code getMessage()} is the English one. */
public interface Explained {
    Written explanation();
}
