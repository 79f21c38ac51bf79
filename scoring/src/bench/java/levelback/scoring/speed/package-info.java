/**
 * Speed, measured by JMH, each bench beside the R script that does the same job on the same input in the same run.
 *
 * <p>To add one: a class {@code ThingBench} here that writes its input with {@link BenchInput#write} in a
 * {@code @Setup}, and (where R has the method) {@code src/bench/R/ThingBench.R}, which takes the input's path as its
 * only argument and prints {@code seconds X} (the fit alone: neither R's start nor reading the file) and, so that both are seen to do
 * the same job, {@code answer X Y …} for the figures the bench gives to {@link BenchInput#answer}.
 */
@NullMarked
package levelback.scoring.speed;

import org.jspecify.annotations.NullMarked;
