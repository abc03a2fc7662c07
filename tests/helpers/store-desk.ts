/** Books for the store's tests: a rich workshop, and a desk with something of everything on it. */
import { type Books, type Desk, emptyDesk } from "@/lib/domain/desk";
import { NO_FORMULA_FACTS } from "@/lib/domain/formula-book/facts";
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { changeBooks } from "@/lib/store/change-books";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { storeFile } from "@/lib/store/store-file";
import { day, decimal, formula, percent, run } from "./notation";
import { richBatches } from "./store-batches";
import { richWorkshop } from "./store-workshop";

/** Ids in an order that is neither the workshop's nor the alphabet's; drafts that come to too little and too much. */
export const richDesk = (): Desk => ({
  retired: {
    suppliers: ["s", "__proto__"],
    materials: ["toString", "jar", "constructor", " "],
    offers: ["z"],
    formulas: ["phases"],
    products: ["p2", "p1"],
  },
  drafts: [
    { ...formula("toString", { glycerol: "60", "=base": "60", constructor: "qs" }), density: quantity(980_000n) },
    formula("d1", {}),
    {
      id: "__proto__",
      name: "Several take what is left",
      density: null,
      ...NO_FORMULA_FACTS,
      keepsDays: 365,
      phases: [{ name: "A", temperature: decimal("75") }],
      steps: [{ phase: null, text: "Stir", temperature: null, minutes: null, caution: null }],
      checks: [{ what: "pH of the water", from: decimal("6"), to: null, unit: null, looks: null }],
      lines: [
        { of: { kind: "material", id: "__proto__" }, percent: "qs", phase: "B" },
        { of: { kind: "formula", id: "base" }, percent: "qs", phase: null },
        { of: { kind: "material", id: "glycerol" }, percent: percent("0.0001"), phase: "A" },
      ],
    },
  ],
  benchMinutes: [480, 0, 240, 1440, 1, 90, 0],
  countRhythms: [
    { material: "jar", days: 30, draws: null },
    { material: "glycerol", days: null, draws: 4 },
  ],
  versions: [
    { formula: "base", number: 1, since: null, why: null, accepted: [], content: null },
    {
      formula: "phases",
      number: 2,
      since: day("2026-09-01"),
      why: "Thicker.",
      accepted: [
        {
          key: '["water and no preservative"]',
          says: "Water and no preservative",
          reason: "Kept cold",
          on: day("2026-09-02"),
        },
      ],
      content: {
        ...NO_FORMULA_FACTS,
        name: "Before",
        density: quantity(970_000n),
        market: "EU",
        use: "leave-on",
        phFrom: decimal("4.5"),
        phTo: decimal("5"),
        keepsDays: 90,
        phases: [{ name: "A", temperature: decimal("72") }],
        steps: [{ phase: "A", text: "Melt", temperature: decimal("70"), minutes: decimal("5"), caution: "hot" }],
        checks: [{ what: "Smell", from: null, to: null, unit: null, looks: "of roses" }],
        lines: [
          { of: { kind: "material", id: "__proto__" }, percent: "qs", phase: "A" },
          { of: { kind: "formula", id: "base" }, percent: percent("20"), phase: null },
        ],
      },
    },
    {
      formula: "phases",
      number: 3,
      since: day("2026-10-01"),
      why: null,
      accepted: [{ key: "[]", says: "Something", reason: "Known", on: day("2026-10-02") }],
      content: null,
    },
  ],
  trials: [
    {
      id: "t",
      formula: "phases",
      name: "5 %",
      day: day("2026-10-03"),
      notes: null,
      posting: "key",
      lines: [
        { of: { kind: "material", id: "glycerol" }, weighed: quantity(LARGEST_FIGURE), phase: "A" },
        { of: { kind: "formula", id: "base" }, weighed: quantity(1n), phase: null },
      ],
      readings: [
        { afterMinutes: 60, ph: decimal("4.6"), viscosity: decimal("12000"), appearance: "white" },
        { afterMinutes: 1440, ph: null, viscosity: null, appearance: null },
      ],
    },
    {
      id: "__proto__",
      formula: "base",
      name: "Plain",
      day: day("1900-01-01"),
      notes: "On a wet day.",
      posting: null,
      lines: [{ of: { kind: "material", id: "glycerol" }, weighed: quantity(1n), phase: null }],
      readings: [],
    },
  ],
  batchCodeScheme: { before: "M-", dating: "year and day of the year", between: "/", digits: 2 },
  notation: { locale: "pt-BR", units: "US" },
  batches: richBatches(),
  closedRuns: [
    {
      run: run("c9", "p2", "2026-11-20", 24, { sequence: 3 }),
      madeOn: day("2026-11-21"),
      unitsMade: quantity(0n),
      versions: [],
    },
    {
      run: run("c1", "p1", "1900-01-01", 1),
      madeOn: day("2999-12-31"),
      unitsMade: quantity(LARGEST_FIGURE),
      versions: [
        { formula: "phases", number: 2 },
        { formula: "base", number: 1 },
      ],
    },
  ],
});

export const richBooks = (): Books => ({ workshop: richWorkshop(), desk: richDesk() });

/** A workshop with nothing on the desk but what is given. */
export const booksOf = (workshop: Workshop, desk: Partial<Desk> = {}): Books => ({
  workshop,
  desk: { ...emptyDesk, ...desk },
});

/** Puts these books in the place of those in the app's store, which must hold a workshop. */
export const keepBooks = async (books: Books): Promise<void> => {
  await changeBooks(() => ({ kind: "keep", books, result: null }));
};

/** Opens a workshop in the app's store and lays the desk beside it. */
export async function openBooks(books: Books): Promise<void> {
  await replaceWorkshop(storeFile(), books.workshop);
  await keepBooks(books);
}
