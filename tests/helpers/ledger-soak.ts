/** Random postings on the app's own store, forbidden ones among them, each held to the naive model. */
import { type Day, daysAfter, later } from "@/lib/domain/calendar";
import { finishedLot, type LotName, materialLot } from "@/lib/domain/ledger/posting";
import { quantity } from "@/lib/domain/quantity";
import { postCount } from "@/lib/operations/count-shelf";
import { holdLot } from "@/lib/operations/hold-lot";
import { postLateCost } from "@/lib/operations/late-cost";
import { makePlannedRun } from "@/lib/operations/make-run";
import { planRun } from "@/lib/operations/plan-run";
import { receive } from "@/lib/operations/receive-delivery";
import { releaseLot } from "@/lib/operations/release-lot";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { sell } from "@/lib/operations/sell-units";
import { takeUnitsBack } from "@/lib/operations/take-back";
import { writeOffStock } from "@/lib/operations/write-off";
import { type LedgerModel, ledgerModel, type ModelMove } from "./ledger-model";
import { delivery, making, TODAY, units } from "./ledger-shop";
import { chance, type Dice, pick } from "./random-dice";

export interface Soak {
  /** Does one thing at random. @throws where the store and the model do not agree */
  readonly step: () => Promise<void>;
  readonly model: LedgerModel;
  /** How often each thing came to what, as `sold: not there`. */
  readonly counts: ReadonlyMap<string, number>;
  readonly posted: () => number;
  readonly acknowledged: () => readonly string[];
}

/** Lots that have come in, with the day, and finished lots likewise. */
interface Known {
  readonly lot: LotName;
  readonly since: Day;
}

/** A thing to do: the form's answer, and what the model thinks of it; no moves where the form is wrong in itself. */
interface Deed {
  readonly verb: string;
  /** Of the posting. */
  readonly key: string;
  /** What the model keeps it under, where that is something else. */
  readonly kept?: string;
  readonly answer: Promise<{ readonly kind: string }>;
  readonly moves: readonly ModelMove[] | "refused";
  readonly also?: () => void;
}

/** @param name  begins every key, so that several can post into one store */
export function ledgerSoak(dice: Dice, name: string): Soak {
  const model = ledgerModel();
  const [lots, finished, acknowledged]: [Known[], Known[], string[]] = [[], [], []];
  const counts = new Map<string, number>();
  let steps = 0;

  /** Mostly not before the lot came. */
  const day = (since: Day = daysAfter(TODAY, -40)): Day =>
    chance(dice, 90) ? daysAfter(since, dice.whole(0, TODAY - since)) : daysAfter(TODAY, -dice.whole(0, 40));
  const amount = (): bigint => BigInt(dice.whole(1, 400)) * 1_000_000n + BigInt(dice.whole(0, 999_999));
  const cellOf = ({ of, id }: LotName, place: string): string => `${of} ${id}@${place}`;
  const home = ({ of }: LotName): string => (of === "material" ? "shelf" : "finished");
  const from = (lot: LotName, place: string, on: Day, quantity: bigint): ModelMove => ({
    cell: cellOf(lot, place),
    day: on,
    quantity,
  });

  const context = {
    dice,
    model,
    lots,
    finished,
    day,
    amount,
    from,
    home,
    cellOf,
    key: () => `${name} ${String(steps)}`,
  };

  async function step(): Promise<void> {
    steps += 1;
    const deed = await chooseDeed(context);
    const { kind } = await deed.answer;
    counts.set(`${deed.verb}: ${kind}`, (counts.get(`${deed.verb}: ${kind}`) ?? 0) + 1);
    const allowed = deed.moves !== "refused" && model.allows(deed.moves);
    const posted = kind === "posted";
    // A cost posted later may stand in the way of what quantities alone would allow, and so may a later count.
    const excused = ["cost came later", "lot is nowhere", "counted since"].includes(kind);
    if (posted !== allowed && !(allowed && excused)) {
      throw new Error(`${deed.verb} ${deed.key} was ${kind}, and the model ${allowed ? "allows" : "refuses"} it`);
    }
    if (!posted || deed.moves === "refused") return;
    model.keep(deed.kept ?? deed.key, deed.moves);
    acknowledged.push(deed.key);
    deed.also?.();
  }
  return { step, model, counts, posted: () => acknowledged.length, acknowledged: () => acknowledged };
}

interface Context {
  readonly dice: Dice;
  readonly model: LedgerModel;
  readonly lots: Known[];
  readonly finished: Known[];
  readonly day: (since?: Day) => Day;
  readonly amount: () => bigint;
  readonly from: (lot: LotName, place: string, on: Day, quantity: bigint) => ModelMove;
  readonly home: (lot: LotName) => string;
  readonly cellOf: (lot: LotName, place: string) => string;
  readonly key: () => string;
}

function chooseDeed(context: Context): Deed | Promise<Deed> {
  const { dice, lots, finished } = context;
  if (lots.length < 3) return receiving(context);
  const known = chance(dice, 60) && finished.length > 0 ? pick(dice, finished) : pick(dice, lots.slice(-40));
  const deeds: readonly (() => Deed | Promise<Deed>)[] = [
    () => receiving(context),
    () => receiving(context),
    () => makingOne(context),
    () => makingOne(context),
    () => makingOne(context),
    () => moved(context, known, "held"),
    () => moved(context, onHold(context) ?? known, "released"),
    () => moved(context, known, "lost"),
    () => moved(context, onHold(context) ?? known, "expired from hold"),
    () => (finished.length > 0 ? moved(context, pick(dice, finished.slice(-8)), "sold") : receiving(context)),
    () => (finished.length > 0 ? moved(context, pick(dice, finished.slice(-8)), "taken back") : receiving(context)),
    () => counted(context, known),
    () => costLater(context, known),
    () => reversed(context),
    () => reversed(context),
    () => wrong(context, known),
  ];
  return pick(dice, deeds)();
}

function onHold({ dice, lots, finished, model, cellOf }: Context): Known | null {
  const held = [...lots, ...finished].filter(({ lot }) => model.stands(cellOf(lot, "hold")) > 0n);
  return held.length > 0 && chance(dice, 80) ? pick(dice, held) : null;
}

function receiving(context: Context): Deed {
  const { dice, amount, lots, from } = context;
  const [key, on] = [context.key(), context.day()];
  const lines = Array.from({ length: dice.whole(1, 3) }, (_, at) => ({
    lot: `${key}/${String(at)} oil`,
    quantity: quantity<never>(amount()),
    paid: quantity<never>(BigInt(dice.whole(0, 99_999_999))),
    weight: quantity<never>(1n),
    expires: chance(dice, 30) ? daysAfter(TODAY, dice.whole(0, 300)) : null,
  }));
  const extras = chance(dice, 50)
    ? ([{ what: "delivery", amount: quantity<never>(BigInt(dice.whole(0, 9_999_999))), by: "quantity" }] as const)
    : [];
  return {
    verb: "received",
    key,
    answer: receive(delivery(lines, { key, day: on, extras })),
    moves: lines.map((line) => from(materialLot(line.lot), "shelf", on, line.quantity)),
    also: () => {
      lots.push(...lines.map((line) => ({ lot: materialLot(line.lot), since: on })));
    },
  };
}

async function makingOne(context: Context): Promise<Deed> {
  const { dice, lots, finished, from, model, cellOf } = context;
  const key = context.key();
  const planned = dice.whole(1, 12);
  const run = { id: key, product: "p", date: TODAY, units: units(planned) };
  await planRun({ run, before: null });
  const chosen = new Map(
    Array.from({ length: dice.whole(1, 4) }, () => pick(dice, lots.slice(-30))).map((each) => [each.lot.id, each]),
  );
  const on = context.day([...chosen.values()].map(({ since }) => since).reduce(later));
  const draws = [...chosen.values()].map(({ lot }) => {
    const there = model.stands(cellOf(lot, "shelf"));
    const asked = chance(dice, 85) && there > 0n ? (there * BigInt(dice.whole(1, 100))) / 100n : context.amount();
    return {
      lot: lot.id,
      quantity: asked === 0n ? 1n : asked,
      spilt: chance(dice, 20) ? BigInt(dice.whole(1, 9)) : 0n,
    };
  });
  const made = dice.whole(0, planned + 1);
  const before = [...chosen.values()].some(({ since }) => on < since);
  const asked = making("r", {
    key,
    run,
    day: on,
    unitsMade: units(made),
    finishedLot: { id: `F ${key}`, bestBefore: null },
    draws,
    outOfDate: "draw",
  });
  const moves = [
    ...draws.map(({ lot, quantity: drawn, spilt }) => from(materialLot(lot), "shelf", on, -(drawn + spilt))),
    ...(made > 0 ? [from(finishedLot(`F ${key}`), "finished", on, BigInt(made))] : []),
  ];
  return {
    verb: "made",
    key,
    answer: makePlannedRun(asked),
    moves: before ? "refused" : moves,
    also: () => {
      if (made > 0) finished.push({ lot: finishedLot(`F ${key}`), since: on });
    },
  };
}

type Way = "held" | "released" | "lost" | "expired from hold" | "sold" | "taken back";

function moved(context: Context, { lot, since }: Known, way: Way): Deed {
  const { dice, from, home, model, cellOf } = context;
  const [key, on] = [context.key(), context.day(since)];
  const [source, target] = {
    held: [home(lot), "hold"],
    released: ["hold", home(lot)],
    lost: [home(lot), null],
    "expired from hold": ["hold", null],
    sold: ["finished", "sold"],
    "taken back": ["sold", "finished"],
  }[way] as [string, string | null];
  const there = model.stands(cellOf(lot, source));
  const some =
    chance(dice, 80) && there > 0n ? (there * BigInt(dice.whole(1, 100))) / 100n : there + BigInt(dice.whole(1, 3));
  const asked = some === 0n ? 1n : some;
  const form = { key, day: on, realToday: TODAY, reason: "by chance", lines: [{ lot, quantity: asked }] };
  const answers = {
    held: () => holdLot(form),
    released: () => releaseLot(form),
    lost: () => writeOffStock({ ...form, as: "lost", from: "stock" }),
    "expired from hold": () => writeOffStock({ ...form, as: "expired", from: "hold" }),
    sold: () => sell({ ...form, outOfDate: "sell" }),
    "taken back": () => takeUnitsBack(form),
  };
  const moves = [from(lot, source, on, -asked), ...(target === null ? [] : [from(lot, target, on, asked)])];
  return { verb: way, key, answer: answers[way](), moves: on < since ? "refused" : moves };
}

function counted(context: Context, { lot, since }: Known): Deed {
  const { dice, from, home, model, cellOf } = context;
  const [key, on] = [context.key(), context.day(since)];
  const there = model.stands(cellOf(lot, home(lot)), on);
  const stale = chance(dice, 10);
  const found = chance(dice, 70) ? (there * BigInt(dice.whole(80, 110))) / 100n : there;
  const lines = [{ lot, expected: stale ? there + 1n : there, counted: found }];
  return {
    verb: "counted",
    key,
    answer: postCount({ key, day: on, realToday: TODAY, reason: "by chance", lines }),
    moves: stale || on < since ? "refused" : [from(lot, home(lot), on, found - there)],
  };
}

function costLater(context: Context, { lot, since }: Known): Deed {
  const { dice } = context;
  const [key, on] = [context.key(), chance(dice, 70) ? TODAY : context.day(since)];
  const lines = [{ lot, amount: quantity<never>(BigInt(dice.whole(1, 9_999_999))) }];
  const form = { key, day: on, realToday: TODAY, reason: "by chance", lines };
  return { verb: "late cost", key, answer: postLateCost(form), moves: on < since ? "refused" : [] };
}

function reversed(context: Context): Deed {
  const { dice, model } = context;
  const key = context.key();
  const keys = model.keys();
  const of = pick(dice, keys.slice(-60));
  const moves = model.movesOf(of);
  const gone = of.startsWith("not ") || keys.includes(`not ${of}`);
  const before = moves.some(({ day }) => day > TODAY);
  return {
    verb: "reversed",
    key,
    kept: `not ${of}`,
    answer: reversePosting({
      key,
      day: TODAY,
      realToday: TODAY,
      reverses: of.replace(/^not /, ""),
      reason: "by chance",
    }),
    moves: gone || before ? "refused" : moves.map((move) => ({ ...move, day: TODAY, quantity: -move.quantity })),
  };
}

/** What must always be refused. */
function wrong(context: Context, { lot }: Known): Deed {
  const { dice, model } = context;
  const key = context.key();
  const form = { key, day: TODAY, realToday: TODAY, reason: "by chance", lines: [{ lot, quantity: 1n }] };
  const answer = pick<() => Promise<{ readonly kind: string }>>(dice, [
    () => holdLot({ ...form, day: daysAfter(TODAY, 1) }),
    () => holdLot({ ...form, lines: [{ lot, quantity: 0n }] }),
    () => holdLot({ ...form, lines: [{ lot, quantity: -5n }] }),
    () => holdLot({ ...form, lines: [{ lot, quantity: 2n ** 60n }] }),
    () => holdLot({ ...form, lines: [{ lot: materialLot("nowhere"), quantity: 1n }] }),
    () => reversePosting({ ...form, reverses: "nothing" }),
    () =>
      holdLot({
        ...form,
        key: pick(
          dice,
          model.keys().filter((each) => !each.startsWith("not ")),
        ),
      }),
  ]);
  return { verb: "wrong", key, answer: answer(), moves: "refused" };
}
