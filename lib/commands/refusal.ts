/** What a command cannot do, in lines for the person at the terminal. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  constructor(readonly lines: readonly string[]) {
    super(lines.join("\n"));
  }
}

/**
 * Runs a command: what it returns goes to standard output, and exit status is 0. What it cannot do goes to standard
 * error, one line a fault and never a stack trace, nothing to standard output, and exit status is 1.
 */
export async function runCommand(command: (given: readonly string[]) => Promise<string>): Promise<void> {
  // Who reads the output may stop early (`… | head`); that is no fault.
  process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
    if (fault.code !== "EPIPE") throw fault;
  });
  try {
    process.stdout.write(await command(process.argv.slice(2)));
  } catch (fault) {
    process.stderr.write(`${linesOf(fault).join("\n")}\n`);
    process.exitCode = 1;
  }
}

function linesOf(fault: unknown): readonly string[] {
  if (fault instanceof Refusal) return fault.lines;
  if (!(fault instanceof Error)) return [String(fault)];
  const [said = ""] = fault.message.split("\n", 1);
  // A store that cannot be opened says so in a sentence; anything else is a fault of the program.
  return [fault.name === "StoreUnusable" ? said : `Stillroom itself failed: ${said}`];
}
