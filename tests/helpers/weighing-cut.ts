/** Two devices write a batch down while the network is cut and the app is killed under them; then what is there is looked at. */
import { randomUUID } from "node:crypto";
import { drawnByLot } from "@/lib/domain/bench/weights";
import { batchOf, materialLot } from "@/lib/domain/ledger/posting";
import { latest, movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { notesAddress } from "@/lib/edge/bench-address";
import { ofAsText } from "@/lib/edge/forms/bench-note";
import { startBatch } from "@/lib/operations/start-batch";
import { instantOf } from "@/lib/operations/write-down";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { closeStore } from "@/lib/store/open-store";
import { type RunningApp, serveToKill } from "../journeys/server";
import { shop, TODAY } from "./ledger-shop";
import { day } from "./notation";
import { chance, type Dice } from "./random-dice";
import { openBooks } from "./store-desk";
import { soundness } from "./store-soundness";

const RUN = { id: "r", product: "p", date: day("2026-11-24"), units: quantity<never>(10n) };
const MOST_NOTES = 1_000_000n;
const GRAM = 1_000_000n;
const LONGEST_MILLISECONDS = 1_500;
const CUT_WITHIN_MILLISECONDS = 12;

/** What a device still has to say: it goes on saying it until it is told that it is written. */
interface Device {
  readonly name: string;
  readonly written: string[];
  waiting: { readonly key: string; readonly fields: Readonly<Record<string, string>> } | null;
  cuts: number;
}

export interface WeighingCut {
  readonly kills: number;
  readonly cuts: number;
  readonly written: number;
  readonly posted: number;
}

/**
 * Lets two devices write notes down through the running app, cuts every third request off at a random instant and kills
 * the app at a random instant of each round.
 * @throws where a note is lost, there twice, or there without its posting
 */
export async function cutWeighing(store: string, rounds: number, dice: Dice): Promise<WeighingCut> {
  await openBooks(stocked());
  await startBatch({
    run: RUN,
    code: "B-1",
    at: instantOf(new Date()),
    who: "R. Weaver",
    despite: null,
    realToday: TODAY,
  });
  const devices = ["tablet", "phone"].map((name): Device => ({ name, written: [], waiting: null, cuts: 0 }));
  for (let round = 1; round <= rounds; round += 1) {
    await closeStore(store);
    const app = await serveToKill(store);
    const until = { isOver: false };
    const writing = devices.map((device) => write(app, device, dice, until));
    await new Promise((wake) => setTimeout(wake, dice.whole(200, LONGEST_MILLISECONDS)));
    until.isOver = true;
    await app.stop();
    await Promise.all(writing);
    await inspect(store, devices);
  }
  await closeStore(store);
  const app = await serveToKill(store);
  for (const device of devices) while (device.waiting !== null) await send(app.url, device, null);
  await app.stop();
  const posted = await inspect(store, devices);
  const sum = (of: (device: Device) => number): number => devices.reduce((all, device) => all + of(device), 0);
  return { kills: rounds, cuts: sum(({ cuts }) => cuts), written: sum(({ written }) => written.length), posted };
}

/** The shop with as much oil as anybody can pour. */
function stocked() {
  const { workshop, desk } = shop();
  const lots = workshop.lots.map((lot) =>
    lot.id === "late"
      ? { ...lot, remaining: quantity<Stock>(MOST_NOTES * GRAM), value: quantity<MicroUnits>(1n) }
      : lot,
  );
  return { workshop: { ...workshop, lots }, desk };
}

async function write(app: RunningApp, device: Device, dice: Dice, until: { readonly isOver: boolean }): Promise<void> {
  while (!until.isOver) await send(app.url, device, chance(dice, 33) ? dice.whole(0, CUT_WITHIN_MILLISECONDS) : null);
}

/** @param cutAfter  milliseconds until the network is gone under the request; null where it stays */
async function send(url: string, device: Device, cutAfter: number | null): Promise<void> {
  device.waiting ??= nextNote(device);
  const { key, fields } = device.waiting;
  const network = new AbortController();
  const timer = cutAfter === null ? undefined : setTimeout(() => network.abort(), cutAfter);
  try {
    const answer = await fetch(`${url}${notesAddress(RUN.id)}`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(fields),
      signal: network.signal,
    });
    const told = (await answer.json()) as { readonly kind: string };
    if (told.kind !== "written") throw new Error(`${device.name}: ${JSON.stringify(told)}`);
    device.written.push(key);
    device.waiting = null;
  } catch (fault) {
    // Cut off, or nobody there any more: the device does not know, and says it again.
    if (fault instanceof Error && fault.message.startsWith(device.name)) throw fault;
    if (network.signal.aborted) device.cuts += 1;
  } finally {
    clearTimeout(timer);
  }
}

/** One device weighs the line in ever more parts, the other adds beside the formula and reads a pH now and then. */
function nextNote({ name, written }: Device): NonNullable<Device["waiting"]> {
  const key = randomUUID();
  const shared = { batch: RUN.id, key, who: name, at: instantOf(new Date()) };
  if (name === "tablet") {
    const weight = { kind: "weighed", line: "1", lot: "late", weight: "1", more: "yes", why: "in parts" };
    return { key, fields: { ...shared, ...weight, seen: JSON.stringify(written) } };
  }
  const isAcidity = written.length % 3 === 0;
  const said = isAcidity
    ? { kind: "acidity", ph: "5.2" }
    : { kind: "added", of: ofAsText("oil", "late"), weight: "1", why: "made up" };
  return { key, fields: { ...shared, ...said } };
}

/** @returns how many notes have a posting */
async function inspect(store: string, devices: readonly Device[]): Promise<number> {
  const sound = soundness(store);
  if (sound.join() !== "ok") throw new Error(`the store is not sound: ${sound.join("; ")}`);
  const books = await readBooksWithPast();
  const batch = books?.desk.batches[0];
  if (!books || !batch) throw new Error("the store holds no batch");
  const there = batch.notes.map(({ key }) => key);
  if (new Set(there).size !== there.length) throw new Error("a note is there twice");
  const told = new Set(devices.flatMap(({ written }) => written));
  const lost = [...told].filter((key) => !there.includes(key));
  if (lost.length > 0) throw new Error(`written and lost: ${lost.join(", ")}`);
  const maybe = new Set(devices.flatMap(({ waiting }) => (waiting === null ? [] : [waiting.key])));
  const strange = there.filter((key) => !told.has(key) && !maybe.has(key));
  if (strange.length > 0) throw new Error(`there and never said: ${strange.join(", ")}`);
  const standing = standingAfter(movesOf(books.past.postings));
  for (const [lot, drawn] of drawnByLot(batch)) {
    const held = latest(standing, materialLot(lot), batchOf(RUN.id)).quantity;
    if (held !== drawn) throw new Error(`${lot}: ${held.toString()} in the batch, ${drawn.toString()} written down`);
  }
  return batch.notes.filter(({ kind }) => kind !== "acidity").length;
}
