/** Three batches through the bench, and what they say of heel and process loss on the page of their product. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { YieldSection } from "@/app/book/_parts/yield-section";
import { yieldForPage } from "@/app/book/yield-for-page";
import { byId } from "@/lib/domain/index-by-id";
import { quantity } from "@/lib/domain/quantity";
import { startBatch } from "@/lib/operations/start-batch";
import { writeDown } from "@/lib/operations/write-down";
import { note, starting } from "../helpers/bench-shop";
import { books, shop, TODAY, units } from "../helpers/ledger-shop";
import { g, lot, run } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

/** Loss is 10 g and 5 % of what was weighed: of 1,000 g 60 g, of 2,000 g 110 g, of 3,000 g 160 g. */
const BATCHES = [
  { id: "a", planned: 10, weighed: "1000", filled: 9, left: "40" },
  { id: "b", planned: 20, weighed: "2000", filled: 18, left: "90" },
  { id: "c", planned: 30, weighed: "3000", filled: 28, left: "40" },
] as const;

async function makeAtTheBench({ id, planned, weighed, filled, left }: (typeof BATCHES)[number]): Promise<void> {
  const asked = { id, product: "p", date: TODAY, units: units(planned) };
  expect(await startBatch(starting({ run: asked, code: `B-${id}` }))).toMatchObject({ kind: "started" });
  const write = (
    written: ReturnType<typeof note>,
    draws: readonly { lot: string; quantity: bigint; spilt: bigint }[],
  ) => writeDown({ batch: id, note: written, seen: [], closing: { draws, minutes: null }, realToday: TODAY });
  const weight = note("weighed", `w ${id}`, { lot: "drum", net: quantity(g(weighed)) });
  expect(await write(weight, [])).toMatchObject({ kind: "posted" });
  const closed = note("closed", `c ${id}`, { units: units(filled), leftOver: quantity(g(left)) });
  const jars = [{ lot: "crate", quantity: BigInt(filled), spilt: 0n }];
  expect(await write(closed, jars)).toMatchObject({ kind: "posted" });
}

const offered = async (): Promise<string> => {
  const now = await books();
  const product = byId("product", now.workshop.products)("p");
  return renderToStaticMarkup(createElement(YieldSection, { product: "p", fit: await yieldForPage(now, product) }));
};

test("[YIELD-1] three batches that were closed at the bench offer their heel and process loss", async () => {
  const { workshop, desk } = shop();
  const runs = BATCHES.map(({ id, planned }) => run(id, "p", "2026-11-25", planned));
  const lots = [lot("drum", "oil", "9000", "90"), lot("crate", "jar", "0", "30", { remaining: quantity(60n) })];
  await openBooks({ workshop: { ...workshop, runs, lots, orders: [] }, desk });
  expect(await offered()).toContain("Once 3 batches are made, what is lost is told apart into heel and process loss.");
  for (const each of BATCHES) await makeAtTheBench(each);
  const page = await offered();
  expect(page).toContain('<input type="hidden" name="heel" value="10.0 g"/>');
  expect(page).toContain('<input type="hidden" name="processLoss" value="5.00"/>');
  expect(page).toContain("three batches");
});
