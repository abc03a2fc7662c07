/** Starts the app as a maker does, on a free port and with a store of its own, and stops it again. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

export interface RunningApp {
  readonly url: string;
  readonly port: number;
  readonly store: string;
  readonly stop: () => Promise<void>;
}

/** What the store holds when the app starts: nothing, or the workshop of a file, by its path from the project's folder. */
export type Opened = "nothing" | `${string}.json`;

export const PROJECT = resolve(import.meta.dirname, "../..");
const START_WITHIN_MS = 240_000;

export async function startApp(opened: Opened): Promise<RunningApp> {
  const folder = mkdtempSync(join(tmpdir(), "stillroom-"));
  const store = join(folder, "stillroom.db");
  const port = await freePort();
  const environment = { ...process.env, PORT: String(port), STILLROOM_STORE: store, NEXT_TELEMETRY_DISABLED: "1" };
  if (opened !== "nothing") runScript("load", [opened], environment);

  const [program, npm] = npmProgram();
  const server = spawn(program, [...npm, "start"], {
    cwd: PROJECT,
    env: environment,
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const said: string[] = [];
  server.stdout.on("data", (text: Buffer) => said.push(text.toString()));
  server.stderr.on("data", (text: Buffer) => said.push(text.toString()));

  const stop = async () => {
    await stopTree(server);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  const url = `http://127.0.0.1:${String(port)}`;
  if (await answers(url, server)) return { url, port, store, stop };
  await stop();
  throw new Error(`npm start did not answer on ${url}. It said:\n${said.join("")}`);
}

/** Runs one of the project's own scripts to its end and gives back what it printed. Throws where it fails. */
export function runScript(name: string, args: readonly string[], environment: NodeJS.ProcessEnv): string {
  const [program, npm] = npmProgram();
  const ran = spawnSync(program, [...npm, "run", "--silent", name, "--", ...args], {
    cwd: PROJECT,
    env: environment,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (ran.status !== 0) throw new Error(`npm run ${name} failed: ${ran.stdout}${ran.stderr}`);
  return ran.stdout;
}

/** npm as a program and its first arguments; its script run by this Node where npm says where it lies. */
export function npmProgram(): readonly [string, readonly string[]] {
  const script = process.env.npm_execpath;
  return script?.endsWith(".js") ? [process.execPath, [script]] : ["npm", []];
}

/** A port that nothing listens on at this moment. */
export const freePort = (): Promise<number> =>
  new Promise((found, failed) => {
    const probe = createServer();
    probe.once("error", failed);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      const port = typeof address === "object" && address ? address.port : 0;
      probe.close(() => {
        found(port);
      });
    });
  });

async function answers(url: string, server: ChildProcess): Promise<boolean> {
  const giveUpAt = Date.now() + START_WITHIN_MS;
  while (Date.now() < giveUpAt && server.exitCode === null) {
    const answered = await fetch(url, { redirect: "manual" }).then(
      () => true,
      () => false,
    );
    if (answered) return true;
    await new Promise((wake) => setTimeout(wake, 50));
  }
  return false;
}

/** npm starts a shell that starts the server, so the whole group is told to stop. */
async function stopTree(server: ChildProcess): Promise<void> {
  if (server.pid === undefined || server.exitCode !== null) return;
  const ended = new Promise<void>((end) =>
    server.once("close", () => {
      end();
    }),
  );
  if (process.platform === "win32") spawnSync("taskkill", ["/pid", String(server.pid), "/T", "/F"]);
  else process.kill(-server.pid, "SIGTERM");
  const patience = setTimeout(() => {
    if (process.platform !== "win32" && server.pid !== undefined) process.kill(-server.pid, "SIGKILL");
  }, 5_000);
  await ended;
  clearTimeout(patience);
}
