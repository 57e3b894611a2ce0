package tallywell.notice;

/** How much a notice weighs. */
public enum Severity {
    /** Good to know; nothing is wrong. */
    INFORMATION,
    /** The result stands, but a person should look. */
    ATTENTION,
    /** The work cannot go on. */
    ERROR
}
