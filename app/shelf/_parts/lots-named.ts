/** How the lots of postings are called and measured. */
import { type LotName } from "@/lib/domain/ledger/posting";
import type { Material, Workshop } from "@/lib/domain/workshop";
import { countShown, NO_BREAK, stockInFull, stockShown } from "@/lib/edge/figures";

export interface LotNamed {
  /** Of the material or product; null for a lot that no list shows any more. */
  readonly name: string | null;
  /** Below zero with its minus. */
  readonly amount: (amount: bigint) => string;
  /** With all its decimals. */
  readonly inFull: (amount: bigint) => string;
}

export type LotsNamed = (lot: LotName) => LotNamed;

export function lotsNamedIn({ lots, materials, finished, products }: Workshop): LotsNamed {
  const materialOfLot = new Map<string, Material | undefined>(
    lots.map(({ id, material }) => [id, materials.find((each) => each.id === material)]),
  );
  const productOfLot = new Map(finished.map(({ id, product }) => [id, products.find((each) => each.id === product)]));
  return ({ of, id }) => {
    if (of === "finished") {
      const units = (amount: bigint): string => `${countShown(amount)}${NO_BREAK}${amount === 1n ? "unit" : "units"}`;
      return { name: productOfLot.get(id)?.name ?? null, amount: units, inFull: units };
    }
    const material = materialOfLot.get(id);
    if (material === undefined) {
      const unknown = (): string => "not known";
      return { name: null, amount: unknown, inFull: unknown };
    }
    return {
      name: material.name,
      amount: (amount) => stockShown(amount, material.measure, "there"),
      inFull: (amount) => stockInFull(amount, material.measure),
    };
  };
}
