package tallywell.report;

/**
 * One file that a report was made from, with its bytes, so that the report can be made again from itself; cannot change.
 */
public final class CarriedFile {
    private final String role;
    private final String typed;
    private final String name;
    private final String sha256;
    private final byte[] bytes;

    /**
     * A file to carry.
     *
     * @param role what it was read as: {@code run}, {@code method}, {@code layout}, {@code samples}, {@code readings} or
     *     {@code plan}
     * @param typed how the run names it; for the run itself its path as typed
     * @param name what reports call it
     * @param sha256 SHA-256 that is stated for it, in hexadecimal
     * @param bytes the file
     */
    public CarriedFile(String role, String typed, String name, String sha256, byte[] bytes) {
        this.role = role;
        this.typed = typed;
        this.name = name;
        this.sha256 = sha256;
        this.bytes = bytes.clone();
    }

    /** What it was read as. */
    public String role() {
        return role;
    }

    /** How the run names it. */
    public String typed() {
        return typed;
    }

    /** What reports call it. */
    public String name() {
        return name;
    }

    /** The SHA-256 that is stated for it. */
    public String sha256() {
        return sha256;
    }

    /** A copy of the file. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Shared, not copied: inside this package nobody writes into it. */
    byte[] shared() {
        return bytes;
    }
}
