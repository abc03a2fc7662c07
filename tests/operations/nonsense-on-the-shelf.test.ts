/**
 * Nonsense through every form that posts: refused whole, with the reason at its field, and what was typed kept.
 * @rule LEDGER-4, LEDGER-8
 */
import { beforeEach, describe, expect, test, vi } from "vitest";
import { NOT_SENT as NOT_ASKED } from "@/app/_ui/asking-answer";
import { NOT_SENT } from "@/app/_ui/form-answer";
import { reverseIt } from "@/app/book/history/reversal-actions";
import { countTheShelf } from "@/app/shelf/count/actions";
import { sellOfLot, takeBackOfLot, writeOffOfLot } from "@/app/shelf/finished/finished-actions";
import { actOnLot } from "@/app/shelf/lots/[lot]/actions";
import { receiveDelivery } from "@/app/shelf/receive/actions";
import { makeARun, takeMakingBack } from "@/app/week/make/making-actions";
import type { LotDeed } from "@/lib/edge/forms/lot-forms";
import { holdLot } from "@/lib/operations/hold-lot";
import { makePlannedRun } from "@/lib/operations/make-run";
import { sell } from "@/lib/operations/sell-units";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { openStore } from "@/lib/store/open-store";
import { type Act, answered, type Typed } from "../helpers/forms-sent";
import { making, moving, shop, TODAY } from "../helpers/ledger-shop";
import { day, lot } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("next/navigation", async () => {
  const { goOn } = await import("../helpers/forms-sent");
  return { RedirectType: {}, redirect: goOn };
});

const { file } = storeForEachTest();

/** 490 g of lot late are on the shelf and 10 g on hold; lot old is out of date; of F-r 8 units are in stock and 2 sold. */
beforeEach(async () => {
  const { workshop, desk } = shop();
  const settings = { ...workshop.settings, today: TODAY };
  const lots = [...workshop.lots, lot("old", "oil", "50", "1", { expires: day("2026-11-20") })];
  await openBooks({ workshop: { ...workshop, settings, lots }, desk });
  await makePlannedRun(making("r", { finishedLot: { id: "F-r", bestBefore: day("2026-11-24") } }));
  await holdLot(moving({ late: 10_000_000n }));
  await sell({ ...moving({ "F-r": 2n }, { key: "sold" }), outOfDate: "sell" });
});

const posted = async (): Promise<number> => (await (await openStore(file())).reader.alone(allPostings)).length;
const onLot =
  (deed: LotDeed): Act =>
  (form) =>
    actOnLot("late", deed, NOT_SENT, form);
const asked =
  (act: typeof sellOfLot): Act =>
  (form) =>
    act(NOT_ASKED, form);

const SCRIPT = "<script>alert(1)</script>";
const HUGE = "9".repeat(30);

interface Form {
  readonly form: string;
  readonly act: Act;
  /** As it would be posted. */
  readonly right: Typed;
  /** What is typed in place of that, and what is said of it, at which field. */
  readonly wrong: readonly (readonly [Typed, string])[];
}

/** What is wrong with a number of units in any form. */
const UNITS: Form["wrong"] = [
  [{ units: "" }, "units: is needed; write how many units, as 12"],
  [{ units: "0" }, "units: must be above zero; write how many units, as 12"],
  [{ units: "-5" }, 'units: must not be below zero, as "-5" is'],
  [{ units: "1,5" }, 'units: must be a whole number, as 24, not "1,5"'],
  [{ units: "5 g" }, 'units: must be a number, as 12.5, not "5 g"'],
  [{ units: SCRIPT }, `units: must be a number, as 12.5, not "${SCRIPT}"`],
  [{ units: HUGE }, `units: "${HUGE}" is too large; the most is 9007199254740991`],
  [{ lot: "nowhere" }, "Lot nowhere is not written down any more. Load the page again."],
  [{ lot: "" }, "This page is out of date, and nothing was changed. Load it again."],
];
/** With a day; the lot came on so many days. */
const DAYS = (future: string): Form["wrong"] => [
  [{ day: "" }, "day: is needed; write a date, as 2026-11-25"],
  [{ day: "2026-11-26" }, `day: ${future}`],
  [{ day: "?" }, "day: is not a whole date; fill in its day, month and year"],
  [{ day: "2026-02-30" }, 'day: no such day "2026-02-30"'],
  [{ day: "3/4/2026" }, 'day: "3/4/2026" can be read two ways; write 2026-04-03 or 2026-03-04 (year-month-day)'],
];
const STILL_TO_COME = DAYS("Thu 26 Nov is still to come; today is Wed 25 Nov");
const AFTER_TODAY = DAYS("must not be after today, Wed 25 Nov 2026");
/** What is wrong with how much of a lot that is weighed. */
const AMOUNTS: Form["wrong"] = [
  [{ amount: "" }, "amount: is needed; write a number and a unit, as 250 g"],
  [{ amount: "0" }, 'amount: "0" is no amount; write one with its unit, as 250 g'],
  [{ amount: "0 g" }, "amount: must be above zero"],
  [{ amount: "-5 g" }, 'amount: must not be below zero, as "-5" is'],
  [{ amount: "1,5" }, 'amount: "1.5" has no unit; write it with one, as 1.5 g, 1.5 mL or 1.5 each'],
  [{ amount: HUGE }, `amount: "${HUGE}" has no unit; write it with one, as 250 g`],
  [{ amount: "9999999 kg" }, 'amount: "9999999 kg" is out of range (above 9,007,199,254 g)'],
  [
    { amount: "5 each" },
    "amount: 5 each counts pieces, but Material oil is measured by mass; write it by weight, as 250 g",
  ],
  [
    { amount: "5 mL" },
    "amount: 5 mL is a volume, but Material oil has no density; write the amount by weight or enter the density",
  ],
  [{ amount: SCRIPT }, `amount: must be a number and a unit, as 250 g, not "${SCRIPT}"`],
];
const MANY_KG = "900 kg";
const LOT = { id: "new", amount: "1 g", day: "2026-11-25", reason: "by test", from: "stock" };
const OF_UNITS = { key: "new", lot: "F-r", units: "1", day: "2026-11-25", note: "" };
const BACK = { key: "new", posting: "made r", run: "r", day: "2026-11-25", reason: "by test", "measure F-r": "count" };

const FORMS: readonly Form[] = [
  {
    form: "receive",
    act: (form) => receiveDelivery(NOT_SENT, form),
    right: {
      id: "new",
      day: "2026-11-25",
      supplier: "s",
      "lines.0.material": "oil",
      "lines.0.packs": "1",
      "lines.0.pack": "1 kg",
      "lines.0.lot": "N1",
      "lines.0.expires": "",
      "lines.0.paid": "20",
      delivery: "",
      deliveryBy: "value",
      duty: "",
      dutyBy: "value",
      note: "",
      deed: "post",
    },
    wrong: [
      [{ "lines.0.packs": "0" }, "lines.0.packs: must be above zero"],
      [{ "lines.0.packs": "-1" }, 'lines.0.packs: must not be below zero, as "-1" is'],
      [{ "lines.0.packs": "1,5" }, 'lines.0.packs: must be a whole number, as 24, not "1,5"'],
      [{ "lines.0.packs": "9007199254740991" }, "lines.0.lot: lot N1 would be too large; write less"],
      [{ "lines.0.pack": "" }, "lines.0.pack: is needed where no offer says it; write a number and a unit, as 1 kg"],
      [{ "lines.0.pack": "0 g" }, "lines.0.pack: must be above zero"],
      [
        { "lines.0.pack": "12 each" },
        "lines.0.pack: 12 each counts pieces, but Material oil is measured by mass; write it by weight, as 250 g",
      ],
      [
        { "lines.0.pack": "1 floz" },
        'lines.0.pack: "floz" has two sizes, and oz alone is a weight; write 1 floz-us (United States) or 1 floz-uk (United Kingdom)',
      ],
      [{ "lines.0.paid": "1,500" }, 'lines.0.paid: "1,500" can be read two ways; write 1500 or 1.5'],
      [{ "lines.0.paid": "$20" }, `lines.0.paid: "$" is not the workshop's currency; write the amount in GBP`],
      [{ "lines.0.paid": HUGE }, `lines.0.paid: "${HUGE}" is out of range (at most 9007199254.740991)`],
      [{ "lines.0.lot": "" }, "lines.0.lot: is needed; write it here"],
      [{ "lines.0.lot": "late" }, "lines.0.lot: there is a lot late already; write it as late-2"],
      [{ "lines.0.material": "nothing" }, "lines.0.material: is not in the workshop any more; choose another"],
      [{ "lines.0.material": "?Glycrin" }, "lines.0.material: is not in the workshop any more; choose another"],
      [{ "lines.0.expires": "2026-11-24" }, "lines.0.expires: was Tue 24 Nov, before the day on which it came"],
      [{ supplier: "nobody" }, "supplier: is not in the workshop any more; choose another"],
      [{ delivery: "-3" }, 'delivery: must not be below zero, as "-3" is'],
      [{ deliveryBy: "fairness" }, "deliveryBy: is none of the choices; choose one of them"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "count",
    act: (form) => countTheShelf(NOT_SENT, form),
    right: {
      id: "new",
      day: "2026-11-25",
      reason: "month",
      "lines.0.kind": "material",
      "lines.0.lot": "late",
      "lines.0.expected": "490000000",
      "lines.0.gross": "480",
      "lines.0.tare": "",
      deed: "post",
    },
    wrong: [
      [{ "lines.0.gross": "" }, "nothing is written yet; write what the balance shows of one lot at least"],
      [{ "lines.0.gross": "-1" }, 'lines.0.gross: must not be below zero, as "-1" is'],
      [{ "lines.0.gross": HUGE }, `lines.0.gross: "${HUGE} g" is out of range (above 9,007,199,254 g)`],
      [
        { "lines.0.gross": "5 each" },
        "lines.0.gross: 5 each counts pieces, but Material oil is measured by mass; write it by weight, as 250 g",
      ],
      [{ "lines.0.tare": "481" }, "lines.0.tare: is more than the balance shows; write what the empty vessel weighs"],
      [{ "lines.0.lot": "nowhere" }, "lines.0.gross: this lot is on no list any more; load the page again"],
      [
        { "lines.0.expected": "500000000" },
        "lines.0.gross: something of it moved since the form was drawn: 490 g is written down now. Load the page again and count it once more",
      ],
      [{ reason: "" }, "reason: is needed; write it here"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "hold",
    act: onLot("hold"),
    right: { ...LOT, why: "doubt" },
    wrong: [
      ...AMOUNTS,
      [{ amount: MANY_KG }, "amount: asks for 900,000 g; there is 490 g on the shelf; 10 g more is on hold"],
      [{ why: "" }, "why: is needed; choose one"],
      [{ why: SCRIPT }, "why: is none of the choices; choose one of them"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "release",
    act: onLot("release"),
    right: LOT,
    wrong: [
      ...AMOUNTS,
      [{ amount: "11 g" }, "amount: asks for 11 g; there is 10 g on hold"],
      [{ reason: "" }, "reason: is needed; write it here"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "write off",
    act: onLot("off"),
    right: { ...LOT, why: "spilt" },
    wrong: [
      ...AMOUNTS,
      [{ amount: MANY_KG }, "amount: asks for 900,000 g; there is 490 g on the shelf; 10 g more is on hold"],
      [{ from: "hold", amount: "11 g" }, "amount: asks for 11 g; there is 10 g on hold"],
      [{ from: "cellar" }, "from: is none of the choices; choose one of them"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "late cost",
    act: onLot("cost"),
    right: { ...LOT, why: "adds", cost: "3" },
    wrong: [
      [{ cost: "" }, "cost: is needed; write an amount of money, as 8.40"],
      [{ cost: "0" }, "cost: must be above zero"],
      [{ cost: "-3" }, 'cost: must not be below zero, as "-3" is'],
      [{ cost: "3 kg" }, 'cost: must be a number, as 12.5, not "3 kg"'],
      [{ cost: HUGE }, `cost: "${HUGE}" is out of range (at most 9007199254.740991)`],
      [{ why: "other" }, "why: is none of the choices; choose one of them"],
      [{ reason: "" }, "reason: is needed; write it here"],
      ...STILL_TO_COME,
    ],
  },
  {
    form: "sale",
    act: asked(sellOfLot),
    right: { ...OF_UNITS, deed: "out of date" },
    wrong: [
      ...UNITS,
      [{ units: "9" }, "units: asks for 9 units; there is 8 units in stock"],
      [{ deed: "" }, "units: lot F-r is out of date: its last day was Tue 24 Nov 2026"],
      ...AFTER_TODAY,
    ],
  },
  {
    form: "return",
    act: asked(takeBackOfLot),
    right: OF_UNITS,
    wrong: [...UNITS, [{ units: "3" }, "units: asks for 3 units; there is 2 units sold"], ...AFTER_TODAY],
  },
  {
    form: "units written off",
    act: asked(writeOffOfLot),
    right: { ...OF_UNITS, why: "broken" },
    wrong: [
      ...UNITS,
      [{ units: "9" }, "units: asks for 9 units; there is 8 units in stock"],
      [{ why: SCRIPT }, "why: is needed; choose one"],
      ...AFTER_TODAY,
    ],
  },
  {
    form: "make a run",
    act: asked(makeARun),
    right: {
      key: "new",
      lot: "F-s",
      run: "s",
      product: "p",
      from: "2026-11-26",
      units: "10",
      "measure late": "mass",
      "measure old": "mass",
      "measure jars": "count",
      made: "10",
      day: "2026-11-25",
      bestBefore: "",
      minutes: "",
      note: "",
      "takes late": "400",
      "takes old": "",
      "takes jars": "10",
      "spilt late": "",
    },
    wrong: [
      [{ made: "" }, "made: is needed; write how many came out, 0 where none did"],
      [{ made: "-1" }, 'made: must not be below zero, as "-1" is'],
      [
        { made: "9999999" },
        "made: 9,999,999 units came out of a run of 10: is that right? Write another number, or say yes below",
      ],
      [
        { made: "9999999", deed: "so many 999" },
        "made: 9,999,999 units came out of a run of 10: is that right? Write another number, or say yes below",
      ],
      [{ made: HUGE }, `made: "${HUGE}" is too large; the most is 9007199254740991`],
      [{ minutes: "9999999" }, "minutes: is more than a year; write the minutes that the run took"],
      [{ "takes late": "491" }, "takes late: asks for 491 g; there is 490 g on the shelf; 10 g more is on hold"],
      [{ "takes late": "-1" }, 'takes late: must not be below zero, as "-1" is'],
      [{ "takes late": "5 mL" }, "takes late: 5 mL is a volume; write what the balance shows, as 250 g"],
      [{ "takes old": "1" }, "takes old: lot old is out of date: its last day was Fri 20 Nov 2026"],
      [{ "takes jars": "700 g" }, "takes jars: is counted; write a whole number, as 12"],
      [{ "spilt late": "91" }, "spilt late: asks for 491 g; there is 490 g on the shelf; 10 g more is on hold"],
      [{ bestBefore: "25/12" }, 'bestBefore: must be a date as 2026-11-25 (year-month-day), not "25/12"'],
      [{ run: "r", from: "2026-11-24" }, "goes on to /week/make/~r?did=made+meanwhile"],
      [{ run: "nothing" }, "goes on to /week/make/~nothing?did=gone+meanwhile"],
      [
        { units: "11" },
        "Changed meanwhile, in another tab: it is on Thu 26 Nov 2026 now, with 10 units. Nothing was changed; look at what it needs now, and press again.",
      ],
      [{ units: "" }, "This page is out of date, and nothing was changed. Load it again."],
      ...AFTER_TODAY,
    ],
  },
  ...[
    { form: "take a making back", act: asked(takeMakingBack) },
    { form: "reverse", act: asked(reverseIt) },
  ].map(({ form, act }): Form => ({
    form,
    act,
    right: { ...BACK, posting: "sold" },
    wrong: [
      [{ reason: " " }, "reason: is needed; say why, in a few words"],
      [{ reason: "x".repeat(501) }, `reason: must have at most 500 characters; "${"x".repeat(60)}…" is longer`],
      [{ posting: "nothing" }, "There is no such posting any more. Load the page again."],
      [
        { posting: "made r" },
        "Lot F-r would fall below nothing: taking this back needs 10 units of it, and 8 units can be spared. Since then: 2 units sold on Wed 25 Nov 2026. Take that back first, the latest first, or write off or count what is really there.",
      ],
      [{ day: "2026-11-24" }, "day: must not be before the posting itself, on Wed 25 Nov 2026"],
      ...AFTER_TODAY,
    ],
  })),
];

describe("[LEDGER-8] nonsense is refused whole, with the reason at its field, and what was typed is kept", () => {
  test.each(FORMS)("$form", async ({ act, right, wrong }) => {
    const before = await posted();
    const told = [];
    for (const [typed] of wrong) told.push(await answered(act, { ...right, ...typed }));
    expect(told.map(({ says }) => says.replaceAll("\u00a0", " "))).toEqual(wrong.map(([, says]) => says));
    expect(told.flatMap(({ lost }) => lost)).toEqual([]);
    expect(await posted()).toBe(before);
    // The same form without the nonsense is right, so that nothing else was refused above.
    expect((await answered(act, right)).says).toMatch(/^goes on/);
    expect(await posted()).toBe(before + 1);
  });

  test("so many more units than planned are posted where the maker says that they are right", async () => {
    const { act, right } = FORMS.find(({ form }) => form === "make a run") ?? { act: asked(makeARun), right: {} };
    const many = { ...right, made: "9999999", deed: "so many 9999999" };
    expect((await answered(act, { ...many, "takes old": "1" })).says).toMatch(/^takes old: lot old is out of date/);
    const both = { ...many, "takes old": "1", deed: "out of date, so many 9999999" };
    expect((await answered(act, both)).says).toBe("goes on to /week/make/~s?did=made");
  });
});
