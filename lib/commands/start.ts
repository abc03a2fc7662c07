/** `npm start`: builds where the sources are newer than the build, prepares the store and serves the app. */
import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { constants } from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { closeStore, openStore } from "@/lib/store/open-store";
import { storeFile } from "@/lib/store/store-file";
import { buildIsOld } from "./build-age";
import { ADDRESS, answers, chosenPort, mustBeFree } from "./port";
import { Refusal, runCommand } from "./refusal";
import { isSupportedNode } from "./supported-node";

const PROJECT = path.resolve(import.meta.dirname, "../..");

async function start(given: readonly string[]): Promise<string> {
  if (given.length > 0)
    throw new Refusal(["npm start takes no arguments; PORT=3001 npm start serves on another port."]);
  mustBeSupportedNode();
  const port = chosenPort(process.env.PORT);
  await mustBeFree(port);
  if (buildIsOld(PROJECT)) {
    process.stdout.write("Building Stillroom: the sources are newer than the build. This takes about a minute.\n");
    await mustEndWell(runNext(["build"]), "The build failed; what it said stands above.");
  }
  const { migration } = await openStore(storeFile());
  await closeStore(storeFile());
  if (migration.keptAs !== null)
    process.stdout.write(`The store was updated; as it was, it is kept in ${migration.keptAs}.\n`);
  const server = runNext(["start", "--hostname", ADDRESS, "--port", String(port)]);
  void announce(server, port);
  await mustEndWell(server, "Stillroom stopped; what it said stands above.", foldTogether);
  return "";
}

function mustBeSupportedNode(): void {
  const { engines } = JSON.parse(readFileSync(path.join(PROJECT, "package.json"), "utf8")) as {
    engines: { node: string };
  };
  if (isSupportedNode(process.versions.node, engines.node)) return;
  throw new Refusal([
    `Stillroom needs Node ${engines.node}; this is Node ${process.versions.node}. Install one of those.`,
  ]);
}

/** Opened and closed once more, the store stands whole in its one file, so that a copy of that file is a copy of all. */
async function foldTogether(): Promise<void> {
  await openStore(storeFile());
  await closeStore(storeFile());
}

function runNext(nextArguments: readonly string[]): ChildProcess {
  const next = createRequire(import.meta.url).resolve("next/dist/bin/next");
  const child = spawn(process.execPath, [next, ...nextArguments], {
    cwd: PROJECT,
    // What the server prints of itself would say the address a second time.
    stdio: ["inherit", nextArguments[0] === "start" ? "ignore" : "inherit", "inherit"],
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", NODE_ENV: "production", STILLROOM_STORE: storeFile() },
  });
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    process.on(signal, () => void child.kill(signal));
  }
  return child;
}

const nothing = (): Promise<void> => Promise.resolve();

/** Waits for a child. It ends well by itself, and by a signal that was meant for both. */
function mustEndWell(child: ChildProcess, otherwise: string, atEnd: () => Promise<void> = nothing): Promise<void> {
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("exit", (code, signal) => {
      void atEnd().then(() => {
        if (signal !== null) process.exit(128 + constants.signals[signal]);
        if (code === 0 || code === 130 || code === 143) resolve();
        else reject(new Refusal([otherwise]));
      }, reject);
    });
  });
}

async function announce(server: ChildProcess, port: number): Promise<void> {
  while (server.exitCode === null && !(await answers(port))) await pause(50);
  if (server.exitCode === null) {
    process.stdout.write(
      `Stillroom is on http://${ADDRESS}:${String(port)} (Ctrl+C stops it). The store is ${storeFile()}.\n`,
    );
  }
}

await runCommand(start);
