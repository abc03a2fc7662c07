/** Starts the app as a maker does, on a free port and with a store of its own, and stops it again. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { basename, dirname, join, resolve } from "node:path";

export interface RunningApp {
  readonly url: string;
  readonly port: number;
  readonly store: string;
  /** Of the process that was started; the server's own unless it was started as a maker does. */
  readonly pid: number | undefined;
  readonly stop: () => Promise<void>;
}

/** What the store holds when the app starts: nothing, or the workshop of a file, by its path from the project's folder. */
export type Opened = "nothing" | `${string}.json`;

export const PROJECT = resolve(import.meta.dirname, "../..");
const START_WITHIN_MS = 240_000;

/** As a maker does: by the command of the README, from a build that is as new as the sources. */
export async function startApp(opened: Opened): Promise<RunningApp> {
  const [program, npm] = npmProgram();
  return await serve(storeFor(opened), program, [...npm, "start"], "SIGTERM");
}

/** The same server on a store of its own, without the command around it: for the many journeys that change what they find. */
export async function serveStore(opened: Opened): Promise<RunningApp> {
  return await serve(copyOfStore(opened), process.execPath, builtServer(), "SIGKILL");
}

/**
 * The same server on a store that is there already, and that stays when the server is killed, at once and without a word.
 * On the port of the one before where a page that is still open is to find it again.
 */
export async function serveToKill(store: string, port?: number): Promise<RunningApp> {
  return await serve(store, process.execPath, builtServer(), "SIGKILL", { afterwards: "keep", port });
}

/** Another app than this one, from a build of its own, with nothing to store. */
export async function serveFolder(folder: string): Promise<RunningApp> {
  return await serve(storeFor("nothing"), process.execPath, builtServer(), "SIGKILL", { cwd: folder });
}

/** The server of the build that is there, as arguments of Node; `built.ts` brings it up to the sources before. */
function builtServer(): readonly string[] {
  return [createRequire(import.meta.url).resolve("next/dist/bin/next"), "start", "--hostname", "127.0.0.1"];
}

interface Serving {
  /** What becomes of the store when the server is stopped. */
  readonly afterwards?: "remove" | "keep";
  readonly cwd?: string;
  readonly port?: number | undefined;
}

async function serve(
  store: string,
  program: string,
  args: readonly string[],
  end: "SIGTERM" | "SIGKILL",
  { afterwards = "remove", cwd = PROJECT, port: asked }: Serving = {},
): Promise<RunningApp> {
  const port = asked ?? (await freePort());
  const environment = environmentOf(store, { PORT: String(port), NODE_ENV: "production" });
  const server = spawn(program, args, {
    cwd,
    env: environment,
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const said: string[] = [];
  server.stdout.on("data", (text: Buffer) => said.push(text.toString()));
  server.stderr.on("data", (text: Buffer) => said.push(text.toString()));

  const stop = async () => {
    await stopTree(server, end);
    if (afterwards === "remove") rmSync(dirname(store), { recursive: true, force: true, maxRetries: 5 });
  };
  const url = `http://127.0.0.1:${String(port)}`;
  if (await answers(url, server)) return { url, port, store, pid: server.pid, stop };
  await stop();
  throw new Error(`${program} ${args.join(" ")} did not answer on ${url}. It said:\n${said.join("")}`);
}

const environmentOf = (store: string, more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv => ({
  ...process.env,
  STILLROOM_STORE: store,
  NEXT_TELEMETRY_DISABLED: "1",
  ...more,
});

/** A store in a folder of its own, filled by the command that a maker fills it with. */
function storeFor(opened: Opened): string {
  const store = join(mkdtempSync(join(tmpdir(), "stillroom-")), "stillroom.db");
  if (opened !== "nothing") runScript("load", [opened], environmentOf(store));
  return store;
}

const filledStores = new Map<Opened, string>();

/** A store that was filled once for all the journeys that begin with it; they change copies of it alone. */
export function filledStore(opened: Opened): string {
  const filled = filledStores.get(opened) ?? storeFor(opened);
  filledStores.set(opened, filled);
  return filled;
}

function copyOfStore(opened: Opened): string {
  if (opened === "nothing") return storeFor(opened);
  const filled = filledStore(opened);
  const folder = mkdtempSync(join(tmpdir(), "stillroom-"));
  cpSync(dirname(filled), folder, { recursive: true });
  return join(folder, basename(filled));
}

/** Takes away what journeys were given copies of. */
export function forgetFilledStores(): void {
  for (const store of filledStores.values()) rmSync(dirname(store), { recursive: true, force: true });
  filledStores.clear();
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
async function stopTree(server: ChildProcess, signal: "SIGTERM" | "SIGKILL"): Promise<void> {
  // One that a signal ended has no exit code.
  if (server.pid === undefined || server.exitCode !== null || server.signalCode !== null) return;
  const ended = new Promise<void>((end) =>
    server.once("close", () => {
      end();
    }),
  );
  if (process.platform === "win32") spawnSync("taskkill", ["/pid", String(server.pid), "/T", "/F"]);
  else process.kill(-server.pid, signal);
  const patience = setTimeout(() => {
    if (process.platform !== "win32" && server.pid !== undefined) process.kill(-server.pid, "SIGKILL");
  }, 5_000);
  await ended;
  clearTimeout(patience);
}
