/** Clients of the running app that fill in its own forms and post them, and remember what they were told. */
import { randomUUID } from "node:crypto";
import { finishedLot, type LotName, materialLot, type PlaceKind } from "@/lib/domain/ledger/posting";
import { postingAddress } from "@/lib/edge/ledger-address";
import { formOn, type PageForm, send } from "./page-forms";
import { type Dice, pick } from "./random-dice";

/** What a posting moves, if it is there: so much to a place, which the books are then held to. */
interface Effect {
  readonly lot: LotName;
  readonly place: PlaceKind;
  readonly quantity: bigint;
}

/** One form as it was sent, with the key that makes it one posting however often it is sent. */
export interface Sent {
  readonly key: string;
  readonly form: PageForm;
  readonly typed: Readonly<Record<string, string>>;
  readonly effect: Effect;
  /** Whether the place that the answer leads on to says that it was posted. */
  readonly isDone: (leadsTo: string) => boolean;
}

export type Answer = "posted" | "refused" | "no answer";

/** The lots that are held and sold of, and the jars that the runs run out of. */
export const HELD_OF = "late";
export const SOLD_OF = "F-stock";
const JARS = "jars";
const GRAM = 1_000_000n;

export interface Forms {
  readonly receive: PageForm;
  readonly hold: PageForm;
  readonly sell: PageForm;
  readonly make: PageForm;
}

/** The forms that the clients send, as the server draws them. */
export const formsOf = async (url: string, run: string): Promise<Forms> => ({
  receive: await formOn(url, "/shelf/receive", "lines.0.lot"),
  hold: await formOn(url, `/shelf/lots/${HELD_OF}?do=hold`, "amount"),
  sell: await formOn(url, `/shelf/finished/${SOLD_OF}`, "units"),
  make: await formOn(url, `/week/make/${run}`, "made"),
});

/** A form at random, for one of these runs where it makes one; runs of several clients overlap. */
export function anyForm(forms: Forms, runs: readonly string[], dice: Dice): Sent {
  switch (pick(dice, ["receive", "hold", "sell", "make", "make"] as const)) {
    case "receive":
      return receiving(forms.receive);
    case "hold":
      return holding(forms.hold);
    case "sell":
      return selling(forms.sell);
    case "make":
      return making(forms.make, pick(dice, runs));
  }
}

function receiving(form: PageForm): Sent {
  const key = randomUUID();
  const line = { of: "material oil", packs: "1", pack: "1 kg", lot: `D-${key}`, paid: "20" };
  const lines = Object.fromEntries(Object.entries(line).map(([name, value]) => [`lines.0.${name}`, value]));
  return {
    key,
    form,
    typed: { ...lines, id: key, deed: "post" },
    effect: { lot: materialLot(line.lot), place: "shelf", quantity: 1000n * GRAM },
    isDone: (leadsTo) => leadsTo.endsWith(postingAddress(key)),
  };
}

function holding(form: PageForm): Sent {
  const key = randomUUID();
  return {
    key,
    form,
    typed: { id: key, why: "doubt", amount: "1 g" },
    effect: { lot: materialLot(HELD_OF), place: "hold", quantity: GRAM },
    isDone: (leadsTo) => leadsTo.includes(`done=${key}`),
  };
}

export function selling(form: PageForm): Sent {
  const key = randomUUID();
  return {
    key,
    form,
    typed: { key, units: "1" },
    effect: { lot: finishedLot(SOLD_OF), place: "sold", quantity: 1n },
    isDone: (leadsTo) => leadsTo.includes("did=sold"),
  };
}

/** Draws one jar beside a gram: jars are what the runs, all together, have too few of. */
function making(form: PageForm, run: string): Sent {
  const key = randomUUID();
  const drawn = { [HELD_OF]: "1", [JARS]: "1" };
  const takes = [...form.fields.keys()].filter((name) => name.startsWith("takes "));
  return {
    key,
    form,
    typed: {
      ...Object.fromEntries(takes.map((name) => [name, ""])),
      ...Object.fromEntries(Object.entries(drawn).map(([lot, amount]) => [`takes ${lot}`, amount])),
      ...{ key, run, lot: `F-${key}` },
    },
    effect: { lot: finishedLot(`F-${key}`), place: "finished", quantity: 10n },
    // "made meanwhile" says that another client made it.
    isDone: (leadsTo) => leadsTo.endsWith("did=made"),
  };
}

/** Sends a form, once. A server that is gone in between gives no answer. */
export async function sendOnce(url: string, { form, typed, isDone }: Sent): Promise<Answer> {
  try {
    const leadsTo = await send(url, form, typed);
    return leadsTo !== null && isDone(leadsTo) ? "posted" : "refused";
  } catch (fault) {
    // `fetch` tells a lost connection by this type, and nothing else by it.
    if (fault instanceof TypeError) return "no answer";
    throw fault;
  }
}
