/** A figure of the value of stock, lot by lot: the same places, and the same sum. @rule LEDGER-17 */
import { grouped } from "@/lib/domain/index-by-id";
import type { KeptBalance } from "./audit";
import { isNothing, lotKey, minusValue, NO_VALUE, placeKey, type PlaceKind, plusValue, type Value } from "./posting";
import { NOTHING } from "./standing";

/** The figures that the value of stock is made up of, and those that stand beside it. */
export const WORTH_PARTS = ["materials", "in progress", "finished", "on hold", "sold"] as const;
export type WorthPart = (typeof WORTH_PARTS)[number];

const STOCK: Readonly<Record<Exclude<WorthPart, "sold">, readonly PlaceKind[]>> = {
  materials: ["shelf", "hold"],
  "in progress": ["batch"],
  finished: ["finished", "hold"],
  "on hold": ["hold"],
};

/** The kinds of place in which a figure's lots stand. */
export const placesOfPart = (part: WorthPart): readonly PlaceKind[] => (part === "sold" ? ["sold"] : STOCK[part]);

/**
 * Of what stood in its places the lots that a figure counts: not those of which nothing stood, nor what stays in
 * batches without value once they are closed.
 * @rule LEDGER-17
 */
export function lotsOfPart(part: WorthPart, stood: readonly KeptBalance[]): readonly KeptBalance[] {
  const counts = countedBy(part, stood);
  return stood.filter((each) => counts(each) && (each.quantity !== 0n || !isNothing(each.value)));
}

function countedBy(part: WorthPart, stood: readonly KeptBalance[]): (each: KeptBalance) => boolean {
  switch (part) {
    case "materials":
      return ({ lot }) => lot.of === "material";
    case "finished":
      return ({ lot }) => lot.of === "finished";
    case "in progress": {
      const batches = grouped(stood, ({ place }) => placeKey(place));
      const open = new Map([...batches].map(([batch, lots]) => [batch, !isNothing(worthOf(lots))]));
      return ({ place }) => open.get(placeKey(place)) === true;
    }
    case "on hold":
    case "sold":
      return () => true;
  }
}

/** What came to each place between two days: what stood at the end of the last, less what stood before the first. */
export function stoodMore(last: readonly KeptBalance[], before: readonly KeptBalance[]): readonly KeptBalance[] {
  const cell = ({ lot, place }: KeptBalance): string => `${lotKey(lot)}\u0000${placeKey(place)}`;
  const stoodBefore = new Map(before.map((each) => [cell(each), each]));
  return last.map((each) => {
    const { quantity, value } = stoodBefore.get(cell(each)) ?? NOTHING;
    return { ...each, quantity: each.quantity - quantity, value: minusValue(each.value, value) };
  });
}

/** What lots are worth together. */
export const worthOf = (lots: readonly { readonly value: Value }[]): Value =>
  lots.map(({ value }) => value).reduce(plusValue, NO_VALUE);
