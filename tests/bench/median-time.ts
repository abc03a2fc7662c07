/** Five times, and the one in the middle: one slow run of a busy machine does not count. */
export const TIMES = 5;

export const milliseconds = (deed: () => unknown): number => {
  const began = performance.now();
  deed();
  return performance.now() - began;
};

export const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

export const medianTime = (deed: () => unknown): number =>
  median(Array.from({ length: TIMES }, () => milliseconds(deed)));

export async function medianTimeOf(deed: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    const began = performance.now();
    await deed();
    times.push(performance.now() - began);
  }
  return median(times);
}

/** A line of the printed table: what was timed, how long it took, and what there is to say about it. */
export const line = (what: string, time: number, remark = ""): string =>
  `${what.padEnd(58)}${time.toFixed(time < 10 ? 2 : 0).padStart(8)} ms${remark === "" ? "" : `   ${remark}`}`;
