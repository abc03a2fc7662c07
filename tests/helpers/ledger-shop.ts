/** A small workshop with a ledger in a store, and forms for the operations on it. */
import type { Books } from "@/lib/domain/desk";
import { finishedLot, type LotName, materialLot } from "@/lib/domain/ledger/posting";
import { type PartsPerMillion, quantity, type Units } from "@/lib/domain/quantity";
import type { CountAsked } from "@/lib/operations/count-shelf";
import type { HoldLot } from "@/lib/operations/hold-lot";
import type { MakeRun } from "@/lib/operations/make-run";
import type { LineReceived, ReceiveDelivery } from "@/lib/operations/receive-delivery";
import { readBooks } from "@/lib/store/books";
import {
  day,
  decimal,
  formula,
  g,
  inGrams,
  lot,
  material,
  money,
  order,
  pieces,
  product,
  run,
  stock,
  supplier,
} from "./notation";
import { booksOf } from "./store-desk";
import { bareWorkshop } from "./store-workshop";

export const TODAY = day("2026-11-25");
export const units = (count: number): Units => quantity(BigInt(count));

/** r and s need 1000 g of oil and 10 jars each. Of oil there are 600 g for 6.00 that expire first, and 900 g for 18.00. */
export const shop = (): Books =>
  booksOf(
    bareWorkshop("Shop", {
      settings: { ...bareWorkshop("").settings, name: "Shop", labourPerHour: money("12"), overheadPerHour: money("6") },
      suppliers: [supplier("s")],
      materials: [material("oil"), material("jar", { kind: "packaging", measure: "count" })],
      lots: [
        lot("late", "oil", "900", "18", { expires: day("2027-06-01") }),
        lot("soon", "oil", "600", "6", { expires: day("2026-12-01") }),
        lot("jars", "jar", "0", "24", { remaining: quantity(48n) }),
      ],
      orders: [
        order("po", "2026-11-27", [
          { material: "oil", quantity: g("1000"), cost: money("20"), expires: null },
          { material: "jar", quantity: stock(24n), cost: money("12"), expires: null },
        ]),
      ],
      formulas: [formula("f", { oil: "100" })],
      products: [
        product("p", "f", {
          packaging: [{ material: "jar", amount: pieces(1), spoilage: quantity<PartsPerMillion>(0n) }],
          labourMinutesPerRun: decimal("30"),
        }),
      ],
      runs: [run("r", "p", "2026-11-24", 10), run("s", "p", "2026-11-26", 10)],
    }),
  );

const asked = { day: TODAY, realToday: TODAY };

export const making = (id: "r" | "s", given: Partial<MakeRun> = {}): MakeRun => ({
  ...asked,
  key: `made ${id}`,
  run: { id, product: "p", date: day(id === "r" ? "2026-11-24" : "2026-11-26"), units: units(10) },
  unitsMade: units(10),
  finishedLot: { id: `F-${id}`, bestBefore: day("2027-11-25") },
  draws: null,
  outOfDate: "refuse",
  minutes: null,
  note: null,
  ...given,
});

export const delivery = (
  lines: readonly Partial<LineReceived>[],
  given: Partial<ReceiveDelivery> = {},
): ReceiveDelivery => ({
  ...asked,
  key: "delivery",
  note: null,
  extras: [],
  supplier: null,
  lines: lines.map((line, at) => ({
    lot: `D${String(at + 1)}`,
    material: "oil",
    expires: null,
    quantity: g("1000"),
    paid: money("20"),
    packs: quantity(1n),
    weight: null,
    order: null,
    offer: null,
    ...line,
  })),
  ...given,
});

export const moving = (lots: Readonly<Record<string, bigint>>, given: Partial<HoldLot> = {}): HoldLot => ({
  ...asked,
  key: `move ${Object.keys(lots).join(" ")}`,
  reason: null,
  lines: Object.entries(lots).map(([id, amount]) => ({ lot: named(id), quantity: amount })),
  ...given,
});

/** `{ late: ["900", "890"] }`: expected and counted, in grams. */
export const counting = (
  lots: Readonly<Record<string, readonly [string, string]>>,
  given: Partial<CountAsked> = {},
): CountAsked => ({
  ...asked,
  key: "count",
  reason: "monthly count",
  lines: Object.entries(lots).map(([id, [expected, counted]]) => ({
    lot: named(id),
    expected: g(expected),
    counted: g(counted),
  })),
  ...given,
});

export const named = (id: string): LotName => (id.startsWith("F-") ? finishedLot(id) : materialLot(id));

export const books = async (): Promise<Books> => {
  const found = await readBooks();
  if (!found) throw new Error("the store holds no workshop");
  return found;
};

/** `late 900 for 18, …`; jars are counted as if they were µg. */
export const lots = async (): Promise<string> =>
  (await books()).workshop.lots
    .map(
      ({ id, material: of, remaining, value }) =>
        `${id} ${of === "jar" ? remaining.toString() : inGrams(remaining)} for ${inGrams(value)}`,
    )
    .join(", ");
export const finished = async (): Promise<string> =>
  (await books()).workshop.finished.map((each) => `${each.id} ${each.units.toString()}`).join(", ");
