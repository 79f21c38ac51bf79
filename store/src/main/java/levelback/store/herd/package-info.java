/** Herds, cows and their numbers, people, visits, scores and tags. */
@NullMarked
package levelback.store.herd;

import org.jspecify.annotations.NullMarked;
