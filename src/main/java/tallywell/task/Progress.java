package tallywell.task;

/** Hears how far a long task is, and may ask it to stop. */
public interface Progress {
    /** Hears nothing and never stops. */
    Progress SILENT = new Progress() {
        @Override
        public void at(String what, int done, int total) {
            // Nobody listens.
        }

        @Override
        public boolean isCancelled() {
            return false;
        }
    };

    /**
     * Called before each part of the work.
     *
     * @param what the part, such as a file
     * @param done parts finished
     * @param total all parts
     */
    void at(String what, int done, int total);

    /** Whether the task should stop without writing anything. */
    boolean isCancelled();
}
