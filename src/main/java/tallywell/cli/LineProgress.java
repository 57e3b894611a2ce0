package tallywell.cli;

import tallywell.task.Progress;

/** Shows how far a task is in one line that it writes over. */
final class LineProgress implements Progress {
    private static final int WIDTH = 70;

    private final Console console;

    LineProgress(Console console) {
        this.console = console;
    }

    static Progress on(Console console, boolean quiet) {
        return console.terminal() && !quiet ? new LineProgress(console) : Progress.SILENT;
    }

    @Override
    public void at(String what, int done, int total) {
        if (total > 1) {
            String line = (done + 1) + " of " + total + "  " + what;
            String shown = line.length() > WIDTH ? line.substring(0, WIDTH) : line + " ".repeat(WIDTH - line.length());
            console.err().print("\r" + shown + (done + 1 == total ? "\r" + " ".repeat(WIDTH) + "\r" : ""));
            console.err().flush();
        }
    }

    @Override
    public boolean isCancelled() {
        return Thread.currentThread().isInterrupted();
    }
}
