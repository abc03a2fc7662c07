/** What the posting of a run that was made says: what it drew, what came of it, what was lost. @rule LEDGER-11, LEDGER-12 */
import { type Entry, negated, NO_VALUE, plusValue, type Posting, type Value } from "./posting";

export interface Drawn {
  readonly lot: string;
  readonly quantity: bigint;
  readonly value: Value;
}

export interface Making {
  /** Into the batch, by lot, in the order of the posting. */
  readonly draws: readonly Drawn[];
  /** Lost beside the batch, with what it was worth, by lot. */
  readonly spilt: readonly Drawn[];
  /** All that the batch cost: materials, labour and overhead. */
  readonly cost: Value;
  readonly finishedLot: string | null;
  readonly units: bigint;
  readonly finished: Value;
  /** Units that are missing from the plan, with what they cost. */
  readonly missing: bigint;
  readonly lost: Value;
}

/** @param posting  of the kind `made` */
export function makingIn({ entries }: Pick<Posting, "entries">): Making {
  const intoBatch = entries.filter(
    ({ place, lot, quantity }) => place.kind === "batch" && lot.of === "material" && quantity > 0n,
  );
  const cameOut = entries.filter(
    ({ place, lot, quantity }) => place.kind === "batch" && lot.of === "finished" && quantity < 0n,
  );
  const times = entries.filter(({ place }) => place.kind === "labour" || place.kind === "overhead");
  const atPlace = (kind: "finished" | "lost"): readonly Entry[] =>
    entries.filter(({ place, lot }) => place.kind === kind && lot.of === "finished");
  const [finished, lost] = [atPlace("finished"), atPlace("lost")];
  return {
    draws: intoBatch.map(({ lot, quantity, value }) => ({ lot: lot.id, quantity, value })),
    spilt: spiltIn(entries, intoBatch),
    cost: plusValue(valueOf(intoBatch), negated(valueOf(times))),
    finishedLot: cameOut[0]?.lot.id ?? null,
    units: quantityOf(finished),
    finished: valueOf(finished),
    missing: quantityOf(lost),
    lost: valueOf(lost),
  };
}

/** What left the shelf and did not go into the batch. */
function spiltIn(entries: readonly Entry[], intoBatch: readonly Entry[]): readonly Drawn[] {
  const left = entries.filter(({ place, lot }) => place.kind === "shelf" && lot.of === "material");
  return [...new Set(left.map(({ lot }) => lot.id))].flatMap((id) => {
    const own = [...left, ...intoBatch].filter(({ lot }) => lot.id === id);
    const quantity = -quantityOf(own);
    return quantity === 0n ? [] : [{ lot: id, quantity, value: negated(valueOf(own)) }];
  });
}

const quantityOf = (entries: readonly Entry[]): bigint => entries.reduce((sum, { quantity }) => sum + quantity, 0n);
const valueOf = (entries: readonly Entry[]): Value => entries.map(({ value }) => value).reduce(plusValue, NO_VALUE);
