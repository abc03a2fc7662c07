/** What the posting of a run that was made says: what it drew, what came of it, what was lost. @rule LEDGER-11, LEDGER-12 */
import {
  type Entry,
  homeOf,
  type LotName,
  lotKey,
  negated,
  NO_VALUE,
  type PlaceKind,
  plusValue,
  type Posting,
  type Value,
} from "./posting";
import { cameOut } from "./standing-postings";

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
  /** What came out: finished units, or a lot of the material that the run makes. */
  readonly lot: LotName | null;
  /** Of that lot: units, or µg. */
  readonly units: bigint;
  readonly finished: Value;
  /** What is missing from the plan of it, with what it cost. */
  readonly missing: bigint;
  readonly lost: Value;
}

/** @param posting  of the kind `made` */
export function makingIn({ entries }: Pick<Posting, "entries">): Making {
  const intoBatch = entries.filter(
    ({ place, lot, quantity }) => place.kind === "batch" && lot.of === "material" && quantity > 0n,
  );
  const output = entries.find((entry) => entry.place.kind === "batch" && cameOut(entry))?.lot ?? null;
  const times = entries.filter(({ place }) => place.kind === "labour" || place.kind === "overhead");
  const atPlace = (kind: PlaceKind): readonly Entry[] =>
    entries.filter(({ place, lot }) => output !== null && place.kind === kind && lotKey(lot) === lotKey(output));
  const finished = output === null ? [] : [...atPlace(homeOf(output).kind), ...atPlace("hold")];
  const lost = atPlace("lost");
  return {
    draws: intoBatch.map(({ lot, quantity, value }) => ({ lot: lot.id, quantity, value })),
    spilt: spiltIn(entries, intoBatch, output),
    cost: plusValue(valueOf(intoBatch), negated(valueOf(times))),
    lot: output,
    units: quantityOf(finished),
    finished: valueOf(finished),
    missing: quantityOf(lost),
    lost: valueOf(lost),
  };
}

/** What left the shelf and did not go into the batch. A lot of a material that came out of it came to the shelf. */
function spiltIn(entries: readonly Entry[], intoBatch: readonly Entry[], output: LotName | null): readonly Drawn[] {
  const made = output && lotKey(output);
  const left = entries.filter(
    ({ place, lot }) => place.kind === "shelf" && lot.of === "material" && lotKey(lot) !== made,
  );
  return [...new Set(left.map(({ lot }) => lot.id))].flatMap((id) => {
    const own = [...left, ...intoBatch].filter(({ lot }) => lot.id === id);
    const quantity = -quantityOf(own);
    return quantity === 0n ? [] : [{ lot: id, quantity, value: negated(valueOf(own)) }];
  });
}

const quantityOf = (entries: readonly Entry[]): bigint => entries.reduce((sum, { quantity }) => sum + quantity, 0n);
const valueOf = (entries: readonly Entry[]): Value => entries.map(({ value }) => value).reduce(plusValue, NO_VALUE);
