package tallywell.assess;

import tallywell.workup.Result;

/**
 * A result with what to do about it.
 *
 * @param result with all its flags
 * @param verdict whether it can stand
 * @param advice what to do next
 */
public record Judgement(Result result, Verdict verdict, Advice advice) {}
