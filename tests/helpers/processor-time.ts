/** How long work took the processor: what else the machine does meanwhile is not counted, as a clock would count it. */

/** Milliseconds of this process's own processor time, its collection of garbage among them. */
export function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
