package tallywell.method;

import java.util.OptionalDouble;

/**
 * What the method accepts; an absent limit is not assessed.
 *
 * @param deltaALeast smallest net ΔA of a sample
 * @param deltaAMost largest net ΔA of a sample
 * @param absorbanceMost largest reading used
 * @param blankDeltaAMost largest size of the mean ΔA of a group of blanks
 * @param replicateCv largest coefficient of variation of the values of one sample, as a fraction
 * @param replicateRange largest range of the net ΔA of one sample; replicates pass if either limit holds
 * @param controlLeast smallest recovery of a control, as a fraction
 * @param controlMost largest recovery of a control, as a fraction
 * @param spikeLeast smallest recovery of a spike, as a fraction
 * @param spikeMost largest recovery of a spike, as a fraction
 * @param spikeScope which samples the recovery of a spike speaks for
 * @param batch further limits for the batch
 */
public record Limits(
        OptionalDouble deltaALeast,
        OptionalDouble deltaAMost,
        OptionalDouble absorbanceMost,
        OptionalDouble blankDeltaAMost,
        OptionalDouble replicateCv,
        OptionalDouble replicateRange,
        OptionalDouble controlLeast,
        OptionalDouble controlMost,
        OptionalDouble spikeLeast,
        OptionalDouble spikeMost,
        SpikeScope spikeScope,
        BatchLimits batch) {}
