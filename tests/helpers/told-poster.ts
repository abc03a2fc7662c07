/**
 * A process that posts into its store, one after the other, and tells of each once it is acknowledged:
 * `node … told-poster.ts POSTINGS`. Deliveries, holds, releases and late costs by turns: each is one change of the store.
 */
import { materialLot } from "@/lib/domain/ledger/posting";
import { quantity } from "@/lib/domain/quantity";
import { holdLot } from "@/lib/operations/hold-lot";
import { postLateCost } from "@/lib/operations/late-cost";
import { receive } from "@/lib/operations/receive-delivery";
import { releaseLot } from "@/lib/operations/release-lot";
import { delivery, moving } from "./ledger-shop";
import { TOLD } from "./syncs-counted";

const postings = Number(process.argv[2]);

const deeds: readonly ((key: string) => Promise<{ readonly kind: string }>)[] = [
  (key) => receive(delivery([{ lot: key }], { key })),
  (key) => holdLot(moving({ late: 1n }, { key })),
  (key) => releaseLot(moving({ late: 1n }, { key })),
  (key) =>
    postLateCost({
      ...moving({}, { key }),
      reason: "a late bill",
      lines: [{ lot: materialLot("late"), amount: quantity<never>(1n) }],
    }),
];

for (let at = 0; at < postings; at += 1) {
  const answer = await deeds[at % deeds.length]?.(`posting ${String(at)}`);
  if (answer?.kind !== "posted") throw new Error(`a posting was answered with "${String(answer?.kind)}"`);
  process.stdout.write(`${TOLD}${String(at)}\n`);
}
