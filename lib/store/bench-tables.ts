/** The tables of batches at the bench, column by column. */
import type { Locale, UnitSystem } from "@/lib/domain/notation";
import type { Dating } from "@/lib/domain/bench/batch-code";
import type { Instant, NoteKind } from "@/lib/domain/bench/batch";
import type { CodeKind, LabelMarket } from "@/lib/domain/label/label";
import type { DecimalText, Micrograms, Stock, Unit, Units } from "@/lib/domain/quantity";
import { day, flag, orNull, small, table, text, whole } from "./columns";

const id = text<string>();
const label = text<string>();
const position = small;
const instant = text<Instant>();
const stock = orNull(whole<Stock>());
const mass = whole<Micrograms>();
const decimal = orNull(text<DecimalText>());
const ORDERED = ["run", "position"] as const;

/** In an order in which each names only those before it. */
export const BENCH_TABLES = {
  batches: table(
    "batches",
    {
      run: id,
      position,
      product: id,
      date: day,
      sequence: small,
      units: whole<Units>(),
      code: label,
      startedOn: day,
      startedAt: instant,
      startedBy: label,
      despite: orNull(label),
      // What it was started as: all of it, or nothing (a CHECK holds it).
      workshopCalled: orNull(label),
      productCalled: orNull(label),
      fill: orNull(mass),
      fillNumber: orNull(text<DecimalText>()),
      fillUnit: orNull(text<Unit>()),
      bulk: orNull(mass),
      step: orNull(mass),
    },
    ["position"],
  ),
  batchVersions: table(
    "batch_versions",
    { run: id, position, formula: id, number: small, called: orNull(label) },
    ORDERED,
  ),
  batchLines: table(
    "batch_lines",
    {
      run: id,
      position,
      key: id,
      part: id,
      material: orNull(id),
      premix: orNull(id),
      called: label,
      phase: orNull(label),
      target: mass,
      tolerance: mass,
    },
    ORDERED,
  ),
  benchNotes: table(
    "bench_notes",
    {
      run: id,
      position,
      key: id,
      at: instant,
      who: label,
      kind: text<NoteKind>(),
      line: orNull(id),
      material: orNull(id),
      called: orNull(label),
      lot: orNull(id),
      net: stock,
      gross: stock,
      tare: stock,
      more: orNull(flag),
      why: orNull(label),
      strikes: orNull(id),
      phase: orNull(label),
      celsius: decimal,
      ph: decimal,
      meter: orNull(label),
      calibrated: orNull(day),
      code: orNull(label),
      what: orNull(label),
      asked: orNull(label),
      found: orNull(label),
      within: orNull(flag),
      units: orNull(whole<Units>()),
      leftOver: orNull(mass),
      bestBefore: orNull(day),
      held: orNull(flag),
      whyNotWeighed: orNull(label),
      whyMoreFilled: orNull(label),
      whyOutOfDate: orNull(label),
      whyNotChecked: orNull(label),
    },
    ORDERED,
  ),
  batchLabels: table(
    "batch_labels",
    {
      run: id,
      position,
      label: id,
      market: text<LabelMarket>(),
      code: orNull(text<CodeKind>()),
      codeText: orNull(label),
      isGs1: orNull(flag),
      width: decimal,
      height: decimal,
    },
    ORDERED,
  ),
  batchLabelParts: table(
    "batch_label_parts",
    { run: id, label: small, position, called: label, text: label, isBold: flag },
    ["run", "label", "position"],
  ),
  notation: table("notation", { id: small, locale: text<Locale>(), units: text<UnitSystem>() }, ["id"]),
  batchCodeScheme: table(
    "batch_code_scheme",
    { id: small, before: label, dating: text<Dating>(), between: label, digits: small },
    ["id"],
  ),
};
