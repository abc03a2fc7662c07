/** A second process at the same store: adds one to the first lot so many times, reading and then writing. */
import { addOne } from "./store-sums";

const times = Number(process.argv[2]);
for (let count = 0; count < times; count += 1) await addOne();
