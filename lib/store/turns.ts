/** Lets one piece of work after another have its turn, in the order in which they asked. */
export interface Turns {
  /** Waits for the turn; the one who gets it calls what comes back to end it. */
  take(): Promise<() => void>;
  /** Does the work in a turn of its own. */
  during<T>(work: () => Promise<T>): Promise<T>;
}

export function turns(): Turns {
  let last: Promise<void> = Promise.resolve();

  function take(): Promise<() => void> {
    let end: () => void = () => undefined;
    const ended = new Promise<void>((resolve) => (end = resolve));
    const begins = last.then(() => end);
    last = last.then(() => ended);
    return begins;
  }

  async function during<T>(work: () => Promise<T>): Promise<T> {
    const end = await take();
    try {
      return await work();
    } finally {
      end();
    }
  }

  return { take, during };
}
