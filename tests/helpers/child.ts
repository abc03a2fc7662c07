/** Programs of the project run as processes of their own, as npm runs them. */
import { type ChildProcess, spawn } from "node:child_process";
import path from "node:path";

const ROOT = path.resolve(import.meta.dirname, "../..");

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Starts a TypeScript program of the project. */
export const startChild = (
  program: string,
  given: readonly string[] = [],
  environment: Readonly<Record<string, string>> = {},
): ChildProcess =>
  spawn(process.execPath, ["--import", "tsx", program, ...given], {
    cwd: ROOT,
    env: { ...process.env, ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });

/** Runs one to its end. */
export function runChild(...given: Parameters<typeof startChild>): Promise<Ended> {
  const child = startChild(...given);
  const [out, err]: [string[], string[]] = [[], []];
  child.stdout?.on("data", (text: Buffer) => out.push(text.toString()));
  child.stderr?.on("data", (text: Buffer) => err.push(text.toString()));
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("close", (code) => {
      resolve({ code, out: out.join(""), err: err.join("") });
    });
  });
}
