/** The columns of what the checks need to know of materials and formulas, and of the lines of formulas. */
import type { Market, Role, Sheet, WayOfUse } from "@/lib/domain/formula-book/facts";
import type { DecimalText, PartsPerMillion } from "@/lib/domain/quantity";
import { day, flag, orNull, small, text, whole } from "./columns";

const position = small;
const label = text<string>();
const share = whole<PartsPerMillion>();
const decimal = text<DecimalText>();

const phWindow = { phFrom: orNull(decimal), phTo: orNull(decimal) };

export const MATERIAL_FACT_COLUMNS = {
  role: orNull(text<Role>()),
  ...phWindow,
  flammable: flag,
  allergen: flag,
  eyeHazard: flag,
};

export const COMPONENT_COLUMNS = { position, inci: label, share };

export const LIMIT_COLUMNS = {
  position,
  market: text<Market>(),
  use: orNull(text<WayOfUse>()),
  substance: label,
  maximum: share,
  countsAs: decimal,
  source: label,
  copied: day,
};

export const SHEET_COLUMNS = { position, kind: text<Sheet["kind"]>(), reference: label, reviewBy: orNull(day) };

export const FORMULA_FACT_COLUMNS = {
  market: orNull(text<Market>()),
  use: orNull(text<WayOfUse>()),
  ...phWindow,
  keepsDays: orNull(small),
};

/** A line of a formula, of a draft or of an earlier version. */
export const LINE_COLUMNS = {
  position,
  material: orNull(label),
  premix: orNull(label),
  percent: orNull(share),
  phase: orNull(label),
};

export const PHASE_COLUMNS = { position, name: label, temperature: orNull(decimal) };

export const STEP_COLUMNS = {
  position,
  phase: orNull(label),
  text: label,
  temperature: orNull(decimal),
  minutes: orNull(decimal),
  caution: orNull(label),
};

export const CHECK_COLUMNS = {
  position,
  what: label,
  from: orNull(decimal),
  to: orNull(decimal),
  unit: orNull(label),
  looks: orNull(label),
};
