/**
 * What the law of a market asks of a label, and what of it a draft still lacks. Each market has a list of its own, each
 * point its source, how that was read and when. Local rules and a qualified assessor decide. @rule LABEL-6
 */
import { type Day, dayOf } from "@/lib/domain/calendar";
import type { LabelMarket } from "./label";
import type { LabelDraft } from "./label-draft";

export interface LabelSource {
  readonly law: string;
  /** The text itself in a copy, somebody's summary of it, or from memory. */
  readonly read: "a copy" | "a summary" | "memory";
  /** The day of the copy where it bears one, else the day on which it was read. */
  readonly on: Day;
}

export interface Asked {
  readonly says: string;
  readonly source: LabelSource;
}

export interface AskedOfLabel {
  /** What is not there. */
  readonly missing: readonly Asked[];
  /** What no program can tell. */
  readonly toJudge: readonly Asked[];
}

interface Point extends Asked {
  /** Whether the draft has it; null where only a person can judge. */
  readonly has: ((draft: LabelDraft) => boolean) | null;
}

const on = (iso: string): Day => {
  const day = dayOf(iso);
  if (day === null) throw new Error(`no such day ${iso}`);
  return day;
};

const READ = on("2026-11-28");
const eu = (point: string): LabelSource => ({
  law: `Regulation (EC) 1223/2009, Article ${point}`,
  read: "a summary",
  on: READ,
});
const gb = (point: string): LabelSource => ({
  law: `Regulation (EC) 1223/2009 as it forms part of the law of Great Britain, Article ${point}`,
  read: "memory",
  on: READ,
});
const cfr = (section: string, read: LabelSource["read"] = "memory", day = READ): LabelSource => ({
  law: `21 CFR ${section}`,
  read,
  on: day,
});

const hasContent = ({ net }: LabelDraft): boolean => !/^0*(\.0*)?$/.test(net.metric.number);
const hasDurability = ({ durability }: LabelDraft): boolean =>
  durability.kind === "best before" || (durability.kind === "after opening" && durability.months !== null);
const hasIngredients = ({ ingredients: { listed, unknown } }: LabelDraft): boolean =>
  listed.length > 0 && unknown.length === 0;
const hasWho = ({ responsible, address }: LabelDraft): boolean => responsible !== null && address !== null;
const hasFunction = (draft: LabelDraft): boolean => draft.function !== null;
const hasBatch = ({ batchCode }: LabelDraft): boolean => batchCode !== null;
const hasUse = ({ use }: LabelDraft): boolean => use !== null;

const INGREDIENTS = "the ingredients by their INCI names: say in the Book what each material is made of";
const CONTENT = "the content by weight or volume";
const DURABILITY =
  "the day up to which it is good, or, where it keeps more than 30 months, how many months after opening";
const USE = "whether it stays on or is rinsed off: until the formula says so, allergens are named as if it stayed on";

const ALLERGENS: LabelSource = {
  law: "Regulation (EC) 1223/2009, Annex III, as amended by Regulation (EU) 2023/1545",
  read: "a summary",
  on: READ,
};

/** What Article 19 lists, in its order; the same in the two texts but for who is responsible. */
const articleNineteen = (from: (point: string) => LabelSource, where: string): readonly Point[] => [
  { says: `name and address of the responsible person in ${where}`, source: from("19(1)(a)"), has: hasWho },
  { says: CONTENT, source: from("19(1)(b)"), has: hasContent },
  { says: DURABILITY, source: from("19(1)(c)"), has: hasDurability },
  { says: "the batch code: choose a finished lot", source: from("19(1)(e)"), has: hasBatch },
  { says: "what the product is for", source: from("19(1)(f)"), has: hasFunction },
  { says: INGREDIENTS, source: from("19(1)(g)"), has: hasIngredients },
  { says: USE, source: ALLERGENS, has: hasUse },
  {
    says: "the words before the day must be in the language of the country, or the symbol of Annex VII stand in their place: where a label drawn now has a day it says “best used before the end of”",
    source: from("19(1)(c)"),
    has: null,
  },
  {
    says: "the open jar of Annex VII belongs beside the months after opening: where a label has them it says them in words",
    source: { ...from("19(1)(c)"), read: "memory" },
    has: null,
  },
  { says: "where the product is imported, its country of origin must be named", source: from("19(1)(a)"), has: null },
  {
    says: "the precautions for use must be there, and the warnings that Annexes III to VI ask for what is in it",
    source: from("19(1)(d)"),
    has: null,
  },
];

const POINTS: Readonly<Record<LabelMarket, readonly Point[]>> = {
  EU: [
    ...articleNineteen(eu, "the Union"),
    {
      says: "it must be in the languages that each country asks for",
      source: { ...eu("19(5)"), read: "memory" },
      has: null,
    },
    {
      says: "a qualified assessor must have written its safety report, and it must be notified before it is sold",
      source: { ...eu("10 and 13"), read: "memory" },
      has: null,
    },
  ],
  GB: [
    ...articleNineteen(gb, "the United Kingdom"),
    {
      says: "the responsible person must be established in the United Kingdom",
      source: { ...gb("4(1)"), read: "a copy" },
      has: null,
    },
    {
      says: "it must be in English, and as the Cosmetic Products Enforcement Regulations 2013 ask",
      source: { law: "The Cosmetic Products Enforcement Regulations 2013 (S.I. 2013/1478)", read: "memory", on: READ },
      has: null,
    },
    {
      says: "look up which entries of 2023 Great Britain has taken over: this label names them all",
      source: { law: "Annex III as it forms part of the law of Great Britain", read: "memory", on: READ },
      has: null,
    },
  ],
  US: [
    { says: "what the product is, on the front", source: cfr("701.11"), has: hasFunction },
    {
      says: "name and place of business of the maker, packer or distributor",
      source: cfr("701.12"),
      has: hasWho,
    },
    { says: CONTENT, source: cfr("701.13"), has: hasContent },
    { says: INGREDIENTS, source: cfr("701.3", "a copy", on("1996-04-01")), has: hasIngredients },
    {
      says: "an address or a telephone number in the United States, or an electronic address, for reports of harm",
      source: {
        law: "Federal Food, Drug, and Cosmetic Act, section 609(a), as added by the Modernization of Cosmetics Regulation Act of 2022",
        read: "a summary",
        on: READ,
      },
      has: ({ contact }) => contact !== null,
    },
    {
      says: "where its safety is not substantiated, it must say “Warning—The safety of this product has not been determined.”",
      source: cfr("740.10", "a copy", on("2014-11-20")),
      has: null,
    },
    { says: "some kinds of products need the warnings of part 740", source: cfr("740", "a summary"), has: null },
    {
      says: "letters of the ingredients must be at least 1/16 inch high, and those of the content larger on a larger front",
      source: cfr("701.3(b)", "a copy", on("1996-04-01")),
      has: null,
    },
    {
      says: "names must be in English, as water and fragrance: rename aqua and parfum in the Book, or write both",
      source: cfr("701.3"),
      has: null,
    },
  ],
};

/** Whether the law of a market asks for the batch code. */
export const asksForBatch = (market: LabelMarket): boolean => POINTS[market].some(({ has }) => has === hasBatch);

/** What the draft's market asks that is not there, and what only a person can judge. */
export function whatIsMissing(draft: LabelDraft): AskedOfLabel {
  const points = POINTS[draft.market];
  const asked = (some: readonly Point[]): readonly Asked[] => some.map(({ says, source }) => ({ says, source }));
  return {
    missing: asked(points.filter(({ has }) => has?.(draft) === false)),
    toJudge: asked(points.filter(({ has }) => has === null)),
  };
}
