/** Two records of one name are told apart by what a maker knows of them. Cases of our own; no published source. */
import { expect, test } from "vitest";
import { matching, meantBy } from "@/app/_ui/choice-filter";
import { type NamedChoice, namedChoices, offerChoices } from "@/lib/edge/record-choices";
import { workshopOf } from "@/tests/helpers/bench";
import { formula, material, offer, product, supplier } from "@/tests/helpers/notation";

const said = (choices: readonly NamedChoice[]) =>
  choices.map(({ value, label, detail = "" }) => [value, label, detail].join(" | "));

const oil = (id: string, given = {}) => material(id, { name: "Castor oil", ...given });

test("one of its name stands by its name alone, in the order of names without regard to case and accents", () => {
  const materials = [material("z", { name: "zinc" }), material("e", { name: "Élan" }), material("d", { name: "dill" })];
  expect(said(namedChoices(workshopOf({ materials }), "materials", materials))).toEqual([
    "d | dill | ",
    "e | Élan | ",
    "z | zinc | ",
  ]);
});

test.each([
  ["kind", [oil("a"), oil("b", { kind: "packaging" })], ["ingredient", "packaging"]],
  ["supplier", [oil("a"), oil("c")], ["from Larch and Quay", "from Quay"]],
  ["pack", [oil("c"), oil("d")], ["in 100\u00a0g", "in 250\u00a0g"]],
  [
    "what is entered alone",
    [oil("x"), oil("y"), oil("z", { kind: "consumable" })],
    ["consumable", "ingredient, entered first", "ingredient, entered second"],
  ],
] as const)("two of one name are told apart by %s", (_, materials, details) => {
  const workshop = workshopOf({
    materials,
    suppliers: [supplier("l", { name: "Larch" }), supplier("q", { name: "Quay" })],
    offers: [
      offer("1", "a", "100", "1", { supplier: "l" }),
      offer("2", "a", "100", "1", { supplier: "q" }),
      offer("3", "c", "100", "1", { supplier: "q" }),
      offer("4", "d", "250", "1", { supplier: "q" }),
    ].filter(({ material: of }) => materials.some(({ id }) => id === of)),
  });
  expect(namedChoices(workshop, "materials", materials).map(({ detail }) => detail)).toEqual(details);
});

test("offers of one material, pack and supplier are told apart by their price", () => {
  const offers = [offer("1", "a", "100", "1"), offer("2", "a", "100", "2.50")];
  const workshop = workshopOf({ materials: [oil("a")], suppliers: [supplier("s", { name: "Larch" })], offers });
  expect(offerChoices(workshop, offers).map(({ detail }) => detail)).toEqual(["£1.00", "£2.50"]);
});

test("products of one name by their fill, formulas of one name by what they fill", () => {
  const formulas = [formula("f", { a: "100" }), formula("g", { a: "100" })].map((each) => ({ ...each, name: "Base" }));
  const products = [product("p", "f"), product("q", "g")].map((each) => ({ ...each, name: `Cream ${each.id}` }));
  const workshop = workshopOf({ materials: [oil("a")], formulas, products });
  expect(namedChoices(workshop, "formulas", formulas).map(({ detail }) => detail)).toEqual([
    "fills Cream p",
    "fills Cream q",
  ]);
});

const groups = [
  {
    name: "Material",
    options: ["Castor oil", "Coconut oil", "Crème fraîche extract", "Oil, jojoba"].map((label) => ({
      value: label,
      label,
    })),
  },
  { name: "Premix", options: [{ value: "f", label: "Oil base", detail: "fills Hand balm" }] },
];
const found = (typed: string) =>
  matching(groups, typed).groups.flatMap(({ options }) => options.map(({ label }) => label));

test.each([
  ["", ["Castor oil", "Coconut oil", "Crème fraîche extract", "Oil, jojoba", "Oil base"]],
  ["oil", ["Castor oil", "Coconut oil", "Oil, jojoba", "Oil base"]],
  ["CREME FRAI", ["Crème fraîche extract"]],
  ["oil cas", ["Castor oil"]],
  ["  oco ", ["Coconut oil"]],
  ["hand", ["Oil base"]],
  ["moon", []],
])("“%s” is looked for anywhere in the name, without regard to case and accents", (typed, labels) => {
  expect(found(typed)).toEqual(labels);
});

test.each([
  ["castor oil", "Castor oil"],
  ["jojoba", "Oil, jojoba"],
  ["oil", null],
  ["moon", null],
  [" ", null],
])("“%s” is taken only where it can mean one", (typed, label) => {
  expect(meantBy(groups, typed)?.label ?? null).toBe(label);
});

test("of very many some are drawn, and how many more there are is known", () => {
  const options = Array.from({ length: 450 }, (_, at) => ({ value: String(at), label: `Oil ${String(at)}` }));
  const { groups: shown, further } = matching([{ name: null, options }], "oil");
  expect([shown[0]?.options.length, further]).toEqual([200, 250]);
});
