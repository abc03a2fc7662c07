/**
 * Making a run: what it took goes into its batch with its value, what it filled comes out of it as a finished lot.
 * Loss within plan leaves as quantity alone, so that a jar in stock costs what a planned jar costs; units that are
 * missing from the plan are lost with all they cost. @rule LEDGER-11, LEDGER-12
 */
import type { Day } from "@/lib/domain/calendar";
import { isUsable } from "@/lib/domain/lots";
import type { MicroUnits } from "@/lib/domain/money";
import type { Units } from "@/lib/domain/quantity";
import { refusedFirst, settled, type Taking, taken, valueOfPart } from "./drawing";
import {
  at,
  batchOf,
  type Entry,
  finishedLot,
  homeOf,
  type LotName,
  materialLot,
  minusValue,
  moving,
  NO_VALUE,
  type Place,
  plusValue,
  type Posting,
  type Value,
} from "./posting";
import type { Decided, LotRecords, Refusal } from "./refusal";
import type { PlannedLoss } from "./planned-loss";
import { sharedOut } from "./sharing";
import type { Standing } from "./standing";

export interface RunMade {
  readonly key: string;
  readonly run: string;
  readonly day: Day;
  readonly today: Day;
  readonly note: string | null;
  readonly unitsPlanned: Units;
  /** None where the batch failed. */
  readonly unitsMade: Units;
  /** The lot of what comes out: of finished units, or of the material that they are. */
  readonly finishedLot: string;
  /** What one unit is of the material that the run makes, µg; null where it makes finished units. @rule AHEAD-7 */
  readonly ofMaterial: bigint | null;
  readonly draws: readonly Draw[];
  /** Whether a lot that is out of date on the day may be drawn. */
  readonly outOfDate: "refuse" | "draw";
  readonly labour: MicroUnits;
  readonly overhead: MicroUnits;
  /** What went into its batch weight by weight before, of each lot; nothing where it is made in one go. @rule BENCH-7 */
  readonly before: readonly InBatch[];
  /** Whether what comes out waits on hold for a second look. @rule BENCH-8 */
  readonly onHold: boolean;
}

/** What stands in a batch of a lot. */
export interface InBatch {
  readonly lot: string;
  readonly quantity: bigint;
  readonly value: Value;
}

export interface Draw {
  readonly lot: string;
  /** What goes into the batch. */
  readonly quantity: bigint;
  /** What was lost beside it beyond plan: spilt, broken. */
  readonly spilt: bigint;
}

export type RunMadeResult =
  | Decided<{
      /** Of what went into the batch. */
      readonly drawn: Value;
      /** Of the units that stand finished. */
      readonly finished: Value;
      /** Of the units that are missing from the plan, and of what was spilt. */
      readonly lost: Value;
    }>
  | { readonly kind: "finished lot exists"; readonly lot: string };

/**
 * Decides on a run that was made.
 * @param losses  what the plan says is lost of each material, in quantity
 * @param standing  of every lot that is drawn
 */
export function makeRun(
  made: RunMade,
  standing: Standing,
  losses: readonly PlannedLoss[],
  records: LotRecords,
): RunMadeResult {
  const refusal = refusedDraws(made, records);
  if (refusal) return refusal;
  if (records(outputLot(made))) return { kind: "finished lot exists", lot: made.finishedLot };
  const [entries, lost]: [Entry[], Entry[]] = [[], []];
  let [drawn, spilt] = [made.before.map(({ value }) => value).reduce(plusValue, NO_VALUE), NO_VALUE];
  for (const draw of made.draws) {
    const both = drawOf(made, draw, standing);
    if (both.kind !== "drawn") return both;
    entries.push(...both.intoBatch);
    lost.push(...both.spilt);
    drawn = plusValue(drawn, both.drawn);
    spilt = plusValue(spilt, both.lost);
  }
  const cost = plusValue(drawn, { ...NO_VALUE, labour: made.labour, overhead: made.overhead });
  const output = outputOf(made, cost);
  const posting: Posting = {
    id: made.key,
    kind: "made",
    day: made.day,
    reason: made.note,
    reverses: null,
    entries: [...entries, ...lost, ...plannedLosses(made, losses, records), ...timeOf(made), ...output.entries],
  };
  const decided = settled(standing, posting);
  return decided.kind === "posted"
    ? { ...decided, drawn, finished: output.finished, lost: plusValue(spilt, output.lost) }
    : decided;
}

function refusedDraws(made: RunMade, records: LotRecords): Refusal | null {
  const lots = made.draws.map(({ lot }) => materialLot(lot));
  const early = refusedFirst(made, lots, records);
  if (early) return early;
  if (made.unitsMade === 0n && made.unitsPlanned === 0n) return { kind: "nothing to post", lot: null };
  const seen = new Set<string>();
  for (const lot of lots) {
    if (seen.has(lot.id)) return { kind: "asked twice", lot };
    seen.add(lot.id);
    const expires = records(lot)?.expires ?? null;
    if (expires !== null && !isUsable({ expires }, made.day) && made.outOfDate === "refuse") {
      return { kind: "out of date", lot, expires, day: made.day };
    }
  }
  return null;
}

/** What one lot gives, taken in one go, so that its value is shared between batch and loss without a remainder. */
function drawOf(made: RunMade, { lot: id, quantity, spilt }: Draw, standing: Standing) {
  const lot = materialLot(id);
  if (quantity < 0n || spilt < 0n) return { kind: "nothing to post", lot } as const;
  const whole: Taking = { lot, quantity: quantity + spilt, from: at("shelf"), to: batchOf(made.run) };
  const taking = taken(standing, made.day, whole);
  if (taking.kind !== "taken") return taking;
  const lost = spilt === 0n ? NO_VALUE : valueOfPart({ quantity: quantity + spilt, value: taking.value }, spilt);
  const drawn = minusValue(taking.value, lost);
  return {
    kind: "drawn",
    intoBatch: quantity === 0n ? [] : moving(lot, quantity, drawn, at("shelf"), batchOf(made.run)),
    spilt: spilt === 0n ? [] : moving(lot, spilt, lost, at("shelf"), at("lost")),
    drawn,
    lost,
  } as const;
}

/** What the plan loses of each material leaves the batch without value, shared over its lots by what they gave. */
function plannedLosses(made: RunMade, losses: readonly PlannedLoss[], records: LotRecords): readonly Entry[] {
  return losses.flatMap(({ material, ofNeed, need }) => {
    const draws = [...made.before, ...made.draws].filter(
      ({ lot, quantity }) => quantity > 0n && itemOf(records, lot) === material,
    );
    const drawn = draws.reduce((sum, { quantity }) => sum + quantity, 0n);
    // Whoever draws more or less than the need loses in proportion.
    const loss = need === 0n ? 0n : (drawn * ofNeed) / need;
    if (loss === 0n) return [];
    const shares = sharedOut(
      loss,
      draws.map(({ quantity }) => quantity),
    );
    return draws.flatMap(({ lot }, index) => {
      const share = shares[index] ?? 0n;
      return share === 0n ? [] : moving(materialLot(lot), share, NO_VALUE, batchOf(made.run), at("lost"));
    });
  });
}

const itemOf = (records: LotRecords, lot: string): string | undefined => records(materialLot(lot))?.item;

const outputLot = ({ finishedLot: id, ofMaterial }: RunMade): LotName =>
  ofMaterial === null ? finishedLot(id) : materialLot(id);

/** Labour and overhead go into the batch. */
function timeOf(made: RunMade): readonly Entry[] {
  const { run, labour, overhead } = made;
  const lot = outputLot(made);
  const into = batchOf(run);
  return [
    ...(labour === 0n ? [] : moving(lot, 0n, { ...NO_VALUE, labour }, at("labour"), into)),
    ...(overhead === 0n ? [] : moving(lot, 0n, { ...NO_VALUE, overhead }, at("overhead"), into)),
  ];
}

/** The units that were filled, and those that are missing from the plan: the batch gives all its value to them. */
function outputOf(made: RunMade, cost: Value) {
  const lot = outputLot(made);
  const missing = made.unitsPlanned > made.unitsMade ? made.unitsPlanned - made.unitsMade : 0n;
  const units = made.unitsMade + missing;
  const lost = missing === 0n ? NO_VALUE : valueOfPart({ quantity: units, value: cost }, missing);
  const finished = minusValue(cost, lost);
  const entries = [
    ...(made.unitsMade === 0n ? [] : comingOut(made, made.unitsMade, finished, made.onHold ? at("hold") : homeOf(lot))),
    ...(missing === 0n ? [] : comingOut(made, missing, lost, at("lost"))),
  ];
  return { entries, finished: made.unitsMade === 0n ? NO_VALUE : finished, lost };
}

/**
 * Units that come out of the batch with their value. Of a material's lot no batch ever gives more than it took
 * (LEDGER-4): what is made of it comes in from outside, and takes its value out of the batch. @rule AHEAD-7
 */
function comingOut(made: RunMade, units: bigint, value: Value, to: Place): readonly Entry[] {
  const lot = outputLot(made);
  const batch = batchOf(made.run);
  if (made.ofMaterial === null) return moving(lot, units, value, batch, to);
  return [...moving(lot, units * made.ofMaterial, NO_VALUE, at("supplier"), to), ...moving(lot, 0n, value, batch, to)];
}
