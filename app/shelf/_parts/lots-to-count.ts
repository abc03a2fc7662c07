/** The lots that a count may name, with what is written down of each at the end of its day. */
import type { Day } from "@/lib/domain/calendar";
import { finishedLot, type LotName, lotKey, materialLot, type PlaceKind } from "@/lib/domain/ledger/posting";
import type { Workshop } from "@/lib/domain/workshop";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";

export interface CountedLot {
  readonly of: LotName["of"];
  readonly lot: string;
  readonly name: string;
  /** Weighed with its vessel, counted in pieces, or units of a product. */
  readonly kind: "weighed" | "counted" | "units";
  readonly bestBefore: string;
  /** Since when it is out of date, as the sign says it; empty where it is not. */
  readonly gone: string;
  /** What is on hold besides; empty where nothing is. */
  readonly held: string;
  /** What is written down, as it is shown and as the form sends it. */
  readonly there: string;
  readonly expected: string;
  readonly unit: string;
}

interface Stood {
  readonly lot: LotName;
  readonly place: { readonly kind: PlaceKind };
  readonly quantity: bigint;
}

interface Listed {
  readonly lot: LotName;
  readonly item: string;
  readonly name: string;
  readonly since: Day;
  readonly expires: Day | null;
  readonly shown: (quantity: bigint) => string;
  readonly unit: string;
  readonly kind: CountedLot["kind"];
}

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

/**
 * By name, then by lot.
 * @param stood  on the shelf, in stock and on hold at the end of the day
 * @param counts  which of them are asked for: the material or product, and what is written down
 */
export function lotsToCount(
  workshop: Workshop,
  stood: readonly Stood[],
  day: Day,
  counts: (lot: Pick<Listed, "lot" | "item">, there: bigint) => boolean,
): readonly CountedLot[] {
  const amounts = new Map(stood.map(({ lot, place, quantity }) => [`${lotKey(lot)} ${place.kind}`, quantity]));
  const at = (lot: LotName, place: PlaceKind): bigint => amounts.get(`${lotKey(lot)} ${place}`) ?? 0n;
  return listed(workshop)
    .filter(({ since }) => since <= day)
    .map((each) => ({ ...each, there: at(each.lot, each.lot.of === "material" ? "shelf" : "finished") }))
    .filter((each) => counts(each, each.there))
    .map(({ lot, name, expires, shown, unit, kind, there }) => {
      const held = at(lot, "hold");
      return {
        of: lot.of,
        lot: lot.id,
        name,
        kind,
        ...lastDayWords(lot, expires, day),
        held: held === 0n ? "" : `${shown(held)} more is on hold and not counted here`,
        there: shown(there),
        expected: there.toString(),
        unit,
      };
    })
    .sort((a, b) => IN_ORDER.compare(a.name, b.name) || IN_ORDER.compare(a.lot, b.lot));
}

function lastDayWords(lot: LotName, expires: Day | null, day: Day): Pick<CountedLot, "bestBefore" | "gone"> {
  if (expires === null) return { bestBefore: "", gone: "" };
  const last = dayShown(expires, day, { weekday: false, year: true });
  if (expires < day) return { bestBefore: "", gone: `out of date since ${last}` };
  return { bestBefore: `${lot.of === "material" ? "last day of use" : "best before"} ${last}`, gone: "" };
}

function listed({ lots, materials, finished, products }: Workshop): readonly Listed[] {
  const materialById = new Map(materials.map((each) => [each.id, each]));
  const productById = new Map(products.map((each) => [each.id, each]));
  return [
    ...lots.flatMap(({ id, material, received, expires }): readonly Listed[] => {
      const of = materialById.get(material);
      if (of === undefined) return [];
      const shown = (quantity: bigint): string => stockInFull(quantity, of.measure);
      const [unit, kind] = of.measure === "mass" ? (["g", "weighed"] as const) : (["pieces", "counted"] as const);
      return [{ lot: materialLot(id), item: material, name: of.name, since: received, expires, shown, unit, kind }];
    }),
    ...finished.flatMap(({ id, product, made, bestBefore }): readonly Listed[] => {
      const name = productById.get(product)?.name;
      const of = { lot: finishedLot(id), item: product, since: made, expires: bestBefore };
      return name === undefined ? [] : [{ ...of, name, shown: unitsInWords, unit: "units", kind: "units" }];
    }),
  ];
}
