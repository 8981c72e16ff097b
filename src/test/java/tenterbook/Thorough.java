package tenterbook;

/** How often a long check is repeated: a few times in every build, many times with {@code mvn verify -Pthorough}. */
public final class Thorough {
    private Thorough() {}

    public static int times(int few, int many) {
        return Boolean.getBoolean("tenterbook.thorough") ? many : few;
    }
}
