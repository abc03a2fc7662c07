/**
 * Nonsense typed into every field of every form of the Book and the Week: refused at the field, or right; never an error,
 * nothing typed lost, nothing kept of what was refused. @rule QTY-3, FILE-3
 */
import { beforeEach, describe, expect, test, vi } from "vitest";
import { NOT_SENT as NOT_ASKED } from "@/app/_ui/asking-answer";
import { NOT_SENT } from "@/app/_ui/form-answer";
import { keep, keepSettings } from "@/app/book/actions";
import { moveARun, planARun, resizeARun } from "@/app/week/actions";
import { setHours } from "@/app/week/hours-actions";
import type { Control, FormField } from "@/lib/edge/forms/form-fields";
import { formFromRecord } from "@/lib/edge/forms/form-reading";
import { type FormKind, RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { writtenRecords, writtenSettings } from "@/lib/edge/forms/written-record";
import { type Act, answered, type Typed } from "../helpers/forms-sent";
import { books, shop, TODAY } from "../helpers/ledger-shop";
import { label, offer, paper } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("next/navigation", async () => {
  const { goOn } = await import("../helpers/forms-sent");
  return { RedirectType: {}, redirect: goOn };
});

storeForEachTest();

beforeEach(async () => {
  const { workshop, desk } = shop();
  const settings = { ...workshop.settings, today: TODAY };
  const offers = [offer("o", "oil", "1000", "20")];
  const [labels, papers] = [[label("l", "p")], [paper("sheet")]];
  await openBooks({ workshop: { ...workshop, settings, offers, labels, papers }, desk });
});

const SCRIPT = "<script>alert(1)</script>";
const HUGE = "9".repeat(30);
const PASTED = "Glycerin 5 %\n".repeat(10_000);
const NONSENSE = [HUGE, "-5", "1,500", "1e9", "12 furlongs", "abc", SCRIPT, PASTED, "?", "½"];

/** What no field of a kind can mean, so that it must be refused there. All but texts refuse nearly everything. */
const MEANT: Partial<Readonly<Record<Control["kind"], readonly string[]>>> = {
  text: ["-5", "1,500", "1e9", "12 furlongs", "abc", SCRIPT, HUGE, "?", "½"],
  temperature: ["-5"],
};
const refuses = ({ kind }: Control, nonsense: string): boolean => !(MEANT[kind] ?? []).includes(nonsense);
/** A line on order remembers the offer that it was of, which may be gone since: it is no choice. */
const NO_CHOICE = "lines.0.offer";

interface Place {
  readonly name: string;
  readonly control: Control;
}

/** Every field that is typed into: those of a row, by the names of the first row. */
const placesIn = (fields: readonly FormField[], at = ""): readonly Place[] =>
  fields.flatMap(({ name, control }) => {
    if (control.kind === "hidden") return [];
    return control.kind === "lines" ? placesIn(control.fields, `${name}.0.`) : [{ name: at + name, control }];
  });

const KINDS = Object.keys(RECORD_FORMS).filter((kind) => kind !== "runs") as readonly Exclude<FormKind, "runs">[];

const acting =
  (kind: (typeof KINDS)[number]): Act =>
  (form) =>
    kind === "settings" ? keepSettings(NOT_SENT, form) : keep(kind, null, NOT_SENT, form);

/** The first record of the list under a new id, as its form has it; the settings as they stand. */
async function asItStands(kind: (typeof KINDS)[number]): Promise<Typed> {
  const { workshop } = await books();
  const record = kind === "settings" ? writtenSettings(workshop) : writtenRecords(workshop, kind)[0];
  return { ...formFromRecord(kind, record ?? {}), ...(kind !== "settings" && { id: "new" }), deed: "keep" };
}

/** Words of the file or of the program, which say nothing to a maker. */
const UNSAID = /2\^53|undefined|\[object|\bNaN\b|\w\[\d+\]/;

describe("[FILE-3] every field of the book's forms refuses nonsense where it stands, and keeps what was typed", () => {
  test.each(KINDS)("%s", async (kind) => {
    const [right, before] = [await asItStands(kind), await books()];
    const places = placesIn(RECORD_FORMS[kind]);
    expect(places.length).toBeGreaterThan(2);
    for (const { name, control } of places.filter((place) => place.name !== NO_CHOICE))
      for (const nonsense of NONSENSE.filter((each) => refuses(control, each))) {
        // A line is of a material or of a premix.
        const alone = name === "lines.0.formula" ? { "lines.0.material": "" } : {};
        const { says, lost } = await answered(acting(kind), { ...right, ...alone, [name]: nonsense });
        const told = `${name} = ${nonsense.slice(0, 30)}: ${says}`;
        expect(
          says.split(" | ").some((fault) => fault.startsWith(`${name}: `)),
          told,
        ).toBe(true);
        expect(says, told).not.toMatch(UNSAID);
        expect(lost, told).toEqual([]);
      }
    expect(await books()).toStrictEqual(before);
    // Every list has a record whose form is right.
    if (kind !== "settings") expect(before.workshop[kind].length, kind).toBeGreaterThan(0);
    // The same form without nonsense is kept, and sent twice it is one record.
    for (let time = 0; time < 2; time += 1) expect((await answered(acting(kind), right)).says).toMatch(/^goes on/);
    if (kind === "settings") return;
    const { workshop } = await books();
    expect(workshop[kind].map(({ id }) => id)).toEqual([...before.workshop[kind].map(({ id }) => id), "new"]);
  });

  test.each(KINDS)("%s: what must be there is asked for where it is missing", async (kind) => {
    const [right, before] = [await asItStands(kind), await books()];
    const needed = RECORD_FORMS[kind].filter(({ required, control }) => required && control.kind !== "hidden");
    for (const { name, control } of needed.filter((field) => field.control.kind !== "lines")) {
      const { says } = await answered(acting(kind), { ...right, [name]: isChosen(control) ? "" : "  " });
      expect(says, name).toContain(`${name}: is needed`);
    }
    expect(await books()).toStrictEqual(before);
  });
});

/** An id may be made of spaces. */
const isChosen = ({ kind }: Control): boolean => kind === "choice" || kind === "reference";

const asked =
  (act: typeof planARun): Act =>
  (form) =>
    act(NOT_ASKED, form);
const RUN = { run: "r", product: "p", from: "2026-11-24", units: "10", of: "2026-11-23", stood: "" };
const HOURS = { hours: "none", of: "2026-11-23", mon: "8", tue: "", wed: "4:30", thu: "", fri: "", sat: "", sun: "" };

describe("[BOOK-6] the forms of the week refuse nonsense at its field, and keep what was typed", () => {
  test.each<{
    readonly form: string;
    readonly act: Act;
    readonly right: Typed;
    readonly wrong: readonly (readonly [Typed, RegExp])[];
  }>([
    {
      form: "plan a run",
      act: asked(planARun),
      right: { id: "new", product: "p", date: "2026-11-27", size: "12" },
      wrong: [
        [{ product: "" }, /^product: is needed; choose one$/],
        [{ product: "?Balmm" }, /^product: nothing in the list is called “Balmm”; choose one from the list$/],
        [{ product: SCRIPT }, /^product: is not in the workshop any more/],
        [{ date: "" }, /^date: is needed/],
        [{ date: "?" }, /^date: is not a whole date; fill in its day, month and year$/],
        [{ date: "3/4/2026" }, /^date: .* can be read two ways/],
        [{ size: "" }, /^size: is needed/],
        [{ size: "0" }, /^size: /],
        [{ size: "-5" }, /^size: must not be below zero/],
        [{ size: "1,5" }, /^size: must be a whole number/],
        [{ size: "1,500" }, /^size: "1,500" can be read two ways; write 1500 or 1.5$/],
        [{ size: HUGE }, /^size: /],
        [{ size: "900000000 kg" }, /^size: /],
        [{ size: SCRIPT }, /^size: /],
        [{ size: PASTED }, /^size: .* is too long for a number/],
        [{ id: "" }, /^This page is out of date/],
      ],
    },
    {
      form: "resize a run",
      act: asked(resizeARun),
      right: { ...RUN, size: "11" },
      wrong: [
        [{ size: "" }, /^size: is needed/],
        [{ size: "0" }, /^size: /],
        [{ size: "abc" }, /^size: /],
        [{ size: HUGE }, /^size: /],
        [
          { units: "9" },
          /^Changed meanwhile, in another tab: it is on Tue.24.Nov.2026 now, with 10.units\. Nothing was overwritten/,
        ],
        [{ run: "" }, /^This page is out of date/],
      ],
    },
    {
      form: "move a run",
      act: asked(moveARun),
      right: { ...RUN, date: "2026-11-28" },
      wrong: [
        [{ date: "" }, /^date: is needed/],
        [{ date: "tomorrow" }, /^date: must be a date as 2026-11-25/],
        [{ date: "2026-11-24" }, /^date: is the day it is on/],
        [{ from: "2026-11-23" }, /^Changed meanwhile, in another tab/],
      ],
    },
    {
      form: "bench hours",
      act: asked(setHours),
      right: HOURS,
      wrong: [
        [{ mon: "25" }, /^mon: /],
        [{ mon: "-1" }, /^mon: /],
        [{ wed: SCRIPT }, /^wed: /],
        [{ sun: PASTED }, /^sun: /],
        [{ hours: "480 0 0 0 0 0 0" }, /^The hours were changed meanwhile, in another tab/],
      ],
    },
  ])("$form", async ({ act, right, wrong }) => {
    const before = await books();
    for (const [typed, said] of wrong) {
      const { says, lost } = await answered(act, { ...right, ...typed });
      expect(says).toMatch(said);
      expect(says).not.toMatch(UNSAID);
      expect(lost).toEqual([]);
    }
    expect(await books()).toStrictEqual(before);
    expect((await answered(act, right)).says).toMatch(/^goes on/);
    const after = await books();
    expect(after).not.toStrictEqual(before);
    // Sent twice it is done once.
    expect((await answered(act, right)).says).toMatch(/^goes on/);
    expect(await books()).toStrictEqual(after);
  });
});
