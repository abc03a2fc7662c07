/** Batches for the store's tests, with a note of every kind. */
import type { Batch, BenchNote, Instant } from "@/lib/domain/bench/batch";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import { day, decimal, run } from "./notation";

const instant = (text: string): Instant => text as Instant;
const mark = (key: string) => ({ key, at: instant("2026-11-25T09:30:00Z"), who: "R. Weaver" });

const NOTES: readonly BenchNote[] = [
  {
    ...mark("n1"),
    kind: "weighed",
    line: "1",
    lot: "a",
    net: quantity(1n),
    gross: quantity(LARGEST_FIGURE),
    tare: quantity(0n),
    more: true,
    why: "The rest is in another drum",
  },
  {
    ...mark("n2"),
    kind: "weighed",
    line: "2",
    lot: null,
    net: quantity(2n),
    gross: null,
    tare: null,
    more: false,
    why: null,
  },
  { ...mark("n3"), kind: "added", material: "glycerol", called: "Glycerol", lot: "a", net: quantity(3n), why: "pH" },
  { ...mark("n4"), kind: "struck", strikes: "n3", why: "of the wrong lot" },
  {
    ...mark("n5"),
    kind: "temperature",
    phase: null,
    celsius: decimal("70.5"),
    meter: "probe 2",
    calibrated: day("2026-11-01"),
  },
  { ...mark("n6"), kind: "acidity", ph: decimal("5.2"), meter: null, calibrated: null },
  { ...mark("n7"), kind: "seen", what: "Colour", found: "white" },
  { ...mark("n12"), kind: "recoded", code: "M-26329/01a", why: "a lot of that code was struck off" },
  {
    ...mark("n13"),
    kind: "checked",
    what: "Viscosity",
    asked: "from 8000 to 14000 mPa·s",
    found: "7900",
    within: false,
    why: "it thickens overnight",
  },
  {
    ...mark("n14"),
    kind: "checked",
    what: "Appearance",
    asked: "smooth",
    found: "as asked",
    within: true,
    why: null,
  },
  {
    ...mark("n8"),
    kind: "closed",
    units: quantity(0n),
    leftOver: quantity(5n),
    bestBefore: day("2027-11-25"),
    held: true,
    why: "spilt",
    whyNotWeighed: "a drum was empty",
    whyMoreFilled: "the line was rinsed",
    whyOutOfDate: "tested anew",
    whyNotChecked: "the meter is away",
  },
  { ...mark("n9"), kind: "released", why: null, whyNotChecked: "as the last one" },
  { ...mark("n10"), kind: "rejected", why: "grainy" },
  { ...mark("n11"), kind: "annexed", found: "The scale was looked at." },
];

const LABELS: readonly KeptLabel[] = [
  {
    label: "gone since",
    market: "US",
    parts: [
      { called: "the name", text: "Cream", isBold: true },
      { called: "the content", text: "Net Wt 8.8 oz, 250 g", isBold: false },
    ],
    code: { text: "(01)06291041500213(10)M-1", isGs1: true, kind: "QR" },
    size: { width: decimal("63.5"), height: decimal("38.1") },
  },
  { label: "bare", market: "EU", parts: [], code: null, size: null },
  {
    label: "bars",
    market: "GB",
    parts: [{ called: "the name", text: "Cream", isBold: true }],
    code: { text: "M-1", isGs1: false, kind: "Code 128" },
    size: null,
  },
];

/** The second of them has the first id of the alphabet, so that their order is that of starting. */
export const richBatches = (): readonly Batch[] => [
  {
    run: run("r1", "p1", "2026-11-30", 24),
    code: "M-26329/01",
    startedOn: day("2026-11-25"),
    startedAt: instant("2026-11-25T09:00:00Z"),
    startedBy: "R. Weaver",
    despite: "Known, and kept cold",
    as: {
      workshop: "Bench",
      product: "Cream",
      fill: { typed: { number: decimal("250"), unit: "mL" }, quantity: quantity(245_000_000n) },
      bulk: quantity(LARGEST_FIGURE),
      step: quantity(1n),
    },
    versions: [{ formula: "phases", number: 3, called: "In phases" }],
    lines: [
      {
        key: "1",
        part: "phases",
        of: { kind: "material", id: "glycerol" },
        called: "Glycerol",
        phase: "A",
        target: quantity(LARGEST_FIGURE),
        tolerance: quantity(1n),
      },
      {
        key: "2",
        part: "phases",
        of: { kind: "formula", id: "base" },
        called: "Base",
        phase: null,
        target: quantity(2n),
        tolerance: quantity(0n),
      },
    ],
    notes: NOTES,
    labels: LABELS,
  },
  {
    run: run("__proto__", "p2", "2026-12-01", 1, { sequence: 2 }),
    code: "M-26329/02",
    startedOn: day("2026-11-25"),
    startedAt: instant("2026-11-25T09:05:00Z"),
    startedBy: "R. Weaver",
    despite: null,
    as: null,
    versions: [],
    lines: [],
    notes: [],
    labels: [],
  },
];
