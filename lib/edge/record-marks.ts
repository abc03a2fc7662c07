/** What a list of the book marks in a record: what somebody should look at, or what is done with. */
import type { Day } from "@/lib/domain/calendar";
import { daysBetween } from "@/lib/domain/calendar";
import { costOfBatches } from "@/lib/domain/formula-book/cost-of-batches";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { severityOf } from "@/lib/domain/formula-book/findings";
import { driftOf } from "@/lib/domain/landed";
import { isUsable } from "@/lib/domain/lots";
import { keptToCustomers, keptToShops } from "@/lib/domain/pricing";
import { progressOf } from "@/lib/domain/orders";
import type { Workshop } from "@/lib/domain/workshop";
import { counted, inARow } from "./counted";
import { daysShown } from "./figures";
import { isOverdue } from "./order-words";
import type { SignName, SignTone } from "./sign-markup";

export interface Mark {
  /** Null where the row says it already and it is only counted. */
  readonly sign: SignName | null;
  readonly tone: SignTone;
  /** Beside the name, as `out of date`. */
  readonly says: string;
  /** In the finding of the list, of one and of several: `is out of date`, `are out of date`. */
  readonly counts: readonly [string, string];
  /** Where it stands among the rows; the others between. */
  readonly place?: "first" | "last";
}

/** The lists in which something can be marked. */
type Marked = "lots" | "materials" | "formulas" | "offers" | "orders" | "products" | "suppliers";

type Marking<L extends Marked> = (workshop: Workshop, today: Day) => (record: Workshop[L][number]) => Mark | null;

const MARKINGS: { readonly [L in Marked]: Marking<L> } = {
  lots: (_, today) => (lot) => {
    if (lot.remaining === 0n)
      return { sign: "dash", tone: "still", says: "used up", counts: ["is used up", "are used up"], place: "last" };
    if (!isUsable(lot, today))
      return {
        sign: "hourglass",
        tone: "wrong",
        says: "out of date",
        counts: ["is out of date", "are out of date"],
        place: "first",
      };
    return lot.expires === today
      ? { sign: "hourglass", tone: "open", says: "goes today", counts: ["goes today", "go today"], place: "first" }
      : null;
  },
  materials: ({ offers }) => {
    const offered = new Set(offers.map(({ material }) => material));
    return ({ id }) => (offered.has(id) ? null : onlyCounted("no offer", "has no offer", "have no offer"));
  },
  suppliers: ({ offers }) => {
    const selling = new Set(offers.map(({ supplier }) => supplier));
    return ({ id }) => (selling.has(id) ? null : onlyCounted("no offer", "has no offer", "have no offer"));
  },
  formulas: (workshop, today) => (formula) => {
    const checked = { ...workshop, today, step: workshop.settings.balanceStep.quantity, batch: null };
    return checksOf(formula, checked).some((finding) => severityOf(finding) === "error")
      ? { sign: "triangle", tone: "wrong", says: "has faults", counts: ["has faults", "have faults"] }
      : null;
  },
  offers: (_, today) => (offer) => {
    const drift = driftOf(offer, [], today);
    if (drift === null || drift.kind === "paid otherwise") return null;
    return drift.kind === "never confirmed"
      ? onlyCounted("never confirmed", "has a price that was never confirmed", "have prices that were never confirmed")
      : {
          sign: "triangle",
          tone: "open",
          says: `confirmed ${daysShown(drift.days)} ago`,
          counts: ["has an old price", "have old prices"],
        };
  },
  orders: (_, today) => (order) => {
    if (!isOverdue(order, today)) {
      const progress = progressOf(order);
      return progress === "received" || progress === "given up"
        ? { ...onlyCounted(progress, `is ${progress}`, `are ${progress}`), place: "last" }
        : null;
    }
    return {
      sign: "pennant",
      tone: "wrong",
      says: `${daysShown(daysBetween(order.due, today))} late`,
      counts: ["is late", "are late"],
      place: "first",
    };
  },
  products: (workshop, today) => (product) => {
    const { priceToShops, priceToCustomers, usualRun } = product;
    if (priceToShops === null && priceToCustomers === null)
      return onlyCounted("no price", "has no price", "have no price");
    const cost = costOfBatches(workshop, today, product, [usualRun], "replacement");
    if (cost === null)
      return onlyCounted("cost not known", "has a cost that is not known", "have costs that are not known");
    const kept = [
      ...(priceToShops === null ? [] : [keptToShops(priceToShops, cost)]),
      ...(priceToCustomers === null ? [] : [keptToCustomers(priceToCustomers, cost, termsOf(workshop))]),
    ];
    return kept.some((each) => each.kept.over < 0n)
      ? {
          sign: "triangle",
          tone: "wrong",
          says: "sold below cost",
          counts: ["is sold below cost", "are sold below cost"],
        }
      : null;
  },
};

const termsOf = ({ settings }: Workshop) => settings;

const onlyCounted = (says: string, one: string, many: string): Mark => ({
  sign: null,
  tone: "still",
  says,
  counts: [one, many],
});

/** What is marked in the records of a list, by their ids. */
export function marksIn(list: keyof Workshop, workshop: Workshop, today: Day): ReadonlyMap<string, Mark> {
  if (!Object.hasOwn(MARKINGS, list)) return new Map();
  const marking = (MARKINGS[list as Marked] as Marking<Marked>)(workshop, today);
  return new Map(
    workshop[list as Marked].flatMap((record) => {
      const mark = marking(record);
      return mark === null ? [] : [[record.id, mark] as const];
    }),
  );
}

/** `one is out of date, one goes today and two are used up`; empty where nothing is marked. */
export function marksCounted(marks: readonly Mark[]): string {
  const byCount = new Map<string, number>();
  for (const { counts } of marks) byCount.set(counts.join("|"), (byCount.get(counts.join("|")) ?? 0) + 1);
  const inOrder = marks.toSorted((a, b) => RANKS[a.tone] - RANKS[b.tone]).map(({ counts }) => counts);
  return inARow(
    [...new Map(inOrder.map((counts) => [counts.join("|"), counts])).entries()].map(([key, counts]) =>
      counted(byCount.get(key) ?? 0, ...counts),
    ),
  );
}

const RANKS: Readonly<Record<SignTone, number>> = { wrong: 0, open: 1, still: 2 };
