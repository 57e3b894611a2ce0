package tallywell.report;

/**
 * One file that a run was worked up from.
 *
 * @param role {@code run}, {@code method}, {@code layout}, {@code samples} or {@code readings}
 * @param name path as typed, or the id of a built-in method
 * @param sha256 SHA-256 of its bytes in hexadecimal
 */
public record InputFile(String role, String name, String sha256) {}
