import { describe, expect, test } from "vitest";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { staleness } from "@/lib/edge/forms/staleness";

const drawn = { id: "p1", name: "Cream", priceToShops: "7.50", packaging: [{ material: "m1", amount: "1 each" }] };
const seen = fingerprint(drawn);

describe("a form that was drawn from what is no longer so", () => {
  test.each([
    { says: "nothing changed", stored: drawn, typed: { ...drawn, name: "Hand cream" }, is: null },
    {
      says: "another field was changed: it would be undone",
      stored: { ...drawn, priceToShops: "8.00" },
      typed: { ...drawn, name: "Hand cream" },
      is: { kind: "stale", changes: [{ field: "priceToShops", was: "7.50", now: "8.00" }] },
    },
    {
      says: "the same field was changed",
      stored: { ...drawn, name: "Foot cream" },
      typed: { ...drawn, name: "Hand cream" },
      is: { kind: "stale", changes: [{ field: "name", was: "Hand cream", now: "Foot cream" }] },
    },
    {
      says: "it was changed to just what was typed",
      stored: { ...drawn, name: "Hand cream" },
      typed: { ...drawn, name: "Hand cream", priceToShops: "7.5" },
      is: null,
    },
    {
      says: "what was changed meanwhile was typed here too, with something more",
      stored: { ...drawn, name: "Hand cream" },
      typed: { ...drawn, name: "Hand cream", priceToShops: "9" },
      is: null,
    },
    {
      says: "a field was added meanwhile",
      stored: { ...drawn, priceToCustomers: "15.00" },
      typed: drawn,
      is: { kind: "stale", changes: [{ field: "priceToCustomers", was: "nothing", now: "15.00" }] },
    },
    {
      says: "a field was taken away meanwhile",
      stored: { id: "p1", name: "Cream", priceToShops: "7.50" },
      typed: drawn,
      is: { kind: "stale", changes: [{ field: "packaging", was: "m1, 1 each", now: "nothing" }] },
    },
    { says: "it was removed", stored: null, typed: drawn, is: { kind: "stale", changes: [] } },
  ])("$says", ({ stored, typed, is }) => {
    expect(staleness(seen, stored, typed)).toEqual(is);
  });

  test("the fingerprint of the whole alone is enough to notice it", () => {
    const [whole = ""] = seen.split(" ");
    expect(whole).toMatch(/^[0-9a-f]{64}$/);
    expect(staleness(whole, { ...drawn, name: "Foot cream" }, drawn)).toEqual({
      kind: "stale",
      changes: [{ field: "name", was: "Cream", now: "Foot cream" }],
    });
  });

  test.each(["", "nonsense", "a=b c=d =", "%E0%A4%A=1"])("a mark that no form has made (%j) is stale", (mark) => {
    expect(staleness(mark, drawn, { ...drawn, name: "Hand cream" })?.kind).toBe("stale");
  });
});

describe("a fingerprint", () => {
  test("does not depend on the order of keys or on keys without a value", () => {
    const { name, ...rest } = drawn;
    expect(fingerprint({ ...rest, density: undefined, name })).toBe(seen);
  });

  test("depends on every value, and on the order of lines", () => {
    const others = [
      { ...drawn, name: "cream" },
      { ...drawn, packaging: [{ material: "m1", amount: "2 each" }] },
      { ...drawn, packaging: [] },
      { lines: [{ a: 1 }, { b: 2 }] },
      { lines: [{ b: 2 }, { a: 1 }] },
      {},
    ].map(fingerprint);
    expect(new Set([seen, ...others]).size).toBe(others.length + 1);
  });
});
