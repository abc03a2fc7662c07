/** The proven baskets of tests/outside/baskets, in the product's types. */
import { readdirSync, readFileSync } from "node:fs";
import type { Instance } from "../second/cheapest-basket";
import { problemOfInstance } from "./random-baskets";

export interface ProvenBasket {
  /** In cents; `freeFrom` and `minimum` 0 for none. */
  readonly suppliers: readonly { readonly shipping: number; readonly freeFrom: number; readonly minimum: number }[];
  readonly needs: readonly number[];
  /** Each tier is the packs from which its price holds for every pack. */
  readonly offers: readonly {
    readonly material: number;
    readonly supplier: number;
    readonly pack: number;
    readonly tiers: readonly (readonly [number, number])[];
  }[];
  readonly leastCost: number;
  readonly provenBy: readonly string[];
  /** What the lowest unit price of each material costs, where the maker does not look at shipping. */
  readonly lowestUnitPriceCost: number;
}

const FOLDER = new URL("../outside/baskets/", import.meta.url);
export const cents = (amount: number): bigint => BigInt(amount) * 10_000n;

function instanceOf({ suppliers, needs, offers }: ProvenBasket): Instance {
  return {
    materials: needs.map((need, at) => ({ id: `m${String(at)}`, need: BigInt(need) })),
    suppliers: suppliers.map(({ shipping, freeFrom, minimum }, at) => ({
      id: `s${String(at)}`,
      shipping: cents(shipping),
      freeFrom: freeFrom === 0 ? null : cents(freeFrom),
      minimum: minimum === 0 ? null : cents(minimum),
    })),
    offers: offers.map(({ material, supplier, pack, tiers }, at) => ({
      id: `o${String(at)}`,
      material: `m${String(material)}`,
      supplier: `s${String(supplier)}`,
      pack: BigInt(pack),
      price: cents(tiers[0]?.[1] ?? 0),
      breaks: tiers.slice(1).map(([packs, price]) => ({ packs: BigInt(packs), price: cents(price) })),
      minPacks: 1n,
      maxPacks: null,
    })),
  };
}

export const PROVEN_BASKETS = readdirSync(FOLDER).map((file) => {
  const proven = JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")) as ProvenBasket;
  return { file, proven, problem: problemOfInstance(instanceOf(proven)) };
});
