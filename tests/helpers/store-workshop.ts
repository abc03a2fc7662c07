/** Workshops for the store's tests: every column filled and empty, ids of every kind, the largest figures. */
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import {
  day,
  decimal,
  formula,
  g,
  grams,
  limit,
  label,
  lot,
  material,
  money,
  offer,
  order,
  paper,
  percent,
  pieces,
  product,
  run,
  settings,
  stock,
  supplier,
} from "./notation";

const MOST = stock(LARGEST_FIGURE);
/** Ids that trip up a program which keeps records under their id in a plain object, or compares them carelessly. */
export const ODD_IDS = [
  "__proto__",
  "constructor",
  "toString",
  " ",
  "a/1",
  "Å",
  "A\u030a",
  "𝛼β",
  "'); DROP TABLE lots;--",
  "%_",
];

/** A workshop with nothing in its lists but what is given. */
export const bareWorkshop = (name: string, lists: Partial<Workshop> = {}): Workshop => ({
  settings: settings({ name }),
  suppliers: [],
  materials: [],
  offers: [],
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
  labels: [],
  papers: [],
  ...lists,
});

/** Lists in an order that is neither the ids' nor the alphabet's, every optional value once there and once absent. */
export const richWorkshop = (): Workshop =>
  bareWorkshop("Ærlig & søn “θ” \\ \" '", {
    settings: settings({
      name: "Ærlig & søn “θ” \\ \" '",
      horizonDays: 3660,
      coverDays: 0,
      labourPerHour: quantity(LARGEST_FIGURE),
      closedDays: [day("2999-12-31"), day("1900-01-01"), day("2026-12-25")],
      tax: percent("20"),
      paymentFee: percent("99.9999"),
    }),
    suppliers: [
      supplier("s", { closedDays: [day("2027-01-02"), day("2027-01-01")], shippingFreeFrom: money("0"), leadDays: 0 }),
      supplier("__proto__", { leadCounts: "calendar", minimumOrder: money("60.000001"), shipping: money("4.95") }),
    ],
    materials: [
      material("jar", { kind: "packaging", measure: "count", safetyStock: pieces(0), safetyDays: 3660 }),
      material("glycerol", {
        density: quantity(1_261_300n),
        safetyStock: { typed: { number: decimal("0.100"), unit: "L" }, quantity: g("126.13") },
        useMin: percent("0"),
        useMax: percent("5"),
        addBelow: decimal("40.5"),
        role: "preservative",
        phFrom: decimal("0"),
        phTo: decimal("14"),
        composition: [
          { inci: "Sodium Benzoate", share: percent("99.9999") },
          { inci: "Aqua", share: percent("0.0001") },
        ],
        limits: [
          limit("EU", { use: "leave-on", countsAs: decimal("0.84743") }),
          limit("GB", { substance: "ϕ", copied: day("1900-01-01") }),
        ],
        flammable: true,
        eyeHazard: true,
        sheets: [
          { kind: "safety", reference: "SDS 1/2026", reviewBy: day("2999-12-31") },
          { kind: "analysis", reference: "CoA 7", reviewBy: null },
        ],
      }),
      ...ODD_IDS.map((id) => material(id, { kind: "consumable" })),
    ],
    offers: [
      offer("z", "glycerol", "1000", "8.4", {
        breaks: [
          { packs: quantity(10n), price: money("7") },
          { packs: quantity(2n), price: money("0.000001") },
        ],
        shelfLifeDays: 3660,
        confirmedOn: day("1900-01-01"),
      }),
      offer("a", "glycerol", "1", "9", { preferred: true, supplier: "__proto__", minPacks: quantity(LARGEST_FIGURE) }),
      offer("j", "jar", "1", "1", { pack: pieces(144), preferred: true }),
    ],
    lots: ODD_IDS.map((id, index) =>
      lot(
        id,
        id,
        "0",
        "0",
        index === 3 ? { remaining: MOST, value: quantity(LARGEST_FIGURE), expires: day("2028-02-29") } : {},
      ),
    ),
    orders: [
      order("po9", "2026-12-01", [
        { material: "toString", quantity: stock(1n), cost: money("0"), expires: null },
        { material: "glycerol", quantity: MOST, cost: money("7.1"), expires: day("2028-01-01") },
        { material: "glycerol", quantity: stock(5n), cost: money("7.1"), expires: null },
      ]),
      order("po1", "1999-01-01", [{ material: "jar", quantity: stock(12n), cost: money("1"), expires: null }]),
    ],
    labels: [
      label("l2", "p1", { market: "US", code: "Code 128", gtin: "6291041500213", showsPh: true, monthsOpen: 120 }),
      label("__proto__", "p1", {
        title: "Ærlig “θ”",
        function: "Hand cream",
        cautions: "Keep out of eyes.\nNot for food.",
        responsible: "Invented & søn",
        address: "1 Lane, Town",
        contact: "hello@maker.example",
        madeIn: "Nowhere",
        code: "QR",
        showsMade: true,
      }),
    ],
    papers: [
      paper("z", { page: "Letter", gapAcross: decimal("0.125"), columns: 1, rows: 1 }),
      paper("a", { top: decimal("0"), gapDown: decimal("0.0") }),
    ],
    formulas: [
      { ...formula("cream", { "=base": "97.5", glycerol: "qs" }), density: quantity(1_000_000n) },
      { ...formula("base", { glycerol: "60", constructor: "40" }), density: quantity(1n) },
      {
        id: "phases",
        name: "Phases",
        density: null,
        market: "EU",
        use: "rinse-off",
        phFrom: decimal("4"),
        phTo: decimal("4.5"),
        keepsDays: 0,
        phases: [
          { name: "B", temperature: decimal("70.25") },
          { name: "A", temperature: null },
        ],
        steps: [
          { phase: "B", text: "Heat\nslowly", temperature: decimal("75"), minutes: decimal("20"), caution: "Hot" },
          { phase: null, text: "Stir", temperature: null, minutes: null, caution: null },
        ],
        checks: [
          { what: "Viscosity", from: decimal("8000"), to: decimal("14000.5"), unit: "mPa·s", looks: null },
          { what: "Smell", from: null, to: null, unit: null, looks: "none" },
          { what: "Solids", from: null, to: decimal("0.1"), unit: null, looks: "clear" },
        ],
        lines: ["B", "A", "B", null].map((phase) => ({
          of: { kind: "material", id: "glycerol" } as const,
          percent: percent("25"),
          phase,
        })),
      },
    ],
    products: [
      product("p2", "cream", {
        fill: { typed: { number: decimal("8"), unit: "floz-us" }, quantity: g("236.588236") },
        overfill: grams("0"),
        heel: grams("12.000001"),
        processLoss: percent("3"),
        labourMinutesPerRun: decimal("45.125"),
        priceToShops: money("7.5"),
        packaging: [
          { material: "jar", amount: pieces(1), spoilage: percent("2") },
          { material: "toString", amount: grams("0.5"), spoilage: percent("0") },
        ],
        perRun: [{ material: "jar", amount: pieces(4) }],
      }),
      product("p1", "base", { priceToCustomers: money("0.000001"), madeInto: "toString" }),
    ],
    runs: [
      run("r2", "p2", "2026-11-30", 24, { sequence: 1_000_000 }),
      run("r1", "p1", "2026-11-30", 1),
      run("__proto__", "p1", "1900-01-01", 3),
    ],
    finished: [
      { id: "F", product: "p2", made: day("2026-10-02"), bestBefore: day("2027-10-01"), units: quantity(0n) },
      { id: "A", product: "p1", made: day("2026-10-02"), bestBefore: null, units: quantity(LARGEST_FIGURE) },
    ],
    sales: [
      { product: "p2", date: day("2026-11-03"), units: quantity(3n) },
      { product: "p1", date: day("2026-11-02"), units: quantity(1n) },
      { product: "p2", date: day("2026-11-03"), units: quantity(3n) },
    ],
  });

/** A workshop of some size in which every name carries the number: a mixture of two would show. */
export const numberedWorkshop = (number: number): Workshop => {
  const name = `Workshop ${String(number)}`;
  const ids = Array.from({ length: 300 }, (_, index) => `m${String(index)}-${String(number)}`);
  return bareWorkshop(name, {
    materials: ids.map((id) => material(id, { name })),
    lots: ids.map((id) => lot(`L${id}`, id, "100", "1")),
  });
};

/** The number that every record of a numbered workshop carries, or null where they differ. */
export function numberOf(workshop: Workshop): number | null {
  const number = Number(workshop.settings.name.replace("Workshop ", ""));
  const whole = JSON.stringify(numberedWorkshop(number), inJson) === JSON.stringify(workshop, inJson);
  return whole ? number : null;
}

/** Keys in the order of their names: the same records, whoever wrote them down. */
const inJson = (_key: string, value: unknown): unknown => {
  if (typeof value === "bigint") return value.toString();
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
};
